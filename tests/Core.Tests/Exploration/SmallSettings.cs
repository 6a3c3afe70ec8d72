namespace StarterCtl.Core.Tests.Exploration;

/// <summary>What the small sets begin with, and letters that they share.</summary>
internal static class SmallSettings
{
    /// <summary>Half of the timers' ceiling: a timer that nobody stops has three values.</summary>
    internal const int TickMicroseconds = Elapsed.Ceiling / 2;

    /// <summary>No time, which decides everything that asks for none, and a tick, with which every time of one tick is over.</summary>
    internal static readonly int[] Times = [-1, TickMicroseconds];

    /// <summary>The same with a tick after which every time is over.</summary>
    internal static readonly int[] Extremes = [-1, int.MaxValue];

    /// <summary>One or two stages of the bare starter without a dwell; every other time is a tick.</summary>
    internal static Settings Of(int stageCount)
    {
        Settings settings = Alphabet.Settings(TickMicroseconds);
        settings.StageCount = stageCount;
        settings.LockoutAmps = Settings.Largest;
        settings.ConfirmMicroseconds = 0;
        settings.MinimumDwellMicroseconds = 0;
        settings.MaximumStageMicroseconds = Settings.LongestMicroseconds;
        settings.ContactMicroseconds = TickMicroseconds;
        return settings;
    }
}
