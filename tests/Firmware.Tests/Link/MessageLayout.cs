using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>The messages as the code lays them out: every class with a body, its fields and their offsets.</summary>
internal static class MessageLayout
{
    internal static IReadOnlyList<Type> Types { get; } =
        [.. typeof(Frame).Assembly.GetExportedTypes().Where(type => type.GetField("BodyBytes") != null).OrderBy(Id)];

    internal static int BodyBytes(Type type) => (int)type.GetField("BodyBytes")!.GetRawConstantValue()!;

    /// <summary>The id that the class writes.</summary>
    internal static MessageId Id(Type type)
    {
        Frame frame = new();
        type.GetMethod("Write")!.Invoke(Activator.CreateInstance(type), [frame]);
        return frame.Id;
    }

    internal static IEnumerable<(int Offset, FieldInfo Field)> Fields(Type type) =>
        type.GetFields().Where(field => !field.IsLiteral)
            .Select(field => ((int)type.GetField(field.Name + "At")!.GetRawConstantValue()!, field))
            .OrderBy(pair => pair.Item1);

    /// <summary>How many bytes a field takes, seen from what a frame full of ones writes over a frame of zeros.</summary>
    internal static int Bytes(Type type, FieldInfo field)
    {
        object message = Activator.CreateInstance(type)!;
        if (field.GetValue(message) is byte[] name) Array.Fill(name, (byte)255);
        else if (field.FieldType == typeof(bool)) field.SetValue(message, true);
        else if (field.FieldType == typeof(float)) field.SetValue(message, BitConverter.Int32BitsToSingle(0x01010101));
        else field.SetValue(message, field.FieldType.IsEnum ? Enum.ToObject(field.FieldType, -1) : -1);
        Frame frame = new();
        type.GetMethod("Write")!.Invoke(message, [frame]);
        return Enumerable.Range(0, frame.BodyLength).Count(offset => frame.GetByte(offset) != 0);
    }
}
