using StarterCtl.Engine;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Judging;

/// <summary>Holds the samples of one trial against one expectation as they come; keeps no sample.</summary>
internal abstract class Judge(Expectation expectation)
{
    /// <summary>What is expected.</summary>
    protected Expectation Expectation => expectation;

    /// <summary>Its window.</summary>
    protected WindowWatch Window { get; } = new(expectation.Window);

    /// <summary>The judge for an expectation.</summary>
    public static Judge Of(Expectation expectation) => expectation.Kind switch
    {
        ExpectationKind.Reaches => new ReachJudge(expectation),
        ExpectationKind.Never => new NeverJudge(expectation),
        ExpectationKind.Order => new OrderJudge(expectation),
        ExpectationKind.Settles => new SettleJudge(expectation),
        ExpectationKind.Fault => new FaultJudge(expectation),
        _ => new BandJudge(expectation),
    };

    /// <summary>Takes the next sample.</summary>
    public virtual void Add(in Sample sample)
    {
        if (Window.Look(sample)) Look(sample);
    }

    /// <summary>The outcome, once the last sample has come.</summary>
    public Outcome End()
    {
        (bool passed, string seen) = Window.HasSeen ? Judged() : (false, Window.Nothing);
        return new Outcome(expectation.Name, passed, seen, expectation.Limit);
    }

    /// <summary>Looks at a sample inside the window.</summary>
    protected abstract void Look(in Sample sample);

    /// <summary>Judges what was seen; the window has had at least one sample.</summary>
    protected abstract (bool Passed, string Seen) Judged();

    /// <summary>A moment in words.</summary>
    protected static string At(double seconds) => $"at {Text.Number(seconds)} s";
}
