using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>What must hold when one thing alone is asked for, fitted or left: found by changes of the core that no other test saw.</summary>
public sealed class AloneTests
{
    private const int ContactTicks = 100;

    /// <summary>One limit of the motion each, and what breaks it.</summary>
    public static TheoryData<string, FaultId> Limits { get; } = new()
    {
        { "overspeed", FaultId.Overspeed },
        { "reverse", FaultId.ReverseRotation },
        { "stall", FaultId.Stalled },
        { "disagreement", FaultId.BackEmfDisagreement },
    };

    [Theory]
    [MemberData(nameof(Limits))]
    public void MotionLimit_SetAlone_IsWatched(string limit, FaultId fault)
    {
        Bench bench = new Bench(settings =>
        {
            switch (limit)
            {
                case "overspeed": settings.OverspeedRadPerSec = 120f; break;
                case "reverse": settings.ReverseRadPerSec = 5f; break;
                case "stall":
                    settings.StallAmps = 300f;
                    settings.StallMicroseconds = 50 * Bench.Millisecond;
                    settings.StandstillRadPerSec = 1f;
                    break;
                default:
                    settings.DisagreementVolts = 20f;
                    settings.DisagreementMicroseconds = 50 * Bench.Millisecond;
                    break;
            }
        }).Run();
        bench.Readings.ArmatureAmps = limit == "disagreement" ? 0f : 500f;
        bench.Readings.SpeedRadPerSec = limit switch
        {
            "overspeed" => 121f,
            "reverse" => -6f,
            "stall" => 0f,
            _ => 90f,
        };

        bench.TickUntil(() => bench.Controller.Fault.IsLatched, 200);

        Assert.Equal(fault, bench.Controller.Fault.Id);
    }

    [Fact]
    public void Outputs_SettingsThatFailTheirCheck_AreAllSwitchedOff()
    {
        Controller controller = new(new Settings());
        Outputs outputs = new()
        {
            CloseLine = true,
            CloseStages = 7,
            CloseBrake = true,
            CloseField = true,
            ReadyLamp = true,
            RunningLamp = true,
        };

        controller.Tick(1000, new Readings(), outputs);

        Assert.False(outputs.CloseLine || outputs.CloseBrake || outputs.CloseField || outputs.ReadyLamp || outputs.RunningLamp);
        Assert.Equal(0, outputs.CloseStages);
        Assert.True(outputs.TrippedLamp);
    }

    [Fact]
    public void Reset_Accepted_ForgetsEverythingOfTheFault()
    {
        Bench bench = new Bench().Run();
        bench.Readings.SupplyVolts = 700f;
        bench.Tick();
        Assert.Equal(Channel.Supply, bench.Controller.Fault.Channel);
        bench.Readings.SupplyVolts = 250f;
        bench.Readings.SpeedRadPerSec = 0f;
        bench.Ticks(5).PressReset();

        FaultLatch fault = bench.Controller.Fault;
        Assert.Equal((FaultId.None, 0f, 0f, Channel.None), (fault.Id, fault.Value, fault.Limit, fault.Channel));
        Assert.Equal((Phase.NotSetUp, 0), (fault.InPhase, fault.InStage));
    }

    // A fault that speaks of no reading, behind one that did.
    [Fact]
    public void Fault_WithoutAReading_NamesNoChannel()
    {
        Bench bench = new Bench().Run();
        bench.Readings.SupplyVolts = 700f;
        bench.Tick();
        bench.Readings.SupplyVolts = 250f;
        bench.Readings.SpeedRadPerSec = 0f;
        bench.Ticks(5).PressReset().PressEmergencyStop();

        Assert.Equal((FaultId.EmergencyStop, Channel.None), (bench.Controller.Fault.Id, bench.Controller.Fault.Channel));
    }

    [Fact]
    public void PowerUp_StagesWithoutContacts_AreNotProvenOpenForTheContactTime()
    {
        Bench bench = new(settings =>
        {
            settings.StageContactsFitted = false;
            settings.StepToleranceRatio = 0.2f;
            settings.ZeroAmps = 10f;
        });

        bench.Ticks(ContactTicks - 1);
        Assert.Equal(Refusal.StageNotOpen, bench.Controller.Refusals);
        bench.Tick();
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    [Fact]
    public void Start_NoBrakeAndNoBrakeContact_IsNotHeldUpByEither()
    {
        Bench bench = new Bench(settings =>
        {
            settings.BrakeContactFitted = false;
            settings.ZeroAmps = 10f;
        }).Tick();
        Assert.Equal(Refusal.None, bench.Controller.Refusals);

        // The line's own contact says that it is open: what the current sensor reads does not matter on this tick.
        bench.Readings.ArmatureAmps = 20f;
        bench.PressStart();

        Assert.True(bench.Outputs.CloseLine);
    }

    [Fact]
    public void Start_LineWithoutContactAndCurrentFlows_DoesNotCloseTheLine()
    {
        Bench bench = new Bench(
            settings =>
            {
                settings.LineContactFitted = false;
                settings.ZeroAmps = 10f;
            }).Ticks(ContactTicks);
        Assert.Equal(Refusal.None, bench.Controller.Refusals);

        bench.Readings.ArmatureAmps = 20f;
        bench.PressStart();

        Assert.False(bench.Outputs.CloseLine);
    }

    [Fact]
    public void WeldedStage_IsOneFaultAndNotTwo()
    {
        Bench bench = new Bench().Run();
        bench.StagesStuck = 2;
        bench.PressStop().TickUntil(() => bench.Controller.Fault.IsLatched, 300);
        bench.Ticks(50);

        Assert.Equal((FaultId.ContactDidNotOpen, 2f), (bench.Controller.Fault.Id, bench.Controller.Fault.Value));
        Assert.Equal([FaultId.ContactDidNotOpen], Logged.Faults(bench));
    }

    [Theory]
    [InlineData(0b0000, 0, 0, 0)]
    [InlineData(0b0001, 1, 1, 1)]
    [InlineData(0b1011, 2, 3, 1)]
    [InlineData(0b1000, 0, 0, 4)]
    [InlineData(0x7FFF, 15, 0x7FFF, 1)]
    [InlineData(int.MinValue, 0, 0, 32)]
    public void StageBits_AnySet_IsCountedFromStageOne(int bits, int run, int inOrder, int lowest) =>
        Assert.Equal((run, inOrder, lowest), (StageBits.Run(bits), StageBits.InOrder(bits), StageBits.Lowest(bits)));

    [Theory]
    [InlineData(int.MinValue, 0)]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(1_000_000_000, 1_000_000_000)]
    [InlineData(1_000_000_001, 1_000_000_000)]
    [InlineData(int.MaxValue, 1_000_000_000)]
    public void Elapsed_AnyTime_IsClamped(int microseconds, int clamped) => Assert.Equal(clamped, Elapsed.Clamp(microseconds));

    [Theory]
    [InlineData(0, 5, 5)]
    [InlineData(999_999_999, 1, 1_000_000_000)]
    [InlineData(999_999_999, 2, 1_000_000_000)]
    [InlineData(1_000_000_000, 1_000_000_000, 1_000_000_000)]
    public void Elapsed_Sum_StopsAtTheCeiling(int timer, int elapsed, int sum) => Assert.Equal(sum, Elapsed.Add(timer, elapsed));

    [Fact]
    public void Snapshot_OfATrip_HoldsWhatWasReadThen()
    {
        Bench bench = new Bench().Run();
        bench.Tick(3_000_000);
        Readings readings = bench.Readings;
        readings.SupplyVolts = 241f;
        readings.ArmatureAmps = 1100f;
        readings.SpeedRadPerSec = 77f;
        readings.FieldAmps = 1.5f;
        bench.Tick();

        Snapshot seen = bench.Controller.Fault.Snapshot;
        Assert.Equal((241f, 1100f, 77f, true, 1.5f), (seen.SupplyVolts, seen.ArmatureAmps, seen.SpeedRadPerSec, seen.SpeedValid, seen.FieldAmps));
        Assert.Equal((192.5f, 241f - 1100f * 0.05f), (seen.BackEmfVolts, seen.ResistiveBackEmfVolts));
        Assert.Equal((true, 7, 3), (seen.LineClosed, seen.StagesClosed, seen.UptimeSeconds));
    }

    [Fact]
    public void Snapshot_OfATripWithoutSpeedAndLine_SaysSo()
    {
        Bench bench = new Bench(settings =>
        {
            settings.SpeedLossMicroseconds = 100 * Bench.Millisecond;
        }).Tick();
        bench.Readings.SpeedValid = false;
        bench.Tick().PressEmergencyStop();

        Snapshot seen = bench.Controller.Fault.Snapshot;
        Assert.Equal((false, false, 0), (seen.SpeedValid, seen.LineClosed, seen.StagesClosed));
    }

    [Fact]
    public void Uptime_AtTheLargestNumber_Stays()
    {
        Uptime uptime = new() { Seconds = int.MaxValue - 1 };
        uptime.Advance(1_000_000);
        Assert.Equal(int.MaxValue, uptime.Seconds);
        uptime.Advance(999_999_999);
        uptime.Advance(999_999_999);
        Assert.Equal(int.MaxValue, uptime.Seconds);
    }

    // A button that is stuck at power-up resets nothing, not even a fault of the first tick.
    [Fact]
    public void Reset_HeldSincePowerUp_ClearsNothing()
    {
        Bench bench = new();
        bench.Readings.ResetPressed = true;
        bench.Readings.EmergencyStop = true;
        bench.Tick();
        bench.Readings.EmergencyStop = false;
        bench.Ticks(20);
        Assert.Equal(Phase.Tripped, bench.Controller.Phase);

        bench.Readings.ResetPressed = false;
        bench.Tick().PressReset();
        Assert.Equal(Phase.Ready, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 300)]
    public void Field_ContactorOrTimeAlone_IsBuiltBeforeTheLine(bool hasContactor, int buildMilliseconds)
    {
        Bench bench = new Bench(settings =>
        {
            settings.FieldContactorFitted = hasContactor;
            settings.FieldContactFitted = hasContactor;
            settings.FieldBuildMicroseconds = buildMilliseconds * Bench.Millisecond;
        }).Tick().PressStart();

        Assert.Equal((Phase.FieldBuilding, false), (bench.Controller.Phase, bench.Outputs.CloseLine));
        bench.TickUntil(() => bench.Outputs.CloseLine, 400);
        Assert.Equal(hasContactor, bench.Outputs.CloseField);
    }
}
