using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class CaseRunnerTests
{
    private static readonly (string Key, string? Value)[] NoLoad =
    [
        ("load.constant-torque", null), ("load.viscous-torque", null), ("load.fan-torque", null),
    ];

    [Theory]
    [InlineData("1e-320 H")]
    [InlineData("1e-10 H")]
    [InlineData("0.000999 uH")]
    public void Run_InductanceThatNoStepCanFollow_IsRefused(string henries)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("motor.armature-inductance", henries))));

        Assert.Equal("motor.armature-inductance", problem.Key);
        Assert.Equal(henries, problem.Found);
        Assert.Contains("0.001 uH", problem.Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0 H")]
    [InlineData("1e-9 H")]
    [InlineData("0.001 uH")]
    [InlineData("1 uH")]
    public void Run_SmallestInductances_Start(string henries)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("motor.armature-inductance", henries), ("run.duration", "4 s")));

        Assert.Equal("pass", study.Verdict.Word);
        Assert.InRange(study.Result.PeakAmps, 150, 155);
    }

    [Theory]
    [InlineData("1e-13 kg m2")]
    [InlineData("1e-300 kg m2")]
    public void Run_InertiaNextToNothing_IsRefused(string inertia) =>
        Assert.Equal("motor.inertia", Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("motor.inertia", inertia), ("load.inertia", null)))).Key);

    [Theory]
    [InlineData("1e-4 V s/rad", "motor.constant")]
    [InlineData("1e-60 V s/rad", "motor.constant")]
    public void Run_ConstantThatTheControllerCannotHold_IsRefusedAtItsKey(string constant, string key)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With([.. NoLoad, ("motor.constant", constant)])));

        Assert.Equal(key, problem.Key);
        Assert.Contains("controller cannot hold", problem.Found, StringComparison.Ordinal);
    }

    // Half above 900 kA is more than the controller holds; given by hand, 1000 kA is just not.
    [Fact]
    public void Run_PeakWhoseTripTheControllerCannotHold_IsRefusedAtTheTrip()
    {
        (string Key, string? Value)[] huge =
        [
            .. NoLoad, ("starter.peak-current", "900 kA"), ("starter.switching-current", "500 kA"), ("motor.armature-resistance", "100 uohm"),
            ("motor.constant", "1.6 V s/rad"), ("supply.resistance", null), ("run.duration", "1 s"),
        ];

        CaseProblem refused = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(huge)));
        StartStudy byHand = LineShaftCase.Run(LineShaftCase.With([.. huge, ("control.instant-trip", "1000 kA")]));

        Assert.Equal("control.instant-trip", refused.Key);
        Assert.Contains("instant-trip", refused.Found, StringComparison.Ordinal);
        Assert.Equal(1e6f, byHand.Settings.InstantTripAmps);
    }

    [Theory]
    [InlineData("0.2 us", 1)]
    [InlineData("1.2 us", 2)]
    [InlineData("2 us", 2)]
    [InlineData("500 ms", 500_000)]
    public void Run_ContactTimeBetweenMicroseconds_IsRoundedUp(string written, int microseconds) =>
        Assert.Equal(microseconds, LineShaftCase.Run(LineShaftCase.With(("control.contact-time", written), ("run.duration", "100 ms"))).Settings.ContactMicroseconds);

    [Fact]
    public void Run_ContactTimeThatRoundsToNone_IsRefusedAtItsKey() =>
        Assert.Equal("control.contact-time", Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("control.contact-time", "1e-5 us")))).Key);

    [Fact]
    public void Run_DurationBelowOnePeriod_IsRefusedAtItsKey()
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("run.duration", "0.9 ms"))));

        Assert.Equal("run.duration", problem.Key);
        Assert.Equal("0.9 ms", problem.Found);
        Assert.Contains("1 ms", problem.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_DurationOfOnePeriod_IsRun() =>
        Assert.Equal(3, LineShaftCase.Run(LineShaftCase.With(("run.duration", "1 ms"))).Record.Samples.Count);

    // 3600 s in steps of 10 us are 360 million samples; 8 s in steps of 9 s are none.
    [Theory]
    [InlineData("3600 s", "10 us", "10 us", "3.6E+8 samples")]
    [InlineData("50.1 s", "10 us", "10 us", "5.01E+6 samples")]
    [InlineData("8 s", "9 s", "1 ms", "0.8889 samples")]
    public void Run_RecordOfTooManySamplesOrNone_IsRefusedAtItsKey(string duration, string recordPeriod, string period, string samples)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(
            ("run.duration", duration), ("run.record-period", recordPeriod), ("control.period", period))));

        Assert.Equal("run.record-period", problem.Key);
        Assert.Contains(samples, problem.Found, StringComparison.Ordinal);
        Assert.Contains("5000000", problem.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_OnlyAVoltage_NamesEveryMissingKeyAtOnce()
    {
        string[] keys = [.. LineShaftCase.Refused(CaseFile.Parse("bare.toml", "[supply]\nvoltage = \"220 V\"\n")).Select(problem => problem.Key)];

        Assert.Equal(
            ["motor.armature-resistance", "motor.constant", "motor.inertia", "starter.peak-current", "starter.switching-current"], keys.Order());
    }

    [Fact]
    public void Run_IncompleteConstructionAndNoInertia_NamesEveryMissingKeyAtOnce()
    {
        string[] keys = [.. LineShaftCase.Refused(LineShaftCase.With(("motor.construction.poles", "4"), ("motor.inertia", null))).Select(problem => problem.Key)];

        Assert.Equal(
            ["motor.construction.conductors", "motor.construction.flux-per-pole", "motor.construction.parallel-paths", "motor.inertia"], keys.Order());
    }

    [Fact]
    public void Run_BrushDropAboveRatedVoltage_BlamesTheBrushDrop()
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("motor.rated-voltage", "110 V"), ("motor.brush-drop", "150 V"))));

        Assert.Equal("motor.brush-drop", problem.Key);
        Assert.Equal("150 V", problem.Found);
        Assert.Contains("110 V", problem.Allowed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("30 A", true)]
    [InlineData("120 A", false)]
    [InlineData("none", false)]
    public void Run_LockoutBelowTheLoadsCurrent_Warns(string lockout, bool isWarned)
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("control.lockout-current", lockout)));

        Assert.Equal(isWarned, study.Warnings.Any(text => text.Contains("lockout current of 30 A", StringComparison.Ordinal)));
        Assert.Equal(isWarned, study.Verdict.Word == "fail");
    }
}
