namespace StarterCtl.App.Json;

/// <summary>The published shape of a written report.</summary>
public sealed record ReportJson(string Verdict, string Report, string CaseSha256);
