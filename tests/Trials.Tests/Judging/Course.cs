using System;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Judging;
using Xunit;

namespace StarterCtl.Trials.Tests.Judging;

/// <summary>Samples of our own, one every 100 ms from -0.1 to 6 s, before an expectation that is written as in a file.</summary>
internal static class Course
{
    /// <summary>What becomes of an expectation.</summary>
    /// <param name="keys">Its keys, without the name.</param>
    /// <param name="at">The sample of a time, whose time is put in.</param>
    /// <param name="events">Events of the trial, as in a file.</param>
    internal static Outcome Judged(string keys, Func<double, Sample> at, string events = "")
    {
        Trial trial = Texts.ReadOne($"{Texts.Head}{events}\n[[expect]]\nname = \"x\"\n{keys}\n");
        TrialJudges judges = new(trial.Expectations, 100_000);
        for (int i = -1; i <= 60; i++) judges.Add(at(i / 10.0) with { TimeSeconds = i / 10.0 });
        return Assert.Single(judges.End());
    }

    /// <summary>A sample of a machine that stands, ready.</summary>
    internal static Sample Plain { get; } = new()
    {
        TimeSeconds = 0,
        SupplyVolts = 48,
        ArmatureAmps = 0,
        SpeedRadPerSec = 0,
        BackEmfVolts = 0,
        ResistiveBackEmfVolts = float.NaN,
        TorqueNewtonMetres = 0,
        LoadTorqueNewtonMetres = 0,
        Phase = Phase.Ready,
        Stage = 0,
        Reason = Reason.None,
        ReasonQuantity = 0,
        ReasonLimit = 0,
        CloseLine = false,
        LineClosed = false,
        CloseStages = 0,
        StagesClosed = 0,
        Fault = FaultId.None,
    };

    internal static Sample Amps(double amps) => Plain with { ArmatureAmps = (float)amps };

    internal static Sample In(Phase phase) => Plain with { Phase = phase };
}
