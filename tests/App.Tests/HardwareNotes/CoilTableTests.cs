using System;
using System.Linq;
using Xunit;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>
/// Page 12: how long the current of a 24 V coil of 72 ohm and 1.152 H needs from its rated value down to where the contactor lets go,
/// against the voltage of its suppressor: t = L/R ln((V + Vs) / (d V + Vs)), the closed form of L di/dt = -R i - Vs. From the same
/// page: a coil lets go between 75 and 10 % of its rated voltage (IEC 60947-4-1, from memory).
/// </summary>
public sealed class CoilTableTests
{
    private const double CoilVolts = 24;
    private const double CoilOhms = 72;
    private const double CoilHenries = 1.152;

    private static readonly (string Name, double Volts)[] Suppressors = [("diode", 0.7), ("diode and Zener diode of 24 V", 24.7), ("varistor that holds 60 V", 60)];

    [Fact]
    public void DecayTimes_FollowFromTheClosedForm() => Note.AssertHas("12-coils.md", Note.Table(
        ["suppressor", "its voltage, V", "output must bear, V", "current down to 50 %, ms", "current down to 10 %, ms"],
        Suppressors.Select(one => new object[] { one.Name, one.Volts, CoilVolts + one.Volts, Milliseconds(one.Volts, 0.5), Milliseconds(one.Volts, 0.1) })));

    private static double Milliseconds(double suppressorVolts, double dropOut) =>
        1000 * CoilHenries / CoilOhms * Math.Log((CoilVolts + suppressorVolts) / (dropOut * CoilVolts + suppressorVolts));
}
