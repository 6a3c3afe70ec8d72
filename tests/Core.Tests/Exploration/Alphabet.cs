using System.Collections.Generic;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>
/// The inputs of one tick, as letters of an alphabet: at every place where the controller compares, one value on each side.
/// </summary>
/// <remarks>
/// <see cref="Letters"/> leaves out what should make no difference: stop and the causes of faults come with the back-EMF
/// and the current that would cut out and not with every other, and two causes do not come at once. That they make no
/// difference is looked at once more with <see cref="Product"/>, which leaves out nothing but times: every product with a
/// tick. Values between the ones here are left out everywhere: every comparison answers for them as for one that is here.
/// </remarks>
internal static class Alphabet
{
    /// <summary>A sixth of the timers' ceiling, so that a timer which nobody stops has seven values and no more.</summary>
    internal const int TickMicroseconds = Elapsed.Ceiling / 6;

    internal const float SupplyVolts = 250f;
    internal const float MachineConstant = 2.5f;

    // Standstill; just at the threshold of stage 1 and of stage 2; above the highest from which stage 2, then stage 1 is cut out.
    private static readonly float[] BackEmfs = [0f, 125f, 187.5f, 350f, 400f];

    private static readonly int[] OddTimes = [int.MaxValue, -1];

    internal static readonly bool[] Either = [false, true];

    /// <summary>The bare starter: nothing is fitted and nothing watched but what always is.</summary>
    internal static readonly ExploredSet Set = new()
    {
        Name = "bare",
        Settings = () => Settings(TickMicroseconds),
        Letters = Letters,
        Told = ["Estimator._lastArmatureAmps", "ContactProof.LineClosed", "ContactProof.StagesClosed"],
        Ways =
        [
            "Accelerating to Running", "Accelerating to Stopping", "Accelerating to Tripped", "Ready to Accelerating",
            "Ready to Tripped", "Running to Stopping", "Running to Tripped", "Stopping to Ready", "Stopping to Tripped",
            "Tripped to Ready",
        ],
        HealthyVolts = machine => !machine.Outputs.CloseLine ? 0f : machine.Controller.Stage == 1 ? 125f : 187.5f,
        RunOut = [FaultId.StageTookTooLong, FaultId.SequenceIncomplete],
        TickMicroseconds = TickMicroseconds / 4,
        LeastStates = 18_000,
        LeastEdges = 13_000_000,
    };

    /// <summary>Nothing pressed, nothing wrong, and a shaft fast enough for every cutout.</summary>
    internal static Letter Healthy { get; } = new()
    {
        ElapsedMicroseconds = TickMicroseconds,
        BackEmfVolts = 187.5f,
        SupplyVolts = SupplyVolts,
        ArmatureAmps = 100f,
        SpeedValid = true,
    };

    /// <summary>Two stages, every time a few ticks, and limits that lie between the letters' values.</summary>
    internal static Settings Settings(int tickMicroseconds)
    {
        Settings settings = new()
        {
            StageCount = 2,
            MachineConstant = MachineConstant,
            LockoutAmps = 400f,
            PeakAmps = 700f,
            InstantTripAmps = 1000f,
            HighestSupplyVolts = 500f,
            HighestSpeedRadPerSec = 200f,
            ConfirmMicroseconds = tickMicroseconds,
            MinimumDwellMicroseconds = tickMicroseconds,
            MaximumStageMicroseconds = 4 * tickMicroseconds,
            ContactMicroseconds = 2 * tickMicroseconds,
            // A turning shaft waits: to start it is another set's affair.
            SpinningStart = false,
        };
        new[] { 250f / 700f, 125f / 700f, 62.5f / 700f }.CopyTo(settings.StageOhms, 0);
        new[] { 125f, 62.5f }.CopyTo(settings.VoltsLeft, 0);
        return settings;
    }

    /// <summary>Every letter.</summary>
    internal static List<Letter> Letters()
    {
        List<Letter> letters = [];
        foreach (bool start in Either)
        {
            AddSound(letters, Healthy with { Start = start });
            AddOddTimes(letters, Healthy with { Start = start });
            AddContacts(letters, Healthy with { Start = start, Reset = true, BackEmfVolts = 0f }, TickMicroseconds);
            AddContacts(letters, Healthy with { Start = start, Reset = true }, TickMicroseconds);
        }

        foreach (Letter pressed in Buttons()) AddDecided(letters, pressed);
        return letters;
    }

    /// <summary>Every product of everything, with a tick.</summary>
    internal static List<Letter> Product()
    {
        List<Letter> letters = [];
        foreach (Letter pressed in Buttons())
        {
            for (int causes = 0; causes < 8; causes++)
            {
                Letter one = pressed with { Stop = (causes & 1) != 0, EmergencyStop = (causes & 2) != 0, SpeedValid = (causes & 4) == 0 };
                foreach (float backEmf in BackEmfs)
                {
                    foreach (float amps in new[] { 100f, 500f, -1001f })
                    {
                        AddContacts(letters, one with { BackEmfVolts = backEmf, ArmatureAmps = amps }, TickMicroseconds);
                    }
                }
            }
        }

        return letters;
    }

    private static IEnumerable<Letter> Buttons()
    {
        foreach (bool start in Either)
        {
            foreach (bool reset in Either) yield return Healthy with { Start = start, Reset = reset };
        }
    }

    private static void AddSound(List<Letter> letters, Letter pressed)
    {
        foreach (float backEmf in BackEmfs)
        {
            foreach (float amps in new[] { 100f, 500f, -500f })
            {
                AddContacts(letters, pressed with { BackEmfVolts = backEmf, ArmatureAmps = amps }, TickMicroseconds);
            }
        }
    }

    private static void AddOddTimes(List<Letter> letters, Letter pressed)
    {
        foreach (int time in OddTimes)
        {
            AddContacts(letters, pressed, time);
            AddContacts(letters, pressed with { BackEmfVolts = 0f }, time);
            AddContacts(letters, pressed with { BackEmfVolts = 125f }, time);
            AddContacts(letters, pressed with { ArmatureAmps = 500f }, time);
        }
    }

    private static void AddDecided(List<Letter> letters, Letter pressed)
    {
        AddContacts(letters, pressed with { Stop = true }, TickMicroseconds);
        // A lost speed is remembered behind a fault that comes before it.
        AddContacts(letters, pressed with { EmergencyStop = true, SpeedValid = false }, TickMicroseconds);
        AddContacts(letters, pressed with { ArmatureAmps = -1001f, SpeedValid = false }, TickMicroseconds);
        foreach (bool stop in Either)
        {
            Letter sound = pressed with { Stop = stop };
            AddContacts(letters, sound with { EmergencyStop = true }, TickMicroseconds);
            AddContacts(letters, sound with { SpeedValid = false }, TickMicroseconds);
            AddContacts(letters, sound with { SupplyVolts = float.NaN }, TickMicroseconds);
            AddContacts(letters, sound with { ArmatureAmps = -1001f }, TickMicroseconds);
        }
    }

    private static void AddContacts(List<Letter> letters, Letter sound, int elapsedMicroseconds)
    {
        foreach (bool line in Either)
        {
            for (int stages = 0; stages < 4; stages++)
            {
                letters.Add(sound with { ElapsedMicroseconds = elapsedMicroseconds, Line = line, Stages = stages });
            }
        }
    }
}
