using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>A supply that dips and rises, resistance put back, and stages preset for a turning shaft.</summary>
internal static class DipAndSpinningStartSet
{
    // Standstill; enough for both stages in the dip and for none at the nominal supply; enough for both; too much in the dip.
    private static readonly float[] BackEmfs = [0f, 100f, 187.5f, 300f];

    // A dip, the nominal supply, and too high a one.
    private static readonly float[] Supplies = [150f, 250f, 290f];

    internal static readonly ExploredSet Set = new()
    {
        Name = "dip and spinning start",
        Settings = Settings,
        Letters = Letters,
        Told =
        [
            "Estimator._lastArmatureAmps", "ContactProof.LineClosed", "ContactProof.StagesClosed", "SupplyWatch.IsLow",
            "SupplyWatch.IsHigh", "SupplyWatch.IsLowTooLong", "SupplyWatch.IsHighTooLong",
        ],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating",
            "Ready to Tripped", "Running to Accelerating", "Running to Stopping", "Running to Tripped", "Stopping to Ready",
            "Stopping to Tripped", "Tripped to Ready",
        ],
        HealthyVolts = _ => 187.5f,
        RunOut = [FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 4,
        LeastStates = 1500,
        LeastEdges = 750_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(2);
        settings.SpinningStart = true;
        settings.SupplyLowVolts = 200f;
        settings.NominalSupplyVolts = 250f;
        settings.SupplyHighVolts = 280f;
        settings.SupplyHighMicroseconds = SmallSettings.TickMicroseconds;
        settings.DipMicroseconds = 2 * SmallSettings.TickMicroseconds;
        settings.DipAction = DipAction.PutResistanceBack;
        return settings;
    }

    private static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (float supply in Supplies)
        {
            foreach (float volts in BackEmfs)
            {
                Letter sound = new() { SupplyVolts = supply, BackEmfVolts = volts, ArmatureAmps = 100f };
                AddContacts(letters, sound);
                AddContacts(letters, sound with { Start = true });
            }

            AddContacts(letters, new Letter { SupplyVolts = supply, BackEmfVolts = 187.5f, Stop = true });
        }

        AddContacts(letters, new Letter { Reset = true });
        AddContacts(letters, new Letter { BackEmfVolts = 187.5f, EmergencyStop = true });
        AddContacts(letters, new Letter { BackEmfVolts = float.NaN });
        AddContacts(letters, new Letter { BackEmfVolts = 187.5f, SpeedValid = false });
        return letters;
    }

    internal static void AddContacts(List<Letter> letters, Letter sound)
    {
        foreach (int time in SmallSettings.Times)
        {
            for (int bits = 0; bits < 8; bits++)
            {
                letters.Add(sound with { ElapsedMicroseconds = time, Line = (bits & 4) != 0, Stages = bits & 3 });
            }
        }
    }
}
