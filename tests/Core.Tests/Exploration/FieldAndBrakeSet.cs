using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>A field that must stand before the line closes, and a brake; one stage.</summary>
internal static class FieldAndBrakeSet
{
    // Below the release speed, above it, and too fast for the brake's resistor.
    private static readonly float[] BackEmfs = [0f, 187.5f, 360f];

    internal static readonly ExploredSet Set = new()
    {
        Name = "field and brake",
        Settings = Settings,
        Letters = Letters,
        Told =
        [
            "Estimator._lastArmatureAmps", "ContactProof.LineClosed", "ContactProof.StagesClosed", "ContactProof.BrakeClosed",
            "ContactProof.BrakeFailed", "ContactProof.FieldFailed",
        ],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Braking to Stopping",
            "Braking to Tripped", "FieldBuilding to Accelerating", "FieldBuilding to Stopping", "FieldBuilding to Tripped",
            "Ready to FieldBuilding", "Ready to Tripped", "Running to Stopping", "Running to Tripped", "Stopping to Braking",
            "Stopping to Ready", "Stopping to Tripped", "Tripped to Ready",
        ],
        HealthyVolts = machine => machine.Outputs.CloseLine || machine.Controller.Phase == Phase.Stopping ? 187.5f : 0f,
        RunOut = [FaultId.NoField, FaultId.BrakeDidNotFinish, FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 2,
        LeastStates = 8700,
        LeastEdges = 3_500_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(1);
        settings.FieldContactorFitted = true;
        settings.FieldContactFitted = true;
        settings.FieldSensorFitted = true;
        settings.MinimumFieldAmps = 1f;
        settings.FieldBuildMicroseconds = SmallSettings.TickMicroseconds;
        settings.MaximumFieldMicroseconds = Elapsed.Ceiling;
        settings.BrakeFitted = true;
        settings.BrakeOhms = 0.5f;
        settings.BrakeReleaseRadPerSec = 10f;
        settings.MaximumBrakeMicroseconds = Elapsed.Ceiling;
        return settings;
    }

    private static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (float volts in BackEmfs)
        {
            Letter sound = new() { BackEmfVolts = volts, ArmatureAmps = 100f };
            AddContacts(letters, sound with { FieldAmps = 2f });
            AddContacts(letters, sound with { FieldAmps = 0.5f });
            AddContacts(letters, sound with { FieldAmps = 2f, Start = true });
            AddContacts(letters, sound with { FieldAmps = 2f, Stop = true });
        }

        AddContacts(letters, new Letter { Reset = true, FieldAmps = 2f });
        AddContacts(letters, new Letter { EmergencyStop = true, FieldAmps = 2f, BackEmfVolts = 187.5f });
        return letters;
    }

    private static void AddContacts(List<Letter> letters, Letter sound)
    {
        foreach (int time in SmallSettings.Extremes)
        {
            for (int bits = 0; bits < 16; bits++)
            {
                // The stage without the line is another set's affair.
                if ((bits & 3) == 2 && (sound.FieldAmps < 1f || sound.Start)) continue;
                letters.Add(sound with
                {
                    ElapsedMicroseconds = time,
                    Line = (bits & 1) != 0,
                    Stages = (bits >> 1) & 1,
                    Brake = (bits & 4) != 0,
                    Field = (bits & 8) != 0,
                });
            }
        }
    }
}
