using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using StarterCtl.Core;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Firmware.Tests.Link;

/// <summary>The page of the link says what the code does: ids, offsets, types, reasons, bits, limits and the example.</summary>
public sealed class LinkPageTests
{
    private static readonly string[] Page = Repository.Text("hardware-notes/05-serial-link.md").Split('\n');

    public static TheoryData<Type> Bodies => [.. MessageLayout.Types];

    public static TheoryData<Type> Numbers => [typeof(LinkReason), typeof(LinkCapabilities), typeof(ResetCause), typeof(TelemetrySwitches), typeof(ExchangeMode), typeof(ExchangeSwitches), typeof(ExchangeOutputs), typeof(StoreState), typeof(StartLockReason)];

    [Fact]
    public void Messages_AreThoseOfTheCode() =>
        AssertRows("## Messages", [.. Enum.GetValues<MessageId>().Where(id => id != MessageId.None).Select(id => $"| {(int)id:X2} | `{id}` | {MessageBody.Bytes(id)} |")]);

    [Theory]
    [MemberData(nameof(Bodies))]
    public void Body_OfAMessage_IsThatOfTheCode(Type type)
    {
        MessageId id = MessageLayout.Id(type);
        IEnumerable<string> rows = MessageLayout.Fields(type).Select(pair => $"| {pair.Offset} | {TypeName(type, pair.Field)} | `{pair.Field.Name}` |");

        AssertRows($"### {(int)id:X2} `{id}`, {MessageLayout.BodyBytes(type)} bytes", [.. rows]);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Numbers_OfAChoice_AreThoseOfTheCode(Type type)
    {
        bool isBits = type.GetCustomAttribute<FlagsAttribute>() != null;
        IEnumerable<string> rows = Enum.GetValues(type).Cast<object>().Select(value => (Number: (int)value, Name: $"{value}"))
            .Where(row => !isBits || row.Number != 0).Select(row => $"| {row.Number} | `{row.Name}` |");

        AssertRows($"### `{type.Name}`", [.. rows]);
    }

    [Theory]
    [InlineData("longest body", Frame.MostBodyBytes)]
    [InlineData("longest frame on the line, its end included", Frame.MostLineBytes)]
    [InlineData("bytes read in one control period", LinkPort.MostBytesReadPerStep)]
    [InlineData("bytes sent in one control period", LinkPort.MostBytesSentPerStep)]
    [InlineData("version of the protocol", LinkPort.ProtocolVersion)]
    [InlineData("shortest time between samples, us", TelemetryClock.ShortestMicroseconds)]
    [InlineData("longest time between samples, us", TelemetryClock.LongestMicroseconds)]
    [InlineData("events in the log", EventLog.Capacity)]
    public void Limit_IsThatOfTheCode(string limit, int number) => Assert.Contains($"| {limit} | {number.ToString(CultureInfo.InvariantCulture)} |", Page);

    [Fact]
    public void Example_IsWhatTheCodeReadsAndWrites()
    {
        byte[] line = Convert.FromHexString(Page.Single(text => text.StartsWith("    04 21", StringComparison.Ordinal)).Replace(" ", "", StringComparison.Ordinal));
        FrameReader reader = new();
        UploadValue value = new();

        Assert.Equal([.. Enumerable.Repeat(false, line.Length - 1), true], Array.ConvertAll(line, next => reader.Take(next)));
        value.Read(reader.Frame);

        Assert.Equal((MessageId.PutValue, 7), (reader.Frame.Id, reader.Frame.Sequence));
        Assert.Equal((SettingId.MachineConstant, 0, 2.5f), (value.Setting, value.Index, SingleBits.ToNumber(value.Bits)));
        FrameWriter writer = new();
        value.Write(reader.Frame);
        for (int sequence = 0; sequence <= 7; sequence++) writer.Write(reader.Frame);
        Assert.Equal(line, writer.Line[..writer.Length]);
    }

    private static string TypeName(Type type, FieldInfo field) => MessageLayout.Bytes(type, field) switch
    {
        1 => "u8",
        2 => "u16",
        4 => field.FieldType == typeof(float) ? "f32" : "i32",
        int bytes => $"text of {bytes}",
    };

    // The rows of the first table below a heading, as far as the code knows them.
    private static void AssertRows(string heading, List<string> expected)
    {
        List<string> rows = [.. Page.SkipWhile(line => line != heading).SkipWhile(line => !line.StartsWith("|---", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(line => line.StartsWith('|'))];
        bool isSame = rows.Count == expected.Count && rows.Zip(expected).All(pair => pair.First.StartsWith(pair.Second, StringComparison.Ordinal));

        Assert.True(isSame, $"hardware-notes/05-serial-link.md should have under \"{heading}\":\n{string.Join('\n', expected)}");
    }
}
