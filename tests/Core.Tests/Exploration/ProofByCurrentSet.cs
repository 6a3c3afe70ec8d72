using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>No auxiliary contact anywhere: line and stages are proven by the current.</summary>
internal static class ProofByCurrentSet
{
    internal static readonly ExploredSet Set = new()
    {
        Name = "proof by current",
        Settings = Settings,
        Letters = Letters,
        Told = ["Estimator._lastArmatureAmps", "CurrentProof.Fault", "CurrentProof.FaultValue", "CurrentProof.FaultLimit", "CurrentProof._unchangedAmps"],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating", "Ready to Tripped", "Running to Stopping", "Running to Tripped",
            "Stopping to Ready", "Stopping to Tripped", "Tripped to Ready",
        ],
        HealthyVolts = machine => !machine.Outputs.CloseLine ? 0f : machine.Controller.Stage == 1 ? 125f : 187.5f,
        RunOut = [FaultId.ContactDidNotClose, FaultId.ContactDidNotOpen, FaultId.SectionDrifted, FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 4,
        LeastStates = 70_000,
        LeastEdges = 7_000_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(2);
        settings.LineContactFitted = false;
        settings.StageContactsFitted = false;
        settings.StepToleranceRatio = 0.1f;
        settings.StepSettleMicroseconds = 0;
        settings.ZeroAmps = 20f;
        settings.SpinningStart = true;
        return settings;
    }

    // Every closing lets 700 A flow and finds 350 A; 500 A belongs to nothing.
    private static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (int time in SmallSettings.Times)
        {
            foreach (float volts in new[] { 0f, 125f, 187.5f })
            {
                foreach (float amps in new[] { 0f, 350f, 500f, 700f })
                {
                    Letter sound = new() { ElapsedMicroseconds = time, BackEmfVolts = volts, ArmatureAmps = amps };
                    letters.AddRange([sound, sound with { Start = true }, sound with { Stop = true }]);
                    if (volts == 0f) letters.Add(sound with { Reset = true });
                    if (volts != 0f) letters.Add(sound with { EmergencyStop = true });
                }

                letters.Add(new Letter { ElapsedMicroseconds = time, BackEmfVolts = volts, SpeedValid = false });
            }
        }

        return letters;
    }
}
