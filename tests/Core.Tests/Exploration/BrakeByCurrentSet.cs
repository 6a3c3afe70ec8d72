using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>A brake behind a delay, and neither line nor brake with an auxiliary contact; one stage.</summary>
internal static class BrakeByCurrentSet
{
    internal static readonly ExploredSet Set = new()
    {
        Name = "brake by current",
        Settings = Settings,
        Letters = Letters,
        Told =
        [
            "Estimator._lastArmatureAmps", "ContactProof.StagesClosed", "ContactProof.BrakeFailed", "CurrentProof.Fault",
            "CurrentProof.FaultValue", "CurrentProof.FaultLimit", "CurrentProof._unchangedAmps",
        ],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Braking to Stopping",
            "Braking to Tripped", "Ready to Accelerating", "Ready to Tripped", "Running to Stopping", "Running to Tripped",
            "Stopping to Braking", "Stopping to Ready", "Stopping to Tripped", "Tripped to Ready",
        ],
        HealthyVolts = machine => machine.Outputs.CloseLine || machine.Controller.Phase == Phase.Stopping ? 125f : 0f,
        RunOut = [FaultId.BrakeDidNotFinish, FaultId.ContactDidNotClose, FaultId.ContactDidNotOpen, FaultId.SequenceIncomplete, FaultId.StageTookTooLong],
        TickMicroseconds = SmallSettings.TickMicroseconds / 4,
        LeastStates = 7000,
        LeastEdges = 550_000,
    };

    private static Settings Settings()
    {
        Settings settings = SmallSettings.Of(1);
        settings.LineContactFitted = false;
        settings.ZeroAmps = 20f;
        settings.BrakeFitted = true;
        settings.BrakeContactFitted = false;
        settings.BrakeOhms = 0.5f;
        settings.BrakeReleaseRadPerSec = 10f;
        settings.BrakeDelayMicroseconds = SmallSettings.TickMicroseconds;
        settings.MaximumBrakeMicroseconds = 2 * SmallSettings.TickMicroseconds;
        return settings;
    }

    // Standing, turning, and too fast for the brake's resistor.
    private static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (int time in SmallSettings.Times)
        {
            for (int stages = 0; stages < 2; stages++)
            {
                foreach (float volts in new[] { 0f, 125f, 360f })
                {
                    foreach (float amps in new[] { 0f, 350f })
                    {
                        Letter sound = new() { ElapsedMicroseconds = time, Stages = stages, BackEmfVolts = volts, ArmatureAmps = amps };
                        letters.AddRange([sound, sound with { Start = true }, sound with { Stop = true }]);
                    }
                }

                letters.Add(new Letter { ElapsedMicroseconds = time, Stages = stages, Reset = true });
                letters.Add(new Letter { ElapsedMicroseconds = time, Stages = stages, BackEmfVolts = 125f, EmergencyStop = true });
            }
        }

        return letters;
    }
}
