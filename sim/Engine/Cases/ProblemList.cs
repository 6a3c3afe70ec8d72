using System.Collections.Generic;

namespace StarterCtl.Engine.Cases;

/// <summary>Gathers what is wrong with one file while it is read.</summary>
internal sealed class ProblemList(string file)
{
    /// <summary>Nobody reads more; it also bounds the work on a file that is no case at all.</summary>
    private const int Most = 200;

    private readonly List<CaseProblem> _problems = [];

    internal string File => file;

    internal bool IsEmpty => _problems.Count == 0;

    internal bool IsFull => _problems.Count >= Most;

    internal IEnumerable<CaseProblem> All => _problems;

    internal void Add(int line, string key, string found, string allowed) => Add(new CaseProblem(file, line, key, found, allowed));

    internal void Add(CaseProblem problem)
    {
        if (!IsFull) _problems.Add(problem);
    }

    internal void ThrowIfAny()
    {
        if (!IsEmpty) throw new CaseException(_problems);
    }
}
