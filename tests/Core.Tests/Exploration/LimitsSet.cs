using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>Every limit that only trips, each passed by a letter of its own; one stage.</summary>
internal static class LimitsSet
{
    internal static readonly ExploredSet Set = new()
    {
        Name = "limits",
        Settings = Settings,
        Letters = Letters,
        Told =
        [
            "ContactProof.LineClosed", "ContactProof.StagesClosed", "MotionWatch.IsTooFast",
            "MotionWatch.IsSpeedLost", "MotionWatch.IsBackwards", "MotionWatch.IsStalled", "MotionWatch.IsApart", "MotionWatch.ApartVolts",
        ],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating",
            "Ready to Tripped", "Running to Stopping", "Running to Tripped", "Stopping to Ready", "Stopping to Tripped",
            "Tripped to Ready",
        ],
        HealthyVolts = machine => !machine.Outputs.CloseLine ? 0f : 187.5f,
        RunOut = [FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 4,
        LeastStates = 5500,
        LeastEdges = 1_900_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(1);
        settings.SpinningStart = true;
        settings.StandstillRadPerSec = 1f;
        settings.OverspeedRadPerSec = 120f;
        settings.ReverseRadPerSec = 10f;
        settings.StallAmps = 800f;
        settings.StallMicroseconds = SmallSettings.TickMicroseconds;
        settings.DisagreementVolts = 400f;
        settings.DisagreementMicroseconds = SmallSettings.TickMicroseconds;
        settings.ZeroAmps = 20f;
        settings.MaximumStartMicroseconds = SmallSettings.TickMicroseconds;
        settings.RequiredPermissives = 5;
        settings.MaximumTickMicroseconds = SmallSettings.TickMicroseconds;
        settings.ResistorSensorFitted = true;
        settings.FieldSensorFitted = true;
        return settings;
    }

    private static List<Letter> Letters()
    {
        Letter still = new() { ArmatureAmps = 0f };
        Letter turning = new() { ArmatureAmps = 100f, BackEmfVolts = 187.5f };
        List<Letter> letters = [];
        foreach (Letter sound in new[] { still, turning })
        {
            Add(letters, sound);
            Add(letters, sound with { Start = true });
            Add(letters, sound with { Stop = true });
            Add(letters, sound with { Reset = true });
            Add(letters, sound with { Permissives = 1 });
            Add(letters, sound with { Permissives = 1, Start = true });
        }

        Add(letters, still with { ArmatureAmps = 900f });
        Add(letters, still with { EmergencyStop = true });
        Add(letters, turning with { BackEmfVolts = 310f });
        Add(letters, turning with { BackEmfVolts = -50f });
        Add(letters, turning with { BackEmfVolts = -50f, ArmatureAmps = -600f });
        Add(letters, still with { ResistorCelsius = 400f });
        Add(letters, still with { FieldAmps = float.NaN });
        return letters;
    }

    private static void Add(List<Letter> letters, Letter sound)
    {
        DipAndSpinningStartSet.AddContacts(letters, sound);
        letters.Add(sound with { ElapsedMicroseconds = SmallSettings.TickMicroseconds + 1 });
        letters.Add(sound with { ElapsedMicroseconds = SmallSettings.TickMicroseconds + 1, Line = true });
    }
}
