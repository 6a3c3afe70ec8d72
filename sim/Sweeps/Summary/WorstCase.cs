namespace StarterCtl.Sweeps.Summary;

/// <summary>The row that is worst in some respect; the first of them where several are.</summary>
/// <param name="Name">In which respect: "highest peak current".</param>
/// <param name="Row">Its number.</param>
/// <param name="Value">Its outcome, in the unit of the column; positive infinity: did not happen.</param>
/// <param name="Column">The column.</param>
/// <param name="IsPassed">True when the row passed all the same.</param>
public sealed record WorstCase(string Name, long Row, double Value, string Column, bool IsPassed);
