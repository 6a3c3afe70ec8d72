using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>A speed that comes and goes, and a start that is finished by the voltage equation.</summary>
internal static class SpeedLossSet
{
    internal static readonly ExploredSet Set = new()
    {
        Name = "speed loss",
        Settings = Settings,
        Letters = Letters,
        Told = ["ContactProof.LineClosed", "ContactProof.StagesClosed"],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating",
            "Ready to Tripped", "Running to Stopping", "Running to Tripped", "Stopping to Ready", "Stopping to Tripped",
            "Tripped to Ready",
        ],
        HealthyVolts = machine => !machine.Outputs.CloseLine ? 0f : machine.Controller.Stage == 1 ? 125f : 187.5f,
        RunOut = [FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 4,
        LeastStates = 2500,
        LeastEdges = 1_400_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(2);
        settings.SpeedLoss = SpeedLossAction.FinishStart;
        settings.ZeroAmps = 20f;
        settings.SpeedLossMicroseconds = SmallSettings.TickMicroseconds;
        settings.ResistiveConfirmMicroseconds = SmallSettings.TickMicroseconds;
        // 100 A and more between two letters is no steady current.
        settings.SteadyAmpsPerSec = 50f / (SmallSettings.TickMicroseconds * 1e-6f);
        return settings;
    }

    // 10 A is none. At 350 A the voltage equation shows just the threshold of the stage that is in, whichever it is; at 200 A more than that.
    private static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (float amps in new[] { 10f, 200f, 350f, 700f, -800f })
        {
            foreach (Letter shaft in new[] { new Letter { SpeedValid = false }, new Letter(), new Letter { BackEmfVolts = 187.5f } })
            {
                Letter sound = shaft with { ArmatureAmps = amps };
                DipAndSpinningStartSet.AddContacts(letters, sound);
                DipAndSpinningStartSet.AddContacts(letters, sound with { Start = true });
            }
        }

        DipAndSpinningStartSet.AddContacts(letters, new Letter { Stop = true });
        DipAndSpinningStartSet.AddContacts(letters, new Letter { ArmatureAmps = 350f, SpeedValid = false, Stale = true });
        DipAndSpinningStartSet.AddContacts(letters, new Letter { ArmatureAmps = 350f, SpeedValid = false, Stop = true });
        DipAndSpinningStartSet.AddContacts(letters, new Letter { Reset = true });
        DipAndSpinningStartSet.AddContacts(letters, new Letter { ArmatureAmps = 350f, SpeedValid = false, EmergencyStop = true });
        return letters;
    }
}
