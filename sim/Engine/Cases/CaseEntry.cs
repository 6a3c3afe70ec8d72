using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>A known key as it stands in a file.</summary>
/// <param name="Key">The key.</param>
/// <param name="Line">Its line, counted from 1.</param>
/// <param name="Value">Its value, unread.</param>
/// <param name="Event">The event that it belongs to, counted from 0; -1 outside of events.</param>
internal sealed record CaseEntry(CaseKey Key, int Line, ValueSyntax Value, int Event);
