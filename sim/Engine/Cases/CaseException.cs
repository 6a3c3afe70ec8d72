using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Engine.Cases;

/// <summary>A case file cannot be used. Carries every problem that was found, not only the first.</summary>
public sealed class CaseException : Exception
{
    /// <summary>Creates the exception; its message is one line per problem.</summary>
    /// <param name="problems">At least one problem, in any order.</param>
    public CaseException(IEnumerable<CaseProblem> problems)
        : this([.. problems.OrderBy(problem => problem.Line)])
    {
    }

    private CaseException(CaseProblem[] ordered)
        : base(string.Join('\n', ordered.Select(problem => problem.ToString()))) => Problems = ordered;

    /// <summary>The problems in the order of their lines.</summary>
    public IReadOnlyList<CaseProblem> Problems { get; }
}
