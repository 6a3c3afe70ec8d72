using System;
using System.Collections.Generic;
using System.Linq;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>A set of settings that is explored, with an alphabet of its own: everything at once has too many states.</summary>
internal sealed record ExploredSet
{
    /// <summary>Every set.</summary>
    internal static readonly ExploredSet[] All =
    [
        DipAndSpinningStartSet.Set, SpeedLossSet.Set, LimitsSet.Set, BrakeByCurrentSet.Set, ProofByCurrentSet.Set,
        FieldAndBrakeSet.Set, Alphabet.Set,
    ];

    private readonly Lazy<Explorer> _explored;

    internal ExploredSet() => _explored = new(() => new Explorer(() => new Machine(this), Letters!()).Run());

    internal required string Name { get; init; }

    internal required Func<Settings> Settings { get; init; }

    internal required Func<List<Letter>> Letters { get; init; }

    /// <summary>Fields that only told with these settings, beyond those that always are.</summary>
    internal required string[] Told { get; init; }

    /// <summary>Phase to phase, in words.</summary>
    internal required string[] Ways { get; init; }

    /// <summary>The shaft as a healthy plant turns it, as volts of back-EMF.</summary>
    internal required Func<Machine, float> HealthyVolts { get; init; }

    /// <summary>Faults that may come to a healthy plant, because a time has nearly run out or a nonsense was measured before.</summary>
    internal required FaultId[] RunOut { get; init; }

    internal required int TickMicroseconds { get; init; }

    /// <summary>Ticks of a healthy plant within which it runs, whatever was before.</summary>
    internal int MostTicks { get; init; } = 60;

    internal required int LeastStates { get; init; }

    internal required long LeastEdges { get; init; }

    /// <summary>Everything that there is, found once.</summary>
    internal Explorer Explored => _explored.Value;

    public static IEnumerable<string> Names => All.Select(set => set.Name);

    internal static ExploredSet Of(string name) => Array.Find(All, set => set.Name == name)!;

    public override string ToString() => Name;

    /// <summary>A healthy plant: contacts have followed their coils, and current flows as the equations say.</summary>
    internal Letter Healthy(Machine machine)
    {
        Settings settings = Settings();
        Outputs coils = machine.Outputs;
        float volts = HealthyVolts(machine);
        int stages = 0;
        while ((coils.CloseStages & (1 << stages)) != 0) stages++;
        float lineAmps = (Alphabet.SupplyVolts - volts) / settings.StageOhms[stages];
        return new Letter
        {
            ElapsedMicroseconds = TickMicroseconds,
            Line = coils.CloseLine,
            Stages = coils.CloseStages,
            Brake = coils.CloseBrake,
            Field = coils.CloseField,
            FieldAmps = coils.CloseField ? 2f : 0f,
            BackEmfVolts = volts,
            ArmatureAmps = coils.CloseLine ? lineAmps : coils.CloseBrake ? -volts / settings.BrakeOhms : 0f,
        };
    }
}
