using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace StarterCtl.Mutation;

/// <summary>Runs mutants against the tests: the quick classes that come by first and together, then the slow ones one by one.</summary>
internal sealed class Campaign
{
    private const double LimitFactor = 3;
    private const double LimitSeconds = 3;

    private readonly TestProgram _tests;
    private readonly List<TestClass> _quick;
    private readonly List<TestClass> _slow;
    private readonly double _startSeconds;
    private int _done;

    /// <summary>Prepares the classes.</summary>
    /// <param name="tests">Tests with the mutated core.</param>
    /// <param name="classes">Their classes, observed.</param>
    /// <param name="onlyQuick">True to do without the slow ones.</param>
    /// <param name="quickSeconds">Processor seconds above the quickest class, which is little but start-up, up to which one is quick.</param>
    internal Campaign(TestProgram tests, List<TestClass> classes, bool onlyQuick, double quickSeconds)
    {
        _tests = tests;
        _startSeconds = classes.Min(found => found.Seconds);
        _quick = classes.FindAll(found => found.Seconds <= _startSeconds + quickSeconds);
        _slow = onlyQuick ? [] : [.. classes.Except(_quick).OrderBy(found => found.Seconds)];
    }

    /// <summary>What runs first and what runs last, in words.</summary>
    internal string Order => $"{_quick.Count} quick classes together; then "
        + string.Join(", ", _slow.Select(found => $"{found.Name.Split('.')[^1]} ({found.Seconds:F1} s)"));

    /// <summary>Runs every mutant.</summary>
    internal void Run(IReadOnlyList<Mutant> mutants, int jobs, Action<int> progress)
    {
        ParallelOptions options = new() { MaxDegreeOfParallelism = jobs };
        // One at a time from a common heap: some take a hundred times as long as others.
        Parallel.ForEach(Partitioner.Create(mutants, EnumerablePartitionerOptions.NoBuffering), options, mutant =>
        {
            mutant.Fate = FateOf(mutant);
            progress(Interlocked.Increment(ref _done));
        });
    }

    private Fate FateOf(Mutant mutant)
    {
        List<TestClass> quick = ThatReach(_quick, mutant);
        List<TestClass> slow = ThatReach(_slow, mutant);
        mutant.SeenBy = quick.Count + slow.Count;
        if (mutant.SeenBy == 0) return Fate.NotReached;
        Fate fate = quick.Count == 0 ? Fate.Survived : Run(mutant, "quick", quick);
        foreach (TestClass one in slow)
        {
            if (fate != Fate.Survived) break;
            fate = Run(mutant, one.Name, [one]);
            // The slow ones draw random inputs, and may fail by themselves.
            if (fate == Fate.Killed && Run(mutant, one.Name, [one]) == Fate.Survived) fate = Fate.Unsure;
        }

        return fate;
    }

    private Fate Run(Mutant mutant, string name, List<TestClass> classes)
    {
        mutant.LastRun = name;
        double seconds = _startSeconds + classes.Sum(one => one.Seconds - _startSeconds);
        return _tests.Run(classes.Select(one => one.Name), mutant.Number, (LimitFactor * seconds) + LimitSeconds);
    }

    private static List<TestClass> ThatReach(List<TestClass> classes, Mutant mutant) =>
        classes.FindAll(one => mutant.Number < one.Reached.Count && one.Reached[mutant.Number] != 0);
}
