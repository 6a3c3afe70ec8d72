using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>A known key as it stands in a file. <paramref name="Event"/> counts the events from 0; -1 outside of events.</summary>
internal sealed record CaseEntry(CaseKey Key, int Line, ValueSyntax Value, int Event);
