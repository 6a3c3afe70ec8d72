namespace StarterCtl.Engine.Cases;

/// <content>Keys of how the contactors bounce, what voltage their coils need and how they break a current.</content>
public static partial class CaseKeys
{
    /// <summary><c>contactors.bounce-count</c>: how often a closing main contact opens again.</summary>
    public static readonly CaseKey ContactorsBounceCount =
        new("contactors.bounce-count", CaseValueKind.Count, "3", "How often a main contact opens again after its first touch")
        { Range = CaseRange.Counts(0, 100), DefaultText = "0" };

    /// <summary><c>contactors.bounce-time</c>: how long a bouncing contact is open, and closed, each time.</summary>
    public static readonly CaseKey ContactorsBounceTime =
        new("contactors.bounce-time", CaseValueKind.Quantity, "\"1 ms\"", "How long a bouncing contact stays open, and then closed, each time")
        { Range = CaseRange.Above0(Dimension.Time, "1 s"), DefaultText = "1 ms" };

    /// <summary><c>contactors.pick-up-voltage</c>: part of its rated voltage from which a coil closes its contactor.</summary>
    /// <remarks>IEC 60947-4-1, from memory: a contactor must close from 85 % of the coil's rated voltage.</remarks>
    public static readonly CaseKey ContactorsPickUpVoltage =
        new("contactors.pick-up-voltage", CaseValueKind.Ratio, "0.8", "Part of its rated voltage from which a coil closes its contactor")
        { Range = new CaseRange(0, false, 1, true, "above 0, up to 1"), DefaultText = "0.85" };

    /// <summary><c>contactors.drop-out-voltage</c>: part of its rated voltage below which a coil lets go.</summary>
    /// <remarks>IEC 60947-4-1, from memory: somewhere between 10 and 75 % for dc. The half within it is common practice, no source.</remarks>
    public static readonly CaseKey ContactorsDropOutVoltage =
        new("contactors.drop-out-voltage", CaseValueKind.Ratio, "0.6", "Part of its rated voltage below which a coil lets its contactor go")
        { Range = new CaseRange(0, true, 1, true, "0 to 1"), DefaultText = "0.5" };

    /// <summary><c>contactors.arc-voltage</c>: voltage of the arc between contacts that part with current.</summary>
    public static readonly CaseKey ContactorsArcVoltage =
        new("contactors.arc-voltage", CaseValueKind.Quantity, "\"400 V\"", "Voltage of the arc between line or brake contacts that part with current, whatever the current; when left out, the current is broken at once")
        { Range = CaseRange.From0(Dimension.Voltage, "100 kV"), DefaultText = "0 V" };

    /// <summary><c>event.coil-voltage</c>: voltage of the coils' supply as a part of the rated one.</summary>
    public static readonly CaseKey EventCoilVoltage =
        new("event.coil-voltage", CaseValueKind.Ratio, "0.4", "Voltage of every contactor's coil, as a part of the rated one, from then on")
        { Range = new CaseRange(0, true, 2, true, "0 to 2") };
}
