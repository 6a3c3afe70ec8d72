using System;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>The last word holds by itself: behind a sequence that wants anything at all, nothing forbidden comes out.</summary>
public sealed class InterlockTests
{
    private static readonly EventLog Log = new(new Uptime());

    private readonly Interlock _interlock;
    private readonly ContactProof _contacts;
    private readonly Estimator _estimator;
    private readonly PeakLaw _law;
    private readonly Readings _readings = new() { SupplyVolts = Bench.SupplyVolts, SpeedValid = true };
    private readonly Estimate _estimate = new();
    private readonly Outputs _outputs = new();
    private readonly Sequence _wanted = new(new FaultLatch(Log), Log, new Explanation())
    {
        Phase = Phase.Accelerating,
        WantLine = true,
    };

    public InterlockTests()
        : this(Bench.Chk01())
    {
    }

    private InterlockTests(Settings settings)
    {
        _interlock = new Interlock(settings);
        _contacts = new ContactProof(settings, new CurrentProof(settings));
        _estimator = new Estimator(settings, _contacts);
        _law = new PeakLaw(settings, _estimate);
    }

    [Fact]
    public void Apply_AnyWishesAndReadings_NeverLetsTheForbiddenThrough()
    {
        int closedStages = 0;
        int braked = 0;
        int preset = 0;
        int intoPresets = 0;
        Gen.UInt.Array[2000].Sample(
            numbers =>
            {
                Settings settings = Everything();
                InterlockTests test = new(settings);
                InvariantChecker checker = new(settings);
                foreach (uint number in numbers)
                {
                    bool lineWas = test._outputs.CloseLine;
                    bool isLatched = test.Wish(number);
                    test.Apply(isLatched);

                    Assert.Null(checker.InterlockViolation(1000, test._readings, test._outputs, test._wanted.Phase));
                    bool energised = test._wanted.Phase is Phase.Accelerating or Phase.Running && !isLatched;
                    Assert.True(energised || !(test._outputs.CloseLine || test._outputs.CloseStages != 0), test._wanted.Phase.ToString());
                    if (test._outputs.CloseStages == Bench.AllStages) closedStages++;
                    if (test._outputs.CloseBrake) braked++;
                    if (!test._outputs.CloseLine && test._outputs.CloseStages != 0) preset++;
                    if (!lineWas && test._outputs.CloseLine && test._outputs.CloseStages != 0) intoPresets++;
                }
            },
            iter: 50,
            threads: 1);

        TestContext.Current.TestOutputHelper?.WriteLine($"all stages closed {closedStages}, brake {braked}, preset {preset}, line into presets {intoPresets}");
        Assert.InRange(closedStages, 1000, int.MaxValue);
        Assert.InRange(braked, 1000, int.MaxValue);
        Assert.InRange(preset, 1000, int.MaxValue);
        Assert.InRange(intoPresets, 100, int.MaxValue);
    }

    [Fact]
    public void Apply_LineWantedOntoAClosedStage_StaysOpen()
    {
        _readings.StagesClosed = 4;

        Apply();
        Assert.False(_outputs.CloseLine);

        _readings.StagesClosed = 0;
        Apply();
        Assert.True(_outputs.CloseLine);
    }

    [Fact]
    public void Apply_StageClosedUncommandedWhileTheLineHasDroppedOut_OpensEverything()
    {
        _wanted.WantStages = 1;
        Apply();
        _readings.LineClosed = true;
        Apply();
        _readings.LineClosed = false;
        _readings.StagesClosed = 0b001;
        Assert.Equal((1, true), (Apply(), _outputs.CloseLine));

        _readings.StagesClosed = 0b011;

        Assert.Equal((0, false), (Apply(), _outputs.CloseLine));
    }

    [Fact]
    public void Apply_EveryStageWantedAtOnce_ComesOneByOneEachProvenClosed()
    {
        _wanted.WantStages = Bench.AllStages;
        Assert.Equal(0, Apply());
        Assert.Equal(0, Apply());

        _readings.LineClosed = true;
        Assert.Equal(0b001, Apply());
        Assert.Equal(0b001, Apply());

        _readings.StagesClosed = 0b001;
        Assert.Equal(0b011, Apply());
        Assert.Equal(0b011, Apply());

        _readings.StagesClosed = 0b011;
        Assert.Equal(0b111, Apply());
    }

    [Fact]
    public void Apply_LaterStageWantedFirst_StaysOpen()
    {
        _wanted.WantStages = 0b110;
        _readings.LineClosed = true;

        Assert.Equal(0, Apply());
        Assert.Equal(0, Apply());
    }

    [Theory]
    [InlineData(true, false, false)]
    [InlineData(false, true, false)]
    [InlineData(false, false, true)]
    public void Apply_FaultOrStopAgainstTheWish_OpensEverything(bool isLatched, bool stop, bool emergencyStop)
    {
        Apply();
        _wanted.WantStages = 1;
        _readings.LineClosed = true;
        Apply();
        Assert.Equal((true, 1), (_outputs.CloseLine, _outputs.CloseStages));

        _readings.StopPressed = stop;
        _readings.EmergencyStop = emergencyStop;
        Apply(isLatched);

        Assert.Equal((false, 0), (_outputs.CloseLine, _outputs.CloseStages));
    }

    private int Apply(bool isLatched = false)
    {
        _estimator.Update(0, _readings, 0, _estimate);
        _law.Update(_readings);
        _contacts.Update(0, _readings, _estimate, _interlock);
        _interlock.Apply(_wanted, isLatched, _readings, _contacts, _law, _outputs);
        return _outputs.CloseStages;
    }

    private static Settings Everything()
    {
        Settings settings = Bench.Chk01();
        settings.FieldContactorFitted = true;
        settings.BrakeFitted = true;
        settings.BrakeOhms = 0.5f;
        settings.BrakeReleaseRadPerSec = 10f;
        return settings;
    }

    // Mostly wishes for everything, with contacts that mostly follow; now and then anything.
    private bool Wish(uint number)
    {
        Random random = new((int)number);
        bool odd = random.Next(10) == 0;
        bool change = random.Next(12) == 0;
        if (change) _wanted.Phase = random.Next(3) switch { 0 => Phase.Accelerating, 1 => Phase.Braking, _ => (Phase)random.Next(8) };
        if (change) _wanted.WantLine = random.Next(3) != 0;
        _wanted.WantStages = odd ? random.Next(8) : Bench.AllStages;
        _wanted.WantBrake = random.Next(5) != 0;
        _wanted.WantField = random.Next(50) != 0;
        _readings.LineClosed = odd ? random.Next(2) == 0 : _outputs.CloseLine;
        _readings.StagesClosed = odd ? random.Next(16) : _outputs.CloseStages;
        _readings.BrakeClosed = odd ? random.Next(2) == 0 : _outputs.CloseBrake;
        _readings.SpeedRadPerSec = random.Next(30) == 0 ? random.Next(120) - 10 : 96f;
        _readings.SupplyVolts = random.Next(60) == 0 ? random.Next(400) : Bench.SupplyVolts;
        _readings.SpeedValid = random.Next(100) != 0;
        _readings.StopPressed = random.Next(80) == 0;
        _readings.EmergencyStop = random.Next(80) == 0;
        return random.Next(80) == 0;
    }
}
