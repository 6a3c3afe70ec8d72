namespace StarterCtl.Mutation;

/// <summary>What became of a mutant.</summary>
internal enum Fate
{
    /// <summary>Not run, or not yet.</summary>
    NotRun,

    /// <summary>A test failed.</summary>
    Killed,

    /// <summary>The tests did not come to an end.</summary>
    TimedOut,

    /// <summary>A test failed once and passed once: its random inputs, or no fault of the mutant's. Counts as not killed.</summary>
    Unsure,

    /// <summary>Every test passed.</summary>
    Survived,

    /// <summary>No test comes by.</summary>
    NotReached,
}
