using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>Every message is written and read by the same offsets, which fill its body without gap or overlap.</summary>
public sealed class MessageTests
{
    public static TheoryData<Type> All => [.. MessageLayout.Types];

    [Fact]
    public void Types_AreFound() => Assert.Equal(21, MessageLayout.Types.Count);

    [Theory]
    [MemberData(nameof(All))]
    public void Fields_FillTheBodyInOrder(Type type)
    {
        int next = 0;
        foreach ((int offset, FieldInfo field) in MessageLayout.Fields(type))
        {
            Assert.Equal((field.Name, next), (field.Name, offset));
            next += MessageLayout.Bytes(type, field);
        }

        Assert.Equal(MessageLayout.BodyBytes(type), next);
        Assert.InRange(next, 1, Frame.MostBodyBytes);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Write_AnyFields_AreReadBack(Type type) =>
        Gen.Byte.Array[Frame.MostBodyBytes].Sample(
            bytes =>
            {
                Frame first = Filled(type, bytes);
                Frame second = new();
                object message = Activator.CreateInstance(type)!;
                Call(message, "Read", first);
                Call(message, "Write", second);
                Assert.Equal(MessageLayout.BodyBytes(type), second.BodyLength);
                Assert.Equal(MessageBody.Bytes(second.Id), second.BodyLength);
                Assert.Equal(Body(first), Body(second));
            },
            iter: 200,
            threads: 1);

    [Fact]
    public void Body_OfEveryId_IsKnown_AndOfNoOther()
    {
        for (int id = 0; id < 256; id++)
        {
            bool isMessage = id != 0 && Enum.IsDefined((MessageId)id);
            Assert.Equal(isMessage, MessageBody.Bytes((MessageId)id) != MessageBody.Unknown);
        }
    }

    // What a field cannot hold both ways, a truth value that is neither 0 nor 1 and the numbers with many spellings, is made plain first.
    private static Frame Filled(Type type, byte[] bytes)
    {
        Frame frame = new() { BodyLength = MessageLayout.BodyBytes(type) };
        for (int i = 0; i < frame.BodyLength; i++) frame.PutByte(i, bytes[i]);
        foreach ((int offset, FieldInfo field) in MessageLayout.Fields(type))
        {
            if (field.FieldType == typeof(bool)) frame.PutByte(offset, frame.GetByte(offset) & 1);
            if (field.FieldType == typeof(float)) frame.PutFloat(offset, frame.GetFloat(offset));
        }

        return frame;
    }

    private static IEnumerable<int> Body(Frame frame) => Enumerable.Range(0, frame.BodyLength).Select(frame.GetByte);

    private static void Call(object message, string method, Frame frame) => message.GetType().GetMethod(method)!.Invoke(message, [frame]);
}
