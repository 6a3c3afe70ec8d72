using System;
using System.Linq;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>Page 13: dividers, shunts and pulses, worked out for the three shipped cases.</summary>
public sealed class MeasuringTableTests
{
    private const double Counts = 4096;
    private const double AmplifierVolts = 2;
    private const double ShuntVolts = 0.25;
    private const double TimeoutSeconds = 0.1;
    private const double RpmPerRadPerSec = 30 / Math.PI;

    // Kiloohm, all of R11 and R12; shunt in milliohm; range of a Hall sensor in A. Chosen on the page.
    private static readonly (double Upper, double Lower, double Shunt, double Hall)[] Parts = [(1170, 5.1, 0.5, 400), (240, 4.7, 3, 80), (112, 4.3, 5, 50)];

    private static readonly int[] PulseCounts = [1, 4, 20, 60, 360];

    private static readonly PreparedRun[] Runs = [.. ShippedDesigns.Names.Select(ShippedDesigns.Prepared)];

    [Fact]
    public void WhatMustBeShown_IsWhatTheControllerHolds() => AssertHas(
        ["case", "supply, V", "highest believed, V", "rated, A", "peak, A", "instant trip, A", "no-load speed, r/min", "highest believed, r/min"],
        i => [Runs[i].Designed.Design.SupplyVolts, (double)Runs[i].Settings.HighestSupplyVolts, Runs[i].Designed.Plate.RatedAmps!.Value,
            (double)Runs[i].Settings.PeakAmps, (double)Runs[i].Settings.InstantTripAmps, NoLoadRpm(Runs[i]), Runs[i].Settings.HighestSpeedRadPerSec * RpmPerRadPerSec]);

    [Fact]
    public void Dividers_ShowMoreThanIsBelieved()
    {
        Assert.All(Enumerable.Range(0, 3), i => Assert.InRange(FullVolts(i), 1.02 * Runs[i].Settings.HighestSupplyVolts, 1.2 * Runs[i].Settings.HighestSupplyVolts));

        AssertHas(
            ["case", "R11 in all, kohm", "R12, kohm", "full scale, V", "one count, V", "counts at the supply", "heat in R11 at it, mW", "one count as peak current, A"],
            i => [Parts[i].Upper, Parts[i].Lower, FullVolts(i), FullVolts(i) / Counts, Math.Round(Supply(i) / FullVolts(i) * Counts),
                Math.Pow(Supply(i) / (Parts[i].Upper + Parts[i].Lower), 2) * Parts[i].Upper, FullVolts(i) / Counts / Runs[i].Designed.Design.ArmatureOhms]);
    }

    [Fact]
    public void Shunts_ShowTheInstantTripWithRoom()
    {
        Assert.All(Enumerable.Range(0, 3), i => Assert.True(ShuntAmps(i) > 1.5 * Runs[i].Settings.InstantTripAmps));

        AssertHas(
            ["case", "shunt, mohm", "range either way, A", "one count, A", "range over instant trip", "heat at rated current, W", "heat at the peak, W"],
            i => [Parts[i].Shunt, ShuntAmps(i), 2 * ShuntAmps(i) / Counts, ShuntAmps(i) / Runs[i].Settings.InstantTripAmps,
                ShuntWatts(i, Runs[i].Designed.Plate.RatedAmps!.Value), ShuntWatts(i, Runs[i].Settings.PeakAmps)]);
    }

    [Fact]
    public void HallSensors_ShowTheInstantTripWithRoom()
    {
        Assert.All(Enumerable.Range(0, 3), i => Assert.True(Parts[i].Hall > 1.5 * Runs[i].Settings.InstantTripAmps));

        AssertHas(
            ["case", "sensor for either way, A", "output per ampere, mV", "one count, A", "range over instant trip", "an offset of 1 % of the range, A"],
            i => [Parts[i].Hall, 3300 / (2 * Parts[i].Hall), 2 * Parts[i].Hall / Counts, Parts[i].Hall / Runs[i].Settings.InstantTripAmps, 0.01 * Parts[i].Hall]);
    }

    [Fact]
    public void Pulses_GiveTheSlowestKnownSpeedAndTheTimeToIt() => Note.AssertHas("13-measuring.md", Note.Table(
        ["pulses per revolution", "slowest known speed, r/min", .. ShippedDesigns.Names.SelectMany(name => new[] { $"{Short(name)}: pulses/s at no load", $"{Short(name)}: known after, ms" })],
        PulseCounts.Select(pulses => (object[])[pulses, 60 / (pulses * TimeoutSeconds), .. Runs.SelectMany(run => new object[] { NoLoadRpm(run) / 60 * pulses, KnownAfterMilliseconds(run, pulses) })])));

    private static void AssertHas(string[] header, Func<int, double[]> row) => Note.AssertHas(
        "13-measuring.md", Note.Table(header, Enumerable.Range(0, 3).Select(i => (object[])[Short(ShippedDesigns.Names[i]), .. row(i).Cast<object>()])));

    private static string Short(string name) => name.Replace(".toml", "", StringComparison.Ordinal);

    private static double Supply(int i) => Runs[i].Designed.Design.SupplyVolts;

    private static double FullVolts(int i) => AmplifierVolts * (Parts[i].Upper + Parts[i].Lower) / Parts[i].Lower;

    private static double ShuntAmps(int i) => 1000 * ShuntVolts / Parts[i].Shunt;

    private static double ShuntWatts(int i, double amps) => amps * amps * Parts[i].Shunt / 1000;

    private static double NoLoadRpm(PreparedRun run) => run.Designed.Design.SupplyVolts / run.Setup.Machine.Constant * RpmPerRadPerSec;

    // Two edges after at most two pitches, at the acceleration of the peak current against the constant torque.
    private static double KnownAfterMilliseconds(PreparedRun run, int pulses)
    {
        double torque = run.Setup.Machine.Constant * run.Settings.PeakAmps - run.Setup.Load.ConstantNewtonMetres;
        return 1000 * Math.Sqrt(2 * 2 * (2 * Math.PI / pulses) * run.Setup.Machine.InertiaKgM2 / torque);
    }
}
