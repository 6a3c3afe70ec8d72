namespace StarterCtl.Engine.Cases;

/// <summary>
/// A unit by its two exact factors: SI value = number * Times / Over. Division by 1000 rounds once where
/// multiplication by 0.001 rounds twice, so "15 ms" is exactly the number 0.015.
/// </summary>
internal sealed record Unit(string Name, Dimension Dimension, double Times, double Over);
