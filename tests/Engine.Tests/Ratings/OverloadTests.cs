using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>The trip class that protects without tripping a start. Sources: tests/published/SOURCES.md, CHK-16 and CHK-17.</summary>
public sealed class OverloadTests
{
    // A flywheel of 140 kg m2 takes more than two minutes to start at 1.6 times the rated current: too long for the fast classes.
    private static readonly (string, string?)[] HeavyStart =
    [
        ("load.inertia", "140 kg m2"), ("load.constant-torque", "10 N m"), ("load.fan-torque", null), ("control.maximum-stage-time", "500 s"),
        ("control.period", "5 ms"), ("limits.start-time", null), ("protection.overload-current", "77 A"), ("contactors.rated-current", "[\"110 A\"]"),
    ];

    [Fact]
    [Trait("Source", "CHK-16")]
    public void Choose_HeavyStart_TakesTheFastestClassThatBearsIt()
    {
        OverloadChoice choice = Choice(HeavyStart);

        Assert.Equal(choice.Rows.First(row => row.Objection.Length == 0).Class, choice.Chosen);
        Assert.Contains(choice.Chosen!.Name, (string[])["20", "30"]);
        Assert.StartsWith("a cold start", choice.Rows[0].Objection, StringComparison.Ordinal);

        // The image by its own equation, dL/dt = (x^2 - L)/tau, over the recorded current: the controller's differs by rounding alone.
        foreach (OverloadRow row in choice.Rows)
        {
            double level = 0, highest = 0, last = 0;
            foreach ((double seconds, double amps) in choice.Start)
            {
                double square = amps * amps / (1.12 * 1.12 * 77 * 77), left = Math.Exp(-(seconds - last) / row.Class.Seconds);
                (level, last) = (square + (level - square) * left, seconds);
                highest = Math.Max(highest, level);
            }

            Assert.Equal(highest, row.LevelAfterColdStart, 2e-3);
            Assert.True(row.LevelAfterHotStart > row.LevelAfterColdStart);
        }
    }

    // What the choice says is what the controller does.
    [Fact]
    public void Run_ClassesOfTheChoice_TripOrBearTheStartAsItSays()
    {
        OverloadChoice choice = Choice(HeavyStart);
        RunResult Start(string name) => LineShaftCase.Run(LineShaftCase.With([.. HeavyStart, ("protection.overload-class", $"\"{name}\""), ("run.duration", "240 s")])).Result;

        Assert.True(choice.Rows[0].LevelAfterColdStart > 1);
        Assert.Equal(FaultId.Overload, Assert.Single(Start("10A").Faults).Id);
        Assert.Empty(Start(choice.Chosen!.Name).Faults);
    }

    // The winding's limit and the trip curve cross where the choice says so: a class that is too slow for it is not taken.
    [Theory]
    [InlineData("20 kJ/K", null)]
    [InlineData("1 kJ/K", "30")]
    public void Choose_Winding_RefusesClassesThatTripLaterThanItBears(string capacity, string? refused)
    {
        OverloadChoice choice = Choice(("motor.thermal-capacity", capacity), ("motor.thermal-resistance", "0.06 K/W"), ("motor.winding-temperature-limit", "155 degC"));

        OverloadRow? late = choice.Rows.FirstOrDefault(row => row.UnprotectedMultiple != null && row.Class.Name == refused);
        Assert.Equal(refused, late?.Class.Name);
        Assert.All(choice.Rows.Where(row => row.UnprotectedMultiple == null), row =>
        {
            for (double multiple = 1.2; multiple < choice.InstantTripAmps / choice.SettingAmps; multiple += 0.1)
            {
                double amps = multiple * choice.SettingAmps;
                Assert.True(row.Class.TripSeconds(multiple, 0) <= choice.Winding!.SecondsTo(155, 20, amps) * 1.001);
            }
        });
        if (late == null) return;
        double at = late.UnprotectedMultiple!.Value * choice.SettingAmps;
        Assert.True(late.Class.TripSeconds(at / choice.SettingAmps, 0) > choice.Winding!.SecondsTo(155, 20, at)
            || late.Class.TripSeconds(at / choice.SettingAmps, 1) > choice.Winding.SecondsTo(155, choice.HotCelsius!.Value, at));
    }

    // From start to start the image goes as s L + h: cycle after cycle ends at the same level.
    [Fact]
    [Trait("Source", "CHK-42")]
    public void Choose_Duty_LevelIsWhereRepetitionEnds()
    {
        OverloadChoice choice = Choice(("motor.thermal-capacity", "9 kJ/K"), ("motor.thermal-resistance", "0.06 K/W"), ("duty.run-time", "25 s"), ("duty.rest", "35 s"));
        OverloadRow ten = choice.Rows[1];

        double level = 0, running = choice.Start[^1].Amps, target = running * running / (1.12 * 1.12 * 77 * 77);
        for (int cycle = 0; cycle < 200; cycle++)
        {
            double before = 0;
            foreach ((double seconds, double amps) in choice.Start)
            {
                double square = amps * amps / (1.12 * 1.12 * 77 * 77);
                level = square + (level - square) * Math.Exp(-(seconds - before) / 290);
                before = seconds;
            }

            level = target + (level - target) * Math.Exp(-(25 - before) / 290);
            level *= Math.Exp(-35.0 / 290);
        }

        Assert.Equal(level, ten.DutyStartLevel!.Value, 2e-3);
    }

    [Fact]
    public void Choose_WithoutAnyCurrentToSetItTo_IsNotThere() =>
        Assert.Null(CaseRatings.Of(CaseDesign.Of(LineShaftCase.With(
            ("motor.rated-current", null), ("motor.constant", "1.565 V s/rad"), ("contactors.rated-current", "[\"110 A\"]"))), TestContext.Current.CancellationToken)!.Overload);

    private static OverloadChoice Choice(params (string Key, string? Value)[] changes) =>
        CaseRatings.Of(CaseDesign.Of(LineShaftCase.With(changes)), TestContext.Current.CancellationToken)!.Overload!;
}
