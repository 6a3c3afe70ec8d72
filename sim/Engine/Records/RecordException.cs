using System;

namespace StarterCtl.Engine.Records;

/// <summary>A record cannot be used.</summary>
/// <param name="place">The file, with what of it: "start.record.csv:1: timeSeconds".</param>
/// <param name="found">What was found.</param>
/// <param name="allowed">What may stand there, or what to do.</param>
public sealed class RecordException(string place, string found, string allowed) : Exception($"{place}: found {found}; allowed: {allowed}");
