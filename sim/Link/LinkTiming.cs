using System;

namespace StarterCtl.Link;

/// <summary>How long the desk waits for a board.</summary>
public sealed record LinkTiming
{
    /// <summary>Time for one answer; above 0. At 115200 baud the longest frame takes 6 ms, a control period of the board comes on top.</summary>
    public TimeSpan Answer { get; init; } = TimeSpan.FromMilliseconds(250);

    /// <summary>
    /// How often a request is sent before the board counts as silent; 1 or more. Three seconds in all: a busy computer does not let the program
    /// run for as long as that.
    /// </summary>
    public int Tries { get; init; } = 12;
}
