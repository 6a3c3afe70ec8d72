namespace StarterCtl.Trials.Running;

/// <summary>How a trial ended.</summary>
public enum TrialVerdict
{
    /// <summary>Every expectation holds.</summary>
    Pass,

    /// <summary>At least one does not.</summary>
    Fail,

    /// <summary>Trouble with the target: nothing is known of the starter.</summary>
    Error,

    /// <summary>It was not reached.</summary>
    NotRun,

    /// <summary>It was in the middle when the run was cancelled.</summary>
    Aborted,
}
