using System;

namespace StarterCtl.Sweeps.Results;

/// <summary>A file of results cannot be used.</summary>
/// <param name="place">The file, and where in it.</param>
/// <param name="found">What was found.</param>
/// <param name="allowed">What would do.</param>
public sealed class SweepException(string place, string found, string allowed) : Exception($"{place}: found {found}; allowed: {allowed}");
