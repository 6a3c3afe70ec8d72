namespace StarterCtl.Mutation;

/// <summary>One small change to the core.</summary>
/// <param name="Number">Its number, from 1 in the order of the sources.</param>
/// <param name="File">Path below the root.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Original">What stands there.</param>
/// <param name="Mutated">What stands there when it is active.</param>
internal sealed record Mutant(int Number, string File, int Line, string Original, string Mutated)
{
    /// <summary>What became of it.</summary>
    internal Fate Fate { get; set; }

    /// <summary>Classes of tests that had the chance to see it.</summary>
    internal int SeenBy { get; set; }

    /// <summary>Last class or group of classes that ran with it.</summary>
    internal string LastRun { get; set; } = "";
}
