using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Firmware.Tests.Calibration;

/// <summary>The page of calibration and memory says what the code does.</summary>
public sealed class CalibrationPageTests
{
    private const int PerCent = 100;

    private static readonly string[] Page = Repository.Text("hardware-notes/07-calibration.md").Split('\n');

    public static TheoryData<Type> Numbers => [typeof(CalibrationStep), typeof(CalibrationState), typeof(CalibrationReason), typeof(NoiseSituation)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Numbers_OfAChoice_AreThoseOfTheCode(Type type)
    {
        List<string> expected = [.. Enum.GetValues(type).Cast<object>().Select(value => $"| {(int)value} | `{value}` |")];
        List<string> rows = [.. Page.SkipWhile(line => line != $"### `{type.Name}`").SkipWhile(line => !line.StartsWith("|---", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(line => line.StartsWith('|'))];
        bool isSame = rows.Count == expected.Count && rows.Zip(expected).All(pair => pair.First.StartsWith(pair.Second, StringComparison.Ordinal));

        Assert.True(isSame, $"hardware-notes/07-calibration.md should have under \"### `{type.Name}`\":\n{string.Join('\n', expected)}");
    }

    [Theory]
    [InlineData("samples of a point", CalibrationLimits.Samples)]
    [InlineData("most spread of the samples, % of the range", CalibrationLimits.MostSpreadRatio * PerCent)]
    [InlineData("least distance between the points, % of the range", CalibrationLimits.LeastSpanRatio * PerCent)]
    [InlineData("most distance of the offset from the nominal one, % of the range", CalibrationLimits.MostOffsetRatio * PerCent)]
    [InlineData("the same for a tacho, % of the range", CalibrationLimits.MostTachoOffsetRatio * PerCent)]
    [InlineData("least gain, % of the nominal one", CalibrationLimits.LeastGainRatio * PerCent)]
    [InlineData("largest gain, % of the nominal one", CalibrationLimits.MostGainRatio * PerCent)]
    [InlineData("everything off until the board is at rest, ms", CoilWatch.RestMicroseconds / 1000)]
    [InlineData("watchdog resets in a row that lock out", ResetMemory.MostWatchdogResets)]
    [InlineData("time without one that ends the row, s", ResetMemory.CleanRunSeconds)]
    [InlineData("change of heat that is saved, %", HeatStore.LevelStep * PerCent)]
    [InlineData("shortest time between two saves of heat, s", HeatStore.SecondsBetweenSaves)]
    public void Limit_IsThatOfTheCode(string limit, float number) =>
        Assert.Contains($"| {limit} | {number.ToString(CultureInfo.InvariantCulture)} |", Page);
}
