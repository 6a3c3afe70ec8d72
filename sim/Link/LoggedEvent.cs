using StarterCtl.Core;

namespace StarterCtl.Link;

/// <summary>One event of a board's log.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Number">Its number; meaning in <see cref="EventKind"/>.</param>
/// <param name="Value">Its value; meaning in <see cref="EventKind"/>.</param>
/// <param name="Seconds">Its time since the controller was built, s.</param>
public sealed record LoggedEvent(EventKind Kind, int Number, float Value, int Seconds);
