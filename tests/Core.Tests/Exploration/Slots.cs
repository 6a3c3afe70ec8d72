using System;
using System.Collections.Generic;
using System.Linq;
using System.Linq.Expressions;
using System.Reflection;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>
/// Every field that can change in everything that an object holds, found by reflection: takes the state out as numbers and
/// puts it back in. A field of a kind that it does not know is an error, so that no part of the state is ever left out.
/// </summary>
internal sealed class Slots
{
    private const BindingFlags Own = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;

    /// <summary>Told to the outside and never asked again; that nothing depends on them is a test of its own.</summary>
    internal static readonly string[] Told =
    [
        "Estimate.BackEmfVolts", "Estimate.ResistiveBackEmfVolts", "Estimate.ResistiveValid", "Estimator._lastArmatureAmps",
        "Explanation.Reason", "Explanation.Quantity", "Explanation.Limit", "Explanation.MicrosecondsLeft",
        "Protector.Present", "Protector.PresentValue", "Protector.PresentLimit", "Sequencer.Refusals",
        "FaultLatch.Value", "FaultLatch.Limit", "FaultLatch.InPhase", "FaultLatch.InStage",
    ];

    private readonly List<(object Holder, FieldInfo Field)> _fields = [];
    private readonly List<(object Holder, FieldInfo Field)> _told = [];
    private readonly HashSet<object> _seen = new(ReferenceEqualityComparer.Instance);
    private readonly Action<int[]> _save;
    private readonly Action<int[]> _load;
    private readonly Action<int[]> _loadTold;

    /// <param name="root">Whose state it is.</param>
    /// <param name="mostMicroseconds">Where 64-bit times stop to matter: the longest that they are held against.</param>
    internal Slots(object root, int mostMicroseconds)
    {
        Walk(root);
        _save = Compile(_fields, (place, slot) => Expression.Assign(slot, ToNumber(place, mostMicroseconds)));
        _load = Compile(_fields, (place, slot) => Expression.Assign(place, FromNumber(slot, place.Type)));
        _loadTold = Compile(_told, (place, slot) => Expression.Assign(place, FromNumber(slot, place.Type)));
    }

    internal int Count => _fields.Count;

    internal int ToldCount => _told.Count;

    /// <summary>Where a field's number is.</summary>
    internal int IndexOf(string name) => _fields.FindIndex(field => Name(field) == name);

    /// <summary>Takes the state out.</summary>
    internal void Save(int[] numbers) => _save(numbers);

    /// <summary>Puts a state back in, and leaves what is only told as it is.</summary>
    internal void Load(int[] numbers) => _load(numbers);

    /// <summary>Writes anything into the fields that are only told.</summary>
    internal void LoadTold(int[] numbers) => _loadTold(numbers);

    private static Action<int[]> Compile(List<(object Holder, FieldInfo Field)> fields, Func<Expression, Expression, Expression> copy)
    {
        ParameterExpression numbers = Expression.Parameter(typeof(int[]));
        IEnumerable<Expression> copies = fields.Select((field, i) =>
            copy(Expression.Field(Expression.Constant(field.Holder), field.Field), Expression.ArrayAccess(numbers, Expression.Constant(i))));
        return Expression.Lambda<Action<int[]>>(Expression.Block(copies), numbers).Compile();
    }

    private static string Name((object Holder, FieldInfo Field) place) => $"{place.Holder.GetType().Name}.{place.Field.Name}";

    private void Walk(object holder)
    {
        if (!_seen.Add(holder)) return;
        for (Type type = holder.GetType(); type != typeof(object); type = type.BaseType!)
        {
            foreach (FieldInfo field in type.GetFields(Own)) Add(holder, field);
        }
    }

    private void Add(object holder, FieldInfo field)
    {
        Type type = field.FieldType;
        // Settings never change, readings are written anew on every tick, and what is built in stays.
        if (type == typeof(Settings) || type == typeof(Readings)) return;
        if (field.IsInitOnly && (type.IsValueType || typeof(Delegate).IsAssignableFrom(type))) return;
        if (type == typeof(bool) || type == typeof(int) || type == typeof(long) || type == typeof(float) || type.IsEnum)
        {
            (Told.Contains(Name((holder, field))) ? _told : _fields).Add((holder, field));
        }
        else if (field.IsInitOnly && type.IsClass && !type.IsArray && type.Namespace!.StartsWith("StarterCtl", StringComparison.Ordinal))
        {
            Walk(field.GetValue(holder)!);
        }
        else
        {
            throw new NotSupportedException($"{Name((holder, field))}: a state of type {type} is not known here");
        }
    }

    private static Expression ToNumber(Expression place, int most)
    {
        if (place.Type == typeof(bool)) return Expression.Condition(place, Expression.Constant(1), Expression.Constant(0));
        if (place.Type == typeof(float)) return Expression.Call(typeof(BitConverter), nameof(BitConverter.SingleToInt32Bits), null, place);
        if (place.Type != typeof(long)) return Expression.Convert(place, typeof(int));
        Expression capped = Expression.Call(typeof(Math), nameof(Math.Min), null, place, Expression.Constant((long)most));
        return Expression.Convert(capped, typeof(int));
    }

    private static Expression FromNumber(Expression slot, Type type)
    {
        if (type == typeof(bool)) return Expression.NotEqual(slot, Expression.Constant(0));
        if (type == typeof(float)) return Expression.Call(typeof(BitConverter), nameof(BitConverter.Int32BitsToSingle), null, slot);
        return Expression.Convert(slot, type);
    }
}
