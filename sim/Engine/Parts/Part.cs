namespace StarterCtl.Engine.Parts;

/// <summary>A resistor that can be bought.</summary>
/// <param name="Name">What the bill calls it.</param>
/// <param name="Ohms">Resistance, ohm, above 0.</param>
/// <param name="Rating">What it can take; null for a preferred value, of which only the resistance is known.</param>
/// <param name="Price">Price of one, in the list's own money; null for a preferred value.</param>
/// <param name="Quantity">How many there are; null: as many as needed.</param>
public sealed record Part(string Name, double Ohms, PartRating? Rating, decimal? Price, int? Quantity);
