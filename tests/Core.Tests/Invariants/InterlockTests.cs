using System;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>The last word holds by itself: behind a sequence that wants anything at all, nothing forbidden comes out.</summary>
public sealed class InterlockTests
{
    private static readonly Settings Settings = Bench.Chk01();

    private static readonly EventLog Log = new(new Uptime());

    private readonly Interlock _interlock = new(Settings);
    private readonly ContactProof _contacts = new(Settings, new CurrentProof(Settings));
    private readonly Readings _readings = new();
    private readonly Estimate _estimate = new();
    private readonly Outputs _outputs = new();
    private readonly Sequence _wanted = new(new FaultLatch(Log), Log, new Explanation())
    {
        Phase = Phase.Accelerating,
        WantLine = true,
    };

    [Fact]
    public void Apply_AnyWishesAndReadings_NeverLetsTheForbiddenThrough()
    {
        int closedStages = 0;
        Gen.UInt.Array[2000].Sample(
            numbers =>
            {
                InterlockTests test = new();
                InvariantChecker checker = new(Settings);
                foreach (uint number in numbers)
                {
                    bool isLatched = test.Wish(number);
                    test.Apply(isLatched);

                    Assert.Null(checker.InterlockViolation(test._readings, test._outputs));
                    bool energised = test._wanted.Phase is Phase.Accelerating or Phase.Running && !isLatched;
                    Assert.True(energised || !test._outputs.CloseLine, test._wanted.Phase.ToString());
                    if (test._outputs.CloseStages == Bench.AllStages) closedStages++;
                }
            },
            iter: 50,
            threads: 1);

        Assert.InRange(closedStages, 1000, int.MaxValue);
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
        _contacts.Update(0, _readings, _estimate, _interlock);
        _interlock.Apply(_wanted, isLatched, _readings, _contacts, new PeakLaw(Settings, _estimate), _outputs);
        return _outputs.CloseStages;
    }

    // Mostly wishes for everything, with contacts that mostly follow; now and then anything.
    private bool Wish(uint number)
    {
        Random random = new((int)number);
        bool odd = random.Next(10) == 0;
        _wanted.Phase = random.Next(50) == 0 ? (Phase)random.Next(6) : Phase.Accelerating;
        _wanted.WantLine = random.Next(50) != 0;
        _wanted.WantStages = odd ? random.Next(8) : Bench.AllStages;
        _readings.LineClosed = odd ? random.Next(2) == 0 : _outputs.CloseLine;
        _readings.StagesClosed = odd ? random.Next(16) : _outputs.CloseStages;
        _readings.StopPressed = random.Next(80) == 0;
        _readings.EmergencyStop = random.Next(80) == 0;
        return random.Next(80) == 0;
    }
}
