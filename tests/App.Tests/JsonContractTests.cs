using System;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace StarterCtl.App.Tests;

/// <summary>The JSON of design and run is a contract with other programs: keys may be added, never renamed.</summary>
public sealed class JsonContractTests : IDisposable
{
    // The starter of Chapman, Electric Machinery Fundamentals, 4th ed., chapter 9 (from memory), with mechanical data of our own.
    private const string ThreeStages = """
        [supply]
        voltage = "250 V"
        [motor]
        armature-resistance = "0.05 ohm"
        constant = "2.5 V s/rad"
        inertia = "4 kg m2"
        [load]
        constant-torque = "250 N m"
        [starter]
        peak-current = "700 A"
        switching-current = "350 A"
        [control]
        period = "20 us"
        [run]
        duration = "1 s"
        """;

    private readonly Cli _cli = new();

    [Fact]
    public async Task Design_Json_HasEveryAgreedKeyAndThePublishedNumbers()
    {
        int code = await _cli.Run("design", _cli.Write("chapman.toml", ThreeStages), "--json");

        JsonElement json = _cli.Json();
        Assert.Equal(0, code);
        AssertHasKeys(json, "supplyVolts", "armatureOhms", "peakAmps", "switchingAmps", "stageCount", "stageCountExact", "stages", "warnings");
        foreach (JsonElement stage in json.GetProperty("stages").EnumerateArray())
        {
            AssertHasKeys(stage, "stage", "totalOhms", "sectionOhms", "cutoutVolts", "cutoutFraction", "cutoutRpm", "peakAmps", "expectedSeconds", "energyJoules");
        }

        Assert.Equal(3, json.GetProperty("stageCount").GetInt32());
        Assert.Equal(2.84, json.GetProperty("stageCountExact").GetDouble(), 0.005);
        Assert.Equal([125, 187.5, 218.75], Numbers(json.GetProperty("stages"), "cutoutVolts"), Within(0.05));
        Assert.Equal([0.1786, 0.0893, 0.0393], Numbers(json.GetProperty("stages"), "sectionOhms"), Within(0.0001));
        Assert.Equal([0.2001, 0.1001, 0.0500], Numbers(json.GetProperty("stages"), "expectedSeconds"), Within(0.0001));
    }

    [Fact]
    public async Task Run_Json_HasEveryAgreedKeyAndTheClosedFormsNumbers()
    {
        int code = await _cli.Run("run", _cli.Write("chapman.toml", ThreeStages), "--json", "--out", _cli.OutFolder);

        JsonElement json = _cli.Json();
        Assert.Equal(0, code);
        AssertHasKeys(
            json, "verdict", "cutouts", "peakAmps", "peakTorqueNewtonMetres", "secondsToSpeed", "finalRpm", "finalAmps", "rmsAmps", "sectionJoules",
            "armatureJoules", "supplyJoules", "loadJoules", "kineticJoules", "phases", "faults");
        AssertHasKeys(json.GetProperty("cutouts")[0], "stage", "seconds", "backEmfVolts", "rpm", "peakAmpsAfter");
        AssertHasKeys(json.GetProperty("phases")[0], "phase", "seconds", "reason");
        Assert.Equal("pass", json.GetProperty("verdict").GetString());

        // Closed form, t = (J R / k^2) ln((I1 - IL)/(I2 - IL)), cutouts within 50 us. A decision is at most one tick of 20 us
        // late; the back-EMF then rises at k (k I2 - TL) / J = 390 V/s, which is 0.16 A through the last 0.05 ohm.
        Assert.Equal([0.20011, 0.30017, 0.35020], Numbers(json.GetProperty("cutouts"), "seconds"), Within(50e-6));
        Assert.Equal([700, 700, 625], Numbers(json.GetProperty("cutouts"), "peakAmpsAfter"), Within(0.16));
        Assert.Equal(700, json.GetProperty("peakAmps").GetDouble(), 0.001);
        Assert.Equal(100, json.GetProperty("finalAmps").GetDouble(), 0.01);
        Assert.Equal((250 - 100 * 0.05) / 2.5 * 30 / Math.PI, json.GetProperty("finalRpm").GetDouble(), 0.01);
    }

    [Fact]
    public async Task Run_JsonOfATrip_HasTheFaultWithItsSnapshot()
    {
        int code = await _cli.Run("run", System.IO.Path.Combine(Repository.Root, "sim", "cases", "field-loss.toml"), "--json", "--out", _cli.OutFolder);

        JsonElement fault = _cli.Json().GetProperty("faults")[0];
        Assert.Equal(0, code);
        AssertHasKeys(_cli.Json(), "brakeJoules");
        AssertHasKeys(fault, "id", "seconds", "value", "limit", "name", "channel", "phase", "stage", "snapshot");
        AssertHasKeys(
            fault.GetProperty("snapshot"), "supplyVolts", "armatureAmps", "speedRadPerSec", "speedValid", "fieldAmps", "backEmfVolts", "resistiveBackEmfVolts",
            "lineClosed", "stagesClosed", "lineCommanded", "stagesCommanded");
        Assert.Equal("FieldLost", fault.GetProperty("id").GetString());
        Assert.Equal(fault.GetProperty("value").GetDouble(), fault.GetProperty("snapshot").GetProperty("fieldAmps").GetDouble());
    }

    [Fact]
    public async Task Design_WithoutInertia_LeavesTimesOutAndSaysSo()
    {
        int code = await _cli.Run("design", _cli.Write("case.toml", ThreeStages.Replace("inertia = \"4 kg m2\"", "", StringComparison.Ordinal)), "--json");

        Assert.Equal(0, code);
        Assert.Equal(JsonValueKind.Null, _cli.Json().GetProperty("stages")[0].GetProperty("expectedSeconds").ValueKind);
        Assert.Contains("motor.inertia", _cli.Json().GetProperty("warnings")[0].GetString()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task StandardOutput_WithJson_CarriesJsonAlone()
    {
        await _cli.Run("run", _cli.Write("chapman.toml", ThreeStages), "--json", "--out", _cli.OutFolder);

        Assert.Equal(JsonValueKind.Object, _cli.Json().ValueKind);
        Assert.Contains("wrote the record", _cli.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', _cli.Output + _cli.Errors);
    }

    public void Dispose() => _cli.Dispose();

    private static void AssertHasKeys(JsonElement json, params string[] keys) =>
        Assert.Empty(keys.Except(json.EnumerateObject().Select(property => property.Name)));

    private static double[] Numbers(JsonElement rows, string key) =>
        [.. rows.EnumerateArray().Select(row => row.GetProperty(key).GetDouble())];

    private static Func<double, double, bool> Within(double tolerance) => (expected, actual) => Math.Abs(expected - actual) <= tolerance;
}
