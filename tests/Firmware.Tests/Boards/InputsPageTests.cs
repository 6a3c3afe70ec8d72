using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>The page of inputs and outputs says what the code does: roles, problems and figures.</summary>
public sealed class InputsPageTests
{
    private const string Path = "hardware-notes/06-inputs-and-outputs.md";

    private static readonly string[] Page = Repository.Text(Path).Split('\n');

    public static TheoryData<Type, string> Tables => new()
    {
        { typeof(PinRole), "## Roles of the pins" },
        { typeof(AnalogFault), "## Analogue channels" },
        { typeof(BoardProblem), "## What a wiring is refused for" },
        { typeof(PowerUpProblem), "## The lock at power-up" },
    };

    public static TheoryData<string, int> Figures => new()
    {
        { "proving time of the lock, us", PowerUpCheck.ProvingMicroseconds },
        { "flash, lit or dark, us", FlashCode.FlashMicroseconds },
        { "pause between rows of flashes, us", FlashCode.PauseMicroseconds },
        { "debounce of contacts, us", new PinMap().ContactDebounceMicroseconds },
        { "debounce of buttons, us", new PinMap().ButtonDebounceMicroseconds },
        { "shortest span, us", new PulseSetup().ShortestSpanMicroseconds },
        { "time-out of the speed, us", new StandstillSetup().TimeOutMicroseconds },
        { "standstill, us", new StandstillSetup().StandstillMicroseconds },
        { "control period, us", new PinMap().PeriodMicroseconds },
        { "lateness permitted, us", new PinMap().LateMicroseconds },
    };

    [Theory]
    [MemberData(nameof(Tables))]
    public void Table_OfNumbers_IsThatOfTheCode(Type type, string heading)
    {
        List<string> expected = [.. Enum.GetValues(type).Cast<object>().Select(value => $"| {(int)value} | `{value}` |")];
        List<string> rows = [.. Page.SkipWhile(line => line != heading).Skip(1).TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))
            .Where(line => line.Length > 2 && char.IsAsciiDigit(line[2]))];

        Assert.True(
            rows.Count == expected.Count && rows.Zip(expected).All(pair => pair.First.StartsWith(pair.Second, StringComparison.Ordinal)),
            $"{Path} should have under \"{heading}\":\n{string.Join('\n', expected)}");
    }

    [Theory]
    [MemberData(nameof(Figures))]
    public void Figure_IsThatOfTheCode(string figure, int number) => Assert.Contains($"| {figure} | {number.ToString(CultureInfo.InvariantCulture)} |", Page);
}
