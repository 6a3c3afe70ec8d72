using System;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Design;

/// <summary>What a case of each kind of machine may not say, with file, line, key, found and allowed.</summary>
public sealed class MachineRefusalTests
{
    [Theory]
    [InlineData("permanent magnet", "field", "inductance = \"1 H\"", "field.supply-voltage: found a field circuit on a permanent magnet motor; allowed: motor.kind = \"separately excited\", or no [field]")]
    [InlineData("permanent magnet", "series-field", "resistance = \"1 ohm\"", "series-field.resistance: found \"1 ohm\" on a permanent magnet motor; allowed: motor.kind = \"compound\" or \"series\", or no [series-field]")]
    [InlineData("permanent magnet", "motor", "winding-temperature = \"300 degC\"\nresistance-temperature = \"-50 degC\"\nmagnet-temperature-coefficient = -0.01", "motor.magnet-temperature-coefficient: found -0.01, which leaves no flux after 350 K; allowed: above -0.002857 there")]
    [InlineData("separately excited", "motor", "magnet-temperature-coefficient = -0.001", "motor.magnet-temperature-coefficient: found -0.001 on a separately excited motor, which has no magnets; allowed: motor.kind = \"permanent magnet\", or no such key")]
    [InlineData("separately excited", "series-field", "turns-ratio = 0.1", "series-field.turns-ratio: found 0.1 on a separately excited motor; allowed: motor.kind = \"compound\" or \"series\", or no [series-field]")]
    [InlineData("shunt", "series-field", "sense = \"cumulative\"", "series-field.sense: found \"cumulative\" on a shunt motor")]
    [InlineData("shunt", "field", "supply-voltage = \"220 V\"", "field.supply-voltage: found \"220 V\" on a shunt motor, whose field lies on supply.voltage; allowed: motor.kind = \"separately excited\", or no field.supply-voltage")]
    [InlineData("long shunt", "field", "supply-voltage = \"220 V\"", "field.supply-voltage: found \"220 V\" on a compound motor")]
    [InlineData("shunt", "field", "minimum-current = \"1.2 A\"", "field.minimum-current: found 1.2 A; allowed: below the 1.1 A that 220 V drives through 200 ohm")]
    [InlineData("series", "field", "resistance = \"1 ohm\"", "field.resistance: found \"1 ohm\" on a series motor, whose field is its armature's circuit; allowed: no such key; the winding's own are series-field.resistance and series-field.inductance")]
    [InlineData("series", "field", "inductance = \"1 H\"", "field.inductance: found \"1 H\" on a series motor")]
    [InlineData("series", "field", "rated-current = \"60 A\"", "field.rated-current: found \"60 A\" on a series motor")]
    [InlineData("series", "field", "contactor = \"yes\"", "field.contactor: found \"yes\" on a series motor")]
    [InlineData("series", "field", "minimum-current = \"1 A\"", "field.minimum-current: found \"1 A\" on a series motor")]
    [InlineData("series", "field", "discharge-time = \"1 s\"", "field.discharge-time: found \"1 s\" on a series motor")]
    [InlineData("series", "field", "supply-voltage = \"110 V\"", "field.supply-voltage: found \"110 V\" on a series motor")]
    [InlineData("series", "field", "build-time = \"1 s\"", "field.build-time: found \"1 s\" on a series motor")]
    [InlineData("series", "field", "maximum-time = \"1 s\"", "field.maximum-time: found \"1 s\" on a series motor")]
    [InlineData("series", "sensors", "field-current = \"yes\"", "sensors.field-current: found \"yes\" on a series motor")]
    [InlineData("series", "sensors", "field-contact = \"no\"", "sensors.field-contact: found \"no\" on a series motor")]
    [InlineData("series", "series-field", "turns-ratio = 1.0", "series-field.turns-ratio: found 1.0 on a series motor; allowed: series-field.resistance and series-field.inductance alone, or motor.kind = \"compound\"")]
    [InlineData("series", "brake", "resistance = \"2 ohm\"\nrelease-speed = \"60 rpm\"", "brake.resistance: found a dynamic brake on a series motor, whose field would have to be reversed first; allowed: no [brake], or another motor.kind")]
    [InlineData("series", "brake", "delay = \"1 s\"", "brake.delay: found a dynamic brake on a series motor")]
    [InlineData("shunt", "motor", "constant = \"2.1 V s/rad\"", "field.curve-emfs: found a curve that gives 1.938 V s/rad at 1.02 A; allowed: within 5 % of the machine constant of 2.1 V s/rad there")]
    [InlineData("series", "motor", "constant = \"2 V s/rad\"", "field.curve-emfs: found a curve that gives 2.515 V s/rad at 64 A; allowed: within 5 % of the machine constant of 2 V s/rad there")]
    [InlineData("separately excited", "field", "curve-constants = [\"1 V s/rad\", \"2 V s/rad\"]", "field.curve-emfs: found it beside field.curve-constants; allowed: one of the two")]
    [InlineData("separately excited", "field", "rated-current = \"1.6 A\"", "field.curve-currents: found a curve that ends at 1.5 A; allowed: points up to at least the 1.6 A of the rated point")]
    public void Prepare_KeyThatTheKindHasNoUseFor_IsRefused(string kind, string table, string lines, string expected)
    {
        string key = lines.Split(" =")[^2].Split('\n')[^1], text = MachineCases.Text(kind);
        if (table == "motor") text = MachineCases.Without(text, key);

        AssertRefused(MachineCases.With(text, table, lines), expected);
    }

    [Theory]
    [InlineData("long shunt", "turns-ratio", "series-field.turns-ratio: found nothing; allowed: a plain number above 0, up to 1, e.g. 0.004")]
    [InlineData("long shunt", "rated-current", "motor.rated-current: found nothing; allowed: a current in A, mA or kA, above 0, up to 1000 kA, e.g. \"78 A\"; or motor.rated-power, rated-voltage and efficiency")]
    [InlineData("long shunt", "curve-currents", "field.curve-currents: found nothing; allowed: a list of 2 to 12 values")]
    [InlineData("series", "curve-currents", "field.curve-currents: found nothing; allowed: a list of 2 to 12 values")]
    [InlineData("series", "curve-emfs", "field.curve-constants: found nothing; allowed: a list of 2 to 12 values, each a machine constant in V s/rad, V s, N m/A or V/krpm, 0 to 1e6 V s/rad, e.g. [\"0.05 V s/rad\", \"1 V s/rad\", \"1.6 V s/rad\"]; or field.curve-emfs with field.curve-speed")]
    [InlineData("series", "curve-emfs", "field.curve-speed: found \"750 rpm\" without field.curve-emfs; allowed: field.curve-emfs in the file, measured at that speed")]
    [InlineData("series", "curve-speed", "field.curve-speed: found nothing; allowed: a speed in rpm")]
    [InlineData("shunt", "curve-currents", "field.curve-currents: found nothing; allowed: a list of 2 to 12 values")]
    public void Prepare_KeyThatTheKindNeeds_IsAskedFor(string kind, string key, string expected)
    {
        string text = MachineCases.Without(MachineCases.Text(kind), key);
        if (key == "rated-current") text = text.Replace("\"120 %\"", "\"62 A\"", StringComparison.Ordinal).Replace("\"200 %\"", "\"104 A\"", StringComparison.Ordinal);

        AssertRefused(text, expected);
    }

    [Theory]
    [InlineData("\"0 A\", \"0.3 A\"", "\"0.1 A\", \"0.3 A\"", "field.curve-currents: found \"0.1 A, 0.3 A, 0.6 A, 0.9 A, 1.2 A, 1.5 A\"; allowed: currents that begin with 0 A and rise")]
    [InlineData("\"0.6 A\", \"0.9 A\"", "\"0.9 A\", \"0.9 A\"", "field.curve-currents: found \"0 A, 0.3 A, 0.9 A, 0.9 A, 1.2 A, 1.5 A\"; allowed: currents that begin with 0 A and rise")]
    [InlineData("\"0.9 A\"", "\"0.6000001 A\"", "field.curve-currents: found \"0 A, 0.3 A, 0.6 A, 0.6000001 A, 1.2 A, 1.5 A\"; allowed: currents that begin with 0 A and rise, each by more than a millionth of the last")]
    [InlineData("curve-speed = \"1000 rpm\"", "curve-speed = \"1e-300 rpm\"", "field.curve-speed: found \"1e-300 rpm\", at which the curve ends with 2.215E+303 V s/rad; allowed: a speed at which its constants lie above 0, up to 1e6 V s/rad")]
    [InlineData("\"190 V\"", "\"140 V\"", "field.curve-emfs: found \"7 V, 82 V, 148 V, 140 V, 218 V, 232 V\"; allowed: back-EMFs that do not fall")]
    [InlineData("\"7 V\"", "\"0 V\"", "field.curve-emfs: found \"0 V, 82 V, 148 V, 190 V, 218 V, 232 V\", without anything at 0 A; allowed: a first value above 0, which the iron keeps without field current: about 3 % of the rated is usual, here 6.96 V")]
    [InlineData("\"7 V\", ", "", "field.curve-emfs: found 5 back-EMFs for 6 currents; allowed: one for each of field.curve-currents")]
    [InlineData("\"7 V\", \"82 V\", \"148 V\", \"190 V\", \"218 V\", \"232 V\"", "\"7 V\"", "field.curve-emfs: found a list of 1 values; allowed: 2 to 12 values, each 0 to 100 kV")]
    [InlineData("\"1.5 A\"]", "\"1.25 A\"]\nrated-current = \"1 A\"", "field.curve-currents: found a curve that ends at 1.25 A; allowed: points up to at least the 1.294 A of the field that the supply drives", "\"85 ohm\"")]
    public void Prepare_CurveThatIsNone_IsRefused(string found, string replacement, string expected, string fieldOhms = "\"100 ohm\"")
    {
        string text = MachineCases.SeparatelyExcited.Replace(found, replacement, StringComparison.Ordinal).Replace("\"100 ohm\"", fieldOhms, StringComparison.Ordinal);
        Assert.NotEqual(MachineCases.SeparatelyExcited, text);

        AssertRefused(text, expected);
    }

    [Fact]
    public void Prepare_SeriesWindingStrongerThanTheField_IsRefused() =>
        AssertRefused(
            MachineCases.Differential.Replace("turns-ratio = 0.001", "turns-ratio = 0.03", StringComparison.Ordinal),
            "series-field.turns-ratio: found an armature current that takes 0.3898 A more than the field gives at the rated point; allowed: a ratio that leaves flux there");

    [Theory]
    [InlineData("shunt", "field-supply-voltage = \"80 V\"", "event.field-supply-voltage: found it on a shunt motor, whose field lies on supply.voltage; allowed: event.supply-voltage, or motor.kind = \"separately excited\"")]
    [InlineData("short shunt", "field-supply-voltage = \"80 V\"", "event.field-supply-voltage: found it on a compound motor, whose field lies on supply.voltage")]
    [InlineData("series", "field-supply-voltage = \"80 V\"", "event.field-supply-voltage: found it in a case without a field circuit; allowed: a motor.kind with a field winding in the file")]
    [InlineData("series", "field = \"open\"", "event.field: found it in a case without a field circuit; allowed: a motor.kind with a field winding in the file")]
    public void Prepare_EventThatTheKindCannotHave_IsRefused(string kind, string line, string expected) =>
        AssertRefused($"{MachineCases.Text(kind)}\n[[event]]\nat = \"1 s\"\n{line}\n", expected);

    [Fact]
    public void Prepare_FieldOpensOnAShuntMotor_IsAnEvent() =>
        Assert.True(Assert.Single(MachineCases.Prepare(MachineCases.Shunt + "\n[[event]]\nat = \"1 s\"\nfield = \"open\"\n").Setup.Events).FieldOpen);

    private static void AssertRefused(string text, string expected)
    {
        string message = MachineCases.Refused(text);

        Assert.Contains(": " + expected, message, StringComparison.Ordinal);
        Assert.All(message.Split('\n'), line => Assert.Matches(@"^case\.toml(:\d+)?: ", line));
    }
}
