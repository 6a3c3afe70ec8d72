namespace StarterCtl.App.Json;

/// <summary>The row that is worst in some respect, and the command that runs it to a full record.</summary>
public sealed record WorstRowJson(string Name, long Row, double Value, string Column, bool IsPassed, string Command);
