using System;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>
/// A machine with one thing wrong: its controller is set up wrongly, is lied to, or is not listened to. The checker sees
/// what really was.
/// </summary>
internal sealed class BrokenMachine(ExploredSet set, Defect defect) : Machine(set, Wrong(set, defect))
{
    protected override void Drive(Letter letter, Readings readings)
    {
        Before before = new(Outputs.CloseLine, Outputs.CloseStages, Outputs.CloseBrake, Outputs.CloseField, Outputs.TrippedLamp, Controller.Phase);
        defect.Lie?.Invoke(before, readings);
        Controller.Tick(letter.ElapsedMicroseconds, readings, Outputs);
        letter.Fill(readings);
        defect.Spoil?.Invoke(before, readings, Outputs);
    }

    private static Settings Wrong(ExploredSet set, Defect defect)
    {
        Settings settings = set.Settings();
        defect.Change?.Invoke(settings);
        return settings;
    }
}

/// <summary>The outputs of the tick before.</summary>
internal readonly record struct Before(bool Line, int Stages, bool Brake, bool Field, bool Tripped, Phase Phase);

/// <summary>What is wrong with a machine.</summary>
internal sealed record Defect
{
    /// <summary>Settings that the controller should not have had.</summary>
    internal Action<Settings>? Change { get; init; }

    /// <summary>Readings that the controller sees and that are not so.</summary>
    internal Action<Before, Readings>? Lie { get; init; }

    /// <summary>Outputs that the controller did not give.</summary>
    internal Action<Before, Readings, Outputs>? Spoil { get; init; }
}
