namespace StarterCtl.Link;

/// <summary>How well both ends hear. The board's counts go on at 0 behind 65535.</summary>
/// <param name="WrongChecks">Frames that reached the board with a wrong check.</param>
/// <param name="OverlongFrames">Frames that reached it longer than any may be.</param>
/// <param name="BrokenFrames">Frames that reached it cut off.</param>
/// <param name="LostFrames">Sequence numbers that it missed since the greeting.</param>
/// <param name="BadFramesHere">Frames that were lost on the way here or came unsound.</param>
public sealed record LinkHealth(int WrongChecks, int OverlongFrames, int BrokenFrames, int LostFrames, int BadFramesHere);
