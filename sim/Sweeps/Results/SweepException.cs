using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Sweeps.Results;

/// <summary>A file of results, or what was asked of one, cannot be used.</summary>
public sealed class SweepException : Exception
{
    /// <summary>One problem.</summary>
    /// <param name="place">The file, and where in it; or the option.</param>
    /// <param name="found">What was found.</param>
    /// <param name="allowed">What would do.</param>
    public SweepException(string place, string found, string allowed)
        : base($"{place}: found {found}; allowed: {allowed}")
    {
    }

    /// <summary>Several problems, a line for each.</summary>
    /// <param name="problems">One or more.</param>
    public SweepException(IEnumerable<SweepException> problems)
        : base(string.Join('\n', problems.Select(problem => problem.Message)))
    {
    }
}
