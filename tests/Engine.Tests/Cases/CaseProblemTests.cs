using System;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseProblemTests
{
    [Theory]
    [InlineData(9, "motor.inertia", "shaft.toml:9: motor.inertia: found nothing; allowed: something")]
    [InlineData(0, "motor.inertia", "shaft.toml: motor.inertia: found nothing; allowed: something")]
    [InlineData(9, "", "shaft.toml:9: found nothing; allowed: something")]
    [InlineData(0, "", "shaft.toml: found nothing; allowed: something")]
    public void ToString_LineOrKeyMissing_LeavesThemOut(int line, string key, string expected) =>
        Assert.Equal(expected, new CaseProblem("shaft.toml", line, key, "nothing", "something").ToString());

    [Fact]
    public void Message_SeveralProblems_OneLineEachInOrderOfLines()
    {
        CaseException fault = new(
        [
            new CaseProblem("a.toml", 7, "x", "1", "2"),
            new CaseProblem("a.toml", 3, "y", "3", "4"),
        ]);

        Assert.Equal("a.toml:3: y: found 3; allowed: 4\na.toml:7: x: found 1; allowed: 2", fault.Message);
    }

    // Values of a wrong kind, dimension or range: file line 2, one key each.
    [Theory]
    [InlineData("motor", "armature-resistance = \"-0.2 ohm\"", "found \"-0.2 ohm\"; allowed: above 0, up to 1 kohm, e.g. \"0.18 ohm\"")]
    [InlineData("motor", "armature-resistance = \"0 ohm\"", "found \"0 ohm\"; allowed: above 0, up to 1 kohm, e.g. \"0.18 ohm\"")]
    [InlineData("motor", "armature-resistance = \"1001 ohm\"", "found \"1001 ohm\"; allowed: above 0, up to 1 kohm, e.g. \"0.18 ohm\"")]
    [InlineData("motor", "armature-resistance = \"5 A\"", "found \"5 A\", a current; allowed: a resistance in ohm, mohm, uohm or kohm, above 0, up to 1 kohm, e.g. \"0.18 ohm\"")]
    [InlineData("motor", "rated-power = 15", "found 15, a number without a unit; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = \"15\"", "found \"15\", a number without a unit; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = true", "found true; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = 2001-02-03", "found 2001-02-03, a date or time of day; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = [\"15 kW\"]", "found a list; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = { a = 1 }", "found a table; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = inf", "found inf, a number without a unit; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = \"NaN kW\"", "found \"NaN kW\", which is not a finite number; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "rated-power = \"50 %\"", "found \"50 %\", a percentage; allowed: a power in W, kW, MW, hp or PS, above 0, up to 1000 MW, e.g. \"15 kW\"")]
    [InlineData("motor", "efficiency = 1.2", "found 1.2; allowed: a plain number above 0, up to 1, e.g. 0.87")]
    [InlineData("motor", "efficiency = nan", "found nan; allowed: a plain number above 0, up to 1, e.g. 0.87")]
    [InlineData("motor", "efficiency = \"87 %\"", "found \"87 %\"; allowed: a plain number above 0, up to 1, e.g. 0.87")]
    [InlineData("motor", "kind = \"seperately excited\"", "found \"seperately excited\"; allowed: \"separately excited\", \"shunt\", \"series\", \"compound\" or \"permanent magnet\"; the nearest is \"separately excited\"")]
    [InlineData("motor", "kind = \"steam\"", "found \"steam\"; allowed: \"separately excited\", \"shunt\", \"series\", \"compound\" or \"permanent magnet\"")]
    [InlineData("motor", "kind = \"compund\"", "found \"compund\"; allowed: \"separately excited\", \"shunt\", \"series\", \"compound\" or \"permanent magnet\"; the nearest is \"compound\"")]
    [InlineData("motor", "magnet-temperature-coefficient = 0.002", "found 0.002; allowed: a plain number -0.02 to 0, e.g. -0.002")]
    [InlineData("motor", "winding-temperature = \"95 K\"", "found \"95 K\", in the unknown unit \"K\"; allowed: a temperature in degC, -50 degC to 300 degC, e.g. \"95 degC\"")]
    [InlineData("field", "armature-reaction = 1", "found 1; allowed: a plain number 0 to below 1, e.g. 0.002")]
    [InlineData("field", "curve-emfs = [\"5 V\"]", "found a list of 1 values; allowed: 2 to 12 values, each 0 to 100 kV, e.g. [\"6 V\", \"118 V\", \"190 V\"]")]
    [InlineData("field", "curve-speed = \"0 rpm\"", "found \"0 rpm\"; allowed: above 0, up to 100000 rpm, e.g. \"1150 rpm\"")]
    [InlineData("series-field", "turns-ratio = 0", "found 0; allowed: a plain number above 0, up to 1, e.g. 0.004")]
    [InlineData("series-field", "connection = \"long\"", "found \"long\"; allowed: \"long shunt\" or \"short shunt\"")]
    [InlineData("series-field", "sense = \"cummulative\"", "found \"cummulative\"; allowed: \"cumulative\" or \"differential\"; the nearest is \"cumulative\"")]
    [InlineData("motor", "construction.poles = 5", "found 5; allowed: an even whole number, 2 to 100, without unit, e.g. 4", "motor.construction.poles")]
    [InlineData("starter", "stages = 17", "found 17; allowed: a whole number, 1 to 16, without unit, e.g. 3")]
    [InlineData("starter", "stages = 0", "found 0; allowed: a whole number, 1 to 16, without unit, e.g. 3")]
    [InlineData("starter", "stages = 3.0", "found 3.0; allowed: a whole number, 1 to 16, without unit, e.g. 3")]
    [InlineData("starter", "stages = \"3 A\"", "found \"3 A\"; allowed: a whole number, 1 to 16, without unit, e.g. 3")]
    [InlineData("starter", "sections = \"1 ohm\"", "found \"1 ohm\"; allowed: a list of 1 to 16 values, each a resistance in ohm, mohm, uohm or kohm, above 0, up to 1 kohm, e.g. [\"0.52 ohm\", \"0.31 ohm\"]")]
    [InlineData("starter", "sections = []", "found a list of 0 values; allowed: 1 to 16 values, each above 0, up to 1 kohm, e.g. [\"0.52 ohm\", \"0.31 ohm\"]")]
    [InlineData("starter", "sections = [\"0 ohm\"]", "found \"0 ohm\"; allowed: 1 to 16 values, each above 0, up to 1 kohm, e.g. [\"0.52 ohm\", \"0.31 ohm\"]")]
    [InlineData("starter", "sections = [1]", "found 1, a number without a unit; allowed: a list of 1 to 16 values, each a resistance in ohm, mohm, uohm or kohm, above 0, up to 1 kohm, e.g. [\"0.52 ohm\", \"0.31 ohm\"]")]
    [InlineData("starter", "peak-current = \"150 %\"", "found \"150 %\" without motor.rated-current; allowed: motor.rated-current in the file, or a current in A, mA or kA, above 0, up to 1000 kA, e.g. \"156 A\", or a percentage of motor.rated-current")]
    [InlineData("control", "period = \"9 us\"", "found \"9 us\"; allowed: 10 us to 100 ms, a whole number of microseconds, e.g. \"1 ms\"")]
    [InlineData("control", "period = \"1.0005 ms\"", "found \"1.0005 ms\"; allowed: 10 us to 100 ms, a whole number of microseconds, e.g. \"1 ms\"")]
    [InlineData("control", "lockout-current = \"never\"", "found \"never\", which does not begin with a number; allowed: a current in A, mA or kA, above 0, up to 1000 kA, e.g. \"120 A\", or \"none\", or a percentage of motor.rated-current")]
    public void Parse_WrongValue_SaysWhatWasFoundAndWhatIsAllowed(string table, string line, string expected, string? key = null)
    {
        key ??= $"{table}.{line[..line.IndexOf(' ', StringComparison.Ordinal)]}";

        Assert.Equal($"2: {key}: {expected}", Sample.Problems($"[{table}]\n{line}\n"));
    }

    [Theory]
    [InlineData("\"\"")]
    [InlineData("\"  \"")]
    [InlineData("\"two\\nlines\"")]
    [InlineData("\"\\u001b[2J\"")]
    [InlineData("5")]
    public void Parse_TitleNotOneLine_IsRefused(string title)
    {
        string problems = Sample.Problems($"title = {title}\n");

        Assert.EndsWith("; allowed: one line of 1 to 200 characters in quotes, e.g. \"Line-shaft drive\"", problems);
        Assert.DoesNotContain(problems, char.IsControl);
    }

    // U+202E turns the rest of the line round, U+200B hides, U+E0041 is a letter that nobody sees.
    [Theory]
    [InlineData("\\u202E", "202E")]
    [InlineData("\\u2066", "2066")]
    [InlineData("\\u200B", "200B")]
    [InlineData("\\uFEFF", "FEFF")]
    [InlineData("\\u2028", "2028")]
    [InlineData("\\U000E0041", "E0041")]
    [InlineData("\\u001b", "001B")]
    public void Parse_TitleWithAnInvisibleCharacter_NamesIt(string escaped, string code)
    {
        string problems = Sample.Problems($"title = \"line {escaped}shaft\"\n");

        Assert.StartsWith("1: title: found \"line \\u", problems);
        Assert.Contains($", with the invisible character U+{code}; allowed: one line of 1 to 200 characters", problems, StringComparison.Ordinal);
        Assert.DoesNotContain(problems, letter => letter > '\u007f' || char.IsControl(letter));
    }

    [Theory]
    [InlineData("Förderband, 220 V – 15 kW")]
    [InlineData("電動機")]
    [InlineData("shaft \U0001F600")]
    public void Parse_TitleInAnyScript_IsKept(string title) =>
        Assert.Equal(title, Sample.Parse($"title = \"{title}\"\n").Text(CaseKeys.Title));

    [Fact]
    public void Parse_PercentOfAnUnreadableCurrent_IsOneProblem() =>
        Assert.StartsWith(
            "2: motor.rated-current: found \"x\"",
            Assert.Single(Sample.Problems("[motor]\nrated-current = \"x\"\n[limits]\npeak-current = \"5 %\"\n").Split('\n')));

    [Fact]
    public void Parse_PercentOutOfRange_IsRefusedAsWritten() =>
        Assert.Equal(
            "4: limits.peak-current: found \"0 %\"; allowed: above 0, up to 1000 kA, e.g. \"160 A\", or a percentage of motor.rated-current",
            Sample.Problems("[motor]\nrated-current = \"78 A\"\n[limits]\npeak-current = \"0 %\"\n"));
}
