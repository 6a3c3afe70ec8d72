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

    /// <summary>
    /// Told to the outside, or written anew on every tick before anything asks for it; that nothing depends on them is a test of
    /// its own. What is written anew only with some settings stands with the set that has them.
    /// </summary>
    internal static readonly string[] Told =
    [
        "Estimate.SpeedKnown", "Estimate.BackEmfVolts", "Estimate.ResistiveBackEmfVolts", "Estimate.ResistiveValid",
        "Estimate.DecidingVolts", "Estimate.DecidingValid", "PeakLaw._supplyVolts",
        "Explanation.Reason", "Explanation.Quantity", "Explanation.Limit", "Explanation.MicrosecondsLeft",
        "Protector.Present", "Protector.PresentValue", "Protector.PresentLimit", "Protector.PresentChannel",
        "Protector._foundBits", "Protector._lastFoundBits",
        "Sequence.Refusals", "CurrentProof.ExpectedAmps",
        "FaultLatch.Value", "FaultLatch.Limit", "FaultLatch.Channel", "FaultLatch.InPhase", "FaultLatch.InStage",
        "Snapshot.UptimeSeconds", "Snapshot.SupplyVolts", "Snapshot.ArmatureAmps", "Snapshot.SpeedRadPerSec", "Snapshot.SpeedValid",
        "Snapshot.FieldAmps", "Snapshot.BackEmfVolts", "Snapshot.ResistiveBackEmfVolts", "Snapshot.LineClosed",
        "Snapshot.StagesClosed", "Snapshot.LineCommanded", "Snapshot.StagesCommanded",
        "EventLog.Count", "EventLog._next", "EventLog._kinds", "EventLog._numbers", "EventLog._values", "EventLog._seconds",
        // Time without end; only the count of starts asks for it, and no set that is explored counts them.
        "Uptime.Seconds", "Uptime._microseconds", "StartCounter._next", "StartCounter._count", "StartCounter._startedAt",
        "SeenContacts.<LineOpen>k__BackingField", "SeenContacts.<LineIn>k__BackingField", "SeenContacts.<StagesFollowed>k__BackingField",
        "SeenContacts.<BrakeOpen>k__BackingField", "SeenContacts.<StagesIn>k__BackingField", "InvariantChecker._fieldHasStood",
    ];

    // Where an entry goes and how many there are: any number would do but one that points out of the ring.
    private static readonly string[] Places = ["EventLog.Count", "EventLog._next", "StartCounter._next"];

    private readonly string[] _toldNames;
    private readonly List<Place> _fields = [];
    private readonly List<Place> _told = [];
    private readonly HashSet<object> _seen = new(ReferenceEqualityComparer.Instance);
    private readonly Action<int[]> _save;
    private readonly Action<int[]> _load;
    private readonly Action<int[]> _loadTold;

    /// <param name="root">Whose state it is.</param>
    /// <param name="told">Names of the fields that are only told.</param>
    internal Slots(object root, string[] told)
    {
        _toldNames = told;
        Walk(root);
        _save = Compile(_fields, (place, slot) => Expression.Assign(slot, ToNumber(place)));
        _load = Compile(_fields, (place, slot) => Expression.Assign(place, FromNumber(slot, place.Type)));
        _loadTold = Compile(_told, (place, slot) => Expression.Assign(place, FromNumber(slot, place.Type)));
    }

    internal int Count => _fields.Count;

    /// <summary>Names of what is told and really is there.</summary>
    internal IEnumerable<string> ToldNames => _told.Select(place => place.Name).Distinct();

    /// <summary>Where a field's number is.</summary>
    internal int IndexOf(string name) => _fields.FindIndex(place => place.Name == name);

    /// <summary>Takes the state out.</summary>
    internal void Save(int[] numbers) => _save(numbers);

    /// <summary>Puts a state back in, and leaves what is only told as it is.</summary>
    internal void Load(int[] numbers) => _load(numbers);

    /// <summary>Writes anything into the fields that are only told.</summary>
    internal void LoadTold(int[] numbers) => _loadTold(numbers);

    /// <summary>Numbers for what is told that no controller would have come to.</summary>
    internal int[] Nonsense() => [.. _told.Select(place => Places.Contains(place.Name) ? 5 : BitConverter.SingleToInt32Bits(float.NaN))];

    /// <summary>Zeroes for what is told.</summary>
    internal int[] Nothing() => new int[_told.Count];

    private static Action<int[]> Compile(List<Place> places, Func<Expression, Expression, Expression> copy)
    {
        ParameterExpression numbers = Expression.Parameter(typeof(int[]));
        IEnumerable<Expression> copies = places.Select((place, i) =>
            copy(place.Expression, Expression.ArrayAccess(numbers, Expression.Constant(i))));
        return Expression.Lambda<Action<int[]>>(Expression.Block(copies), numbers).Compile();
    }

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
        string name = $"{holder.GetType().Name}.{field.Name}";
        // Settings never change, readings are written anew on every tick, and what is built in stays.
        if (type == typeof(Settings) || type == typeof(Readings)) return;
        if (field.IsInitOnly && (type.IsValueType || typeof(Delegate).IsAssignableFrom(type))) return;
        Expression place = Expression.Field(Expression.Constant(holder), field);
        if (IsNumber(type))
        {
            Add(name, place);
        }
        else if (field.IsInitOnly && type.IsArray && IsNumber(type.GetElementType()!))
        {
            Array numbers = (Array)field.GetValue(holder)!;
            for (int i = 0; i < numbers.Length; i++) Add(name, Expression.ArrayAccess(Expression.Constant(numbers), Expression.Constant(i)));
        }
        else if (field.IsInitOnly && type.IsClass && !type.IsArray && type.Namespace!.StartsWith("StarterCtl", StringComparison.Ordinal))
        {
            Walk(field.GetValue(holder)!);
        }
        else
        {
            throw new NotSupportedException($"{name}: a state of type {type} is not known here");
        }
    }

    private void Add(string name, Expression place) => (_toldNames.Contains(name) ? _told : _fields).Add(new Place(name, place));

    private static bool IsNumber(Type type) =>
        type == typeof(bool) || type == typeof(int) || type == typeof(long) || type == typeof(float) || type.IsEnum;

    private static Expression ToNumber(Expression place)
    {
        if (place.Type == typeof(bool)) return Expression.Condition(place, Expression.Constant(1), Expression.Constant(0));
        if (place.Type == typeof(float)) return Expression.Call(typeof(BitConverter), nameof(BitConverter.SingleToInt32Bits), null, place);
        return place.Type == typeof(long) ? Expression.ConvertChecked(place, typeof(int)) : Expression.Convert(place, typeof(int));
    }

    private static Expression FromNumber(Expression slot, Type type)
    {
        if (type == typeof(bool)) return Expression.NotEqual(slot, Expression.Constant(0));
        if (type == typeof(float)) return Expression.Call(typeof(BitConverter), nameof(BitConverter.Int32BitsToSingle), null, slot);
        return Expression.Convert(slot, type);
    }

    private sealed record Place(string Name, Expression Expression);
}
