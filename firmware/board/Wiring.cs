using StarterCtl.Firmware;

namespace StarterCtl.Board;

/// <summary>
/// Which pin does what on this board, and what stands at it: the one file to change for another board or machine. As shipped it fits
/// the bench rig of 48 V and no particular processor; <see cref="BoardCheck"/> refuses what does not fit the settings.
/// </summary>
public static class Wiring
{
    /// <summary>Number that analogue channel 0 has here, so that channels and pins do not share numbers.</summary>
    public const int FirstChannel = 1000;

    /// <summary>Name that the link shows, 24 characters at most.</summary>
    public const string BoardName = "bench rig";

    /// <summary>Serial port of the link.</summary>
    public const string PortName = "COM2";

    /// <summary>Its bits per second.</summary>
    public const int BaudRate = 115200;

    /// <summary>Most bytes sent in a control period: 4 take 0.35 ms at 115 200 bit/s, if the board waits for them.</summary>
    public const int BytesPerPeriod = 4;

    /// <summary>Builds the wiring.</summary>
    public static PinMap Build()
    {
        PinMap map = new PinMap();
        map.PeriodMicroseconds = CaseSettings.PeriodMicroseconds;
        WireInputs(map);
        WireOutputs(map);
        SizeChannels(map);
        SizePulses(map.Pulses);
        // One per cent of the current's range.
        map.Standstill.ZeroAmps = 0.8f;
        return map;
    }

    private static void WireInputs(PinMap map)
    {
        map.Wire(PinRole.SupplyVolts, FirstChannel, false);
        map.Wire(PinRole.ArmatureAmps, FirstChannel + 1, false);
        map.Wire(PinRole.SpeedEdges, 4, false);
        // Contacts pull their pins up, so that a broken wire reads as open.
        map.Wire(PinRole.StopChain, 5, false);
        map.Wire(PinRole.StopButton, 12, false);
        map.Wire(PinRole.StartButton, 13, false);
        map.Wire(PinRole.ResetButton, 14, false);
        map.Wire(PinRole.LineContact, 15, false);
        map.Wire(PinRole.StageContact1, 18, false);
        map.Wire(PinRole.StageContact1 + 1, 19, false);
        map.Wire(PinRole.LinkPermit, 21, false);
    }

    private static void WireOutputs(PinMap map)
    {
        map.Wire(PinRole.LineCoil, 22, false);
        map.Wire(PinRole.StageCoil1, 23, false);
        map.Wire(PinRole.StageCoil1 + 1, 25, false);
        map.Wire(PinRole.ReadyLamp, 26, false);
        map.Wire(PinRole.RunningLamp, 27, false);
        map.Wire(PinRole.TrippedLamp, 32, false);
        map.Wire(PinRole.Watchdog, 33, false);
    }

    // Nominal values by the parts of the rig, for a converter of 12 bits; calibration goes from here.
    private static void SizeChannels(PinMap map)
    {
        // 240 kohm and 4.7 kohm before 2 V: 104.1 V at 4095 counts. A sound supply never reaches the end.
        map.Supply.Calibration.OffsetCounts = 0f;
        map.Supply.Calibration.UnitsPerCount = 0.02542f;
        map.Supply.LowestCounts = 0;
        map.Supply.HighestCounts = 4080;

        // 3 mohm and an amplifier of 250 mV either way: 83.33 A at either end, 0 A in the middle.
        map.Armature.Calibration.OffsetCounts = 2048f;
        map.Armature.Calibration.UnitsPerCount = 0.04069f;
        map.Armature.LowestCounts = 16;
        map.Armature.HighestCounts = 4080;
    }

    private static void SizePulses(PulseSetup pulses)
    {
        pulses.EdgesPerTurn = 8;
        // Stamps of an interpreter may be a millisecond late: 2 % of 50 ms.
        pulses.ShortestSpanMicroseconds = 50000;
        // 32 A at 0.138 V s/rad on 0.0222 kg m2 are 199 rad/s2.
        pulses.HighestRadPerSecSquared = 300f;
        // Not measured on any board: what is asked of it at the highest believed speed is 886.
        pulses.MostEdgesPerSecond = 1000;
    }
}
