namespace StarterCtl.Engine.Parts;

/// <summary>A line of the bill of materials.</summary>
/// <param name="Part">The part.</param>
/// <param name="Count">How many of it.</param>
/// <param name="Price">Price of all of them; null for preferred values.</param>
public sealed record BillLine(Part Part, int Count, decimal? Price);
