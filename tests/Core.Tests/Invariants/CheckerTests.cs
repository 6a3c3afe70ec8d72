using System;
using System.Collections.Generic;
using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>The checker bites: a stream of outputs that breaks an invariant on purpose is caught, by that invariant.</summary>
public sealed class CheckerTests
{
    private readonly InvariantChecker _checker = new(Bench.Chk01());
    private readonly Readings _readings = new() { SupplyVolts = 250f, SpeedValid = true };

    public static TheoryData<string, string> Breaks
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach ((string name, string invariant, _) in Broken) rows.Add(name, invariant);
            return rows;
        }
    }

    // Each is the end of a stream: a sound one up to a point, and then one tick that breaks something.
    private static readonly (string Name, string Invariant, Func<CheckerTests, string?> Last)[] Broken =
    [
        ("stage 2 before stage 1", "stages close in order", t => t.Running(0, fast: true).Tick(true, 2)),
        ("stage that is not fitted", "stages close in order", t => t.Running(7, fast: true).Tick(true, 15)),
        ("stage without the line", "no stage without the line", t => t.Running(1, fast: true).Tick(false, 1)),
        ("two stages at once", "one stage per decision", t => t.Running(0, fast: true).Tick(true, 3)),
        ("next stage without proof", "next stage only when the last is proven closed", t => t.Running(1, fast: true).Contacts(true, 0).Tick(true, 3)),
        ("stage with the line still open", "no stage before the line is proven closed", t => t.Running(0, fast: true).Contacts(false, 0).Tick(true, 1)),
        ("stage opens while running", "no stage opens under the line", t => t.Running(3, fast: true).Tick(true, 1)),
        ("line onto a closed stage", "line only when every stage is proven where it should be", t => t.Ready().Contacts(false, 4).Press(start: true).Tick(true, 0)),
        ("line onto its own weld", "line only when its own contact is proven open", t => t.Ready().Contacts(true, 0).Press(start: true).Tick(true, 0)),
        ("stage together with the line", "line only when every stage is proven where it should be", t => t.Ready().Press(start: true).Read(speed: 96f).Tick(true, 1)),
        ("stop ignored", "stop wins in the same tick", t => t.Running(3, fast: true).Press(stop: true).Tick(true, 3)),
        ("emergency stop ignored", "stop wins in the same tick", t => t.Running(3, fast: true).Press(emergencyStop: true).Tick(true, 3)),
        ("line without start", "start only on a press in ready", t => t.Ready().Tick(true, 0)),
        ("line on a start held at power-up", "start only on a press in ready", t => t.Press(start: true).Tick(true, 0)),
        ("line straight out of a trip", "no start straight out of a trip", t => t.Tripped().Press(start: true, reset: true).Tick(true, 0)),
        ("line while tripped", "tripped is all off", t => t.Running(1, fast: true).Tick(true, 1, tripped: true)),
        ("trip that ends by itself", "a trip stays until a reset", t => t.Tripped().Tick(false, 0)),
        ("reset held since before", "a trip stays until a reset", t => t.Tripped(resetHeld: true).Press(reset: true).Tick(false, 0)),
        ("reset with start held", "no reset while start is held", t => t.Tripped().Press(start: true, reset: true).Tick(false, 0)),
        ("emergency stop without a trip", "emergency stop trips", t => t.Ready().Press(emergencyStop: true).Tick(false, 0)),
        ("NaN believed", "a bad reading trips", t => t.Running(0, fast: true).Read(volts: float.NaN).Tick(true, 0)),
        ("infinite speed believed", "a bad reading trips", t => t.Running(0, fast: true).Read(speed: float.PositiveInfinity).Tick(true, 1)),
        ("old speed believed", "a lost speed trips", t => t.Running(0, fast: true).Read(speedValid: false).Tick(true, 1)),
        ("overcurrent ignored", "overcurrent trips", t => t.Running(0, fast: true).Read(amps: -1001f).Tick(true, 0)),
        ("line contact ignored", "a wrong line contact trips", t => t.Running(0, fast: true).Contacts(false, 0).Tick(true, 0, elapsedMicroseconds: 100_000)),
        ("stage contact ignored", "a wrong stage contact trips", t => t.Running(1, fast: true).Contacts(true, 3).Tick(true, 1, elapsedMicroseconds: 100_000)),
        ("cutout below the threshold", "no peak above the permitted one", t => t.Running(0, fast: false).Tick(true, 1)),
        ("lost line may return onto a slow shaft", "no peak when a contact that opened closes again", t => t.Running(1, fast: true).Contacts(false, 1).Read(speed: 49f).Tick(true, 1)),
        ("lost stage may return onto a slow shaft", "no peak when a contact that opened closes again", t => t.Running(3, fast: true).Contacts(true, 2).Read(speed: 74f).Tick(true, 3)),
        ("stray stage while the line closes", "line coil off when a stage that nobody asked for closes before the line is in", t => t.Running(0, fast: true).Contacts(false, 1).Tick(true, 0)),
        ("stray stage while the line is lost", "line coil off when a stage that nobody asked for closes before the line is in", t => t.Running(1, fast: true).Contacts(false, 3).Tick(true, 1)),
        ("cutout far above the supply", "no current back above the permitted one", t => t.Running(0, fast: true).Read(speed: 150.1f).Tick(true, 1)),
        ("cutout above the lockout, current back", "no cutout above the lockout", t => t.Lockout().Running(0, fast: true).Read(amps: -401f).Tick(true, 1)),
        ("cutout above the lockout", "no cutout above the lockout", t => t.Lockout().Running(0, fast: true).Read(amps: 401f).Tick(true, 1)),
        ("cutout before the dwell", "no cutout before the dwell is over", t => t.Lockout().Running(0, fast: true).Tick(true, 1)),
        ("ready lamp with stop pressed", "ready lamp only when a start is accepted", t => t.Ready().Press(stop: true).Tick(false, 0, ready: true)),
        ("running lamp too early", "running lamp only with everything closed", t => t.Running(3, fast: true).Tick(true, 3, running: true)),
        ("two lamps", "one lamp at most", t => t.Tripped().Tick(false, 0, ready: true, tripped: true)),
    ];

    private InvariantChecker? _strict;

    [Theory]
    [MemberData(nameof(Breaks))]
    public void Checker_BrokenStream_IsCaught(string name, string invariant) =>
        Assert.Equal(invariant, Array.Find(Broken, row => row.Name == name).Last(this));

    [Fact]
    public void Checker_SoundStream_IsNot() =>
        Assert.Null(Running(7, fast: true).Tick(true, 7, running: true));

    [Fact]
    public void Checker_ControllerWithAWeakenedStream_IsCaughtOnEveryTickThatItSpoils()
    {
        Bench bench = new(contactTicks: 3);
        List<string> caught = [];
        foreach (Action<Outputs> spoil in new Action<Outputs>[] { o => o.CloseStages = 5, o => o.CloseLine = false, o => o.TrippedLamp = true })
        {
            bench = new Bench(contactTicks: 3);
            InvariantChecker checker = new(bench.Settings);
            string? violation = null;
            bench.Ticked = elapsed =>
            {
                if (bench.Controller.Stage == 3) spoil(bench.Outputs);
                violation ??= checker.Violation(elapsed, bench.Readings, bench.Outputs, bench.Controller.Phase);
            };
            bench.InStage(3);
            caught.Add(violation ?? "nothing");
        }

        Assert.Equal(["stages close in order", "no stage without the line", "tripped is all off"], caught);
    }

    private CheckerTests Lockout()
    {
        Settings settings = Bench.Chk01();
        settings.LockoutAmps = 400f;
        settings.MinimumDwellMicroseconds = 100 * Bench.Millisecond;
        _strict = new InvariantChecker(settings);
        return this;
    }

    private CheckerTests Ready()
    {
        Assert.Null(Tick(false, 0, ready: true));
        return this;
    }

    private CheckerTests Tripped(bool resetHeld = false)
    {
        Press(emergencyStop: true, reset: resetHeld);
        Assert.Null(Tick(false, 0, tripped: true));
        return Press();
    }

    private CheckerTests Running(int stages, bool fast)
    {
        Ready().Press(start: true);
        Assert.Null(Tick(true, 0));
        Press().Contacts(true, 0);
        Assert.Null(Tick(true, 0));
        Read(speed: fast ? 96f : 0f);
        for (int closed = 1; closed <= stages; closed = (closed << 1) | 1)
        {
            Assert.Null(Tick(true, closed));
            Contacts(true, closed);
        }

        return this;
    }

    private CheckerTests Press(bool start = false, bool stop = false, bool reset = false, bool emergencyStop = false)
    {
        _readings.StartPressed = start;
        _readings.StopPressed = stop;
        _readings.ResetPressed = reset;
        _readings.EmergencyStop = emergencyStop;
        return this;
    }

    private CheckerTests Contacts(bool line, int stages)
    {
        _readings.LineClosed = line;
        _readings.StagesClosed = stages;
        return this;
    }

    private CheckerTests Read(float volts = 250f, float amps = 0f, float speed = 96f, bool speedValid = true)
    {
        _readings.SupplyVolts = volts;
        _readings.ArmatureAmps = amps;
        _readings.SpeedRadPerSec = speed;
        _readings.SpeedValid = speedValid;
        return this;
    }

    private string? Tick(
        bool line, int stages, bool ready = false, bool running = false, bool tripped = false, int elapsedMicroseconds = 1000)
    {
        Outputs outputs = new()
        {
            CloseLine = line,
            CloseStages = stages,
            ReadyLamp = ready,
            RunningLamp = running,
            TrippedLamp = tripped,
        };
        Phase phase = tripped ? Phase.Tripped : running ? Phase.Running : line || stages != 0 ? Phase.Accelerating : Phase.Ready;
        return (_strict ?? _checker).Violation(elapsedMicroseconds, _readings, outputs, phase);
    }
}
