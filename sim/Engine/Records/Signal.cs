using System;

namespace StarterCtl.Engine.Records;

/// <summary>One column of every record.</summary>
/// <param name="Name">Column name, with its unit at the end where it has one.</param>
/// <param name="Unit">Unit, or empty.</param>
/// <param name="Description">What it is, in a sentence.</param>
/// <param name="Number">The number of a sample; ids and bits as whole numbers.</param>
/// <param name="Word">The word of a sample where the column is an id, else null.</param>
public sealed record Signal(string Name, string Unit, string Description, Func<Sample, double> Number, Func<Sample, string>? Word = null);
