using System;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>How the board on the desk is wired to a case's machine: every role on the pin of its own number, sensors sized for the case.</summary>
public static class DeskWiring
{
    /// <summary>Largest count of the desk's converters, 12 bits.</summary>
    public const int FullScale = 4095;

    // A sensor shows its range between 5 % and 95 % of the converter's, so that an open wire and a short stand out.
    private const int LowestCounts = 205;
    private const int HighestCounts = 3890;

    // Beyond twice the trip current a reading clips and is none; what trips is read before.
    private const float AmpsRangeRatio = 2f;
    private const float VoltsRangeRatio = 1.25f;
    private const float CelsiusRange = 600f;
    private const float AccelerationRatio = 1.5f;
    private const int StandstillMicroseconds = 500_000;

    // What the sensors show with nothing there: no current, no speed (common practice, no source).
    private const float ZeroRatio = 0.01f;

    /// <summary>Wires a board.</summary>
    /// <param name="run">The case.</param>
    public static PinMap Of(PreparedRun run)
    {
        (_, RunSetup setup, Settings settings) = run;
        PinMap map = new() { PeriodMicroseconds = setup.PeriodMicroseconds, LateMicroseconds = setup.PeriodMicroseconds / 2 };
        WireInputs(map, settings, setup.Sensors is { PulsesPerRevolution: > 0 });
        WireOutputs(map, settings);
        float highVolts = settings.SupplyHighVolts < Settings.Largest ? Math.Max(settings.SupplyHighVolts, settings.NominalSupplyVolts) : settings.NominalSupplyVolts;
        Scale(map.Supply, 0f, VoltsRangeRatio * highVolts);
        Scale(map.Armature, -AmpsRangeRatio * settings.InstantTripAmps, AmpsRangeRatio * settings.InstantTripAmps);
        Scale(map.Field, 0f, HighestFieldAmps(setup, settings));
        Scale(map.Resistor, 0f, Math.Max(CelsiusRange, settings.ResistorSensorFitted ? settings.ResistorCelsius : 0f));
        Scale(map.Tacho, -settings.HighestSpeedRadPerSec, settings.HighestSpeedRadPerSec);
        SetPulses(map.Pulses, setup, settings);
        map.Standstill.StandstillMicroseconds = StandstillMicroseconds;
        map.Standstill.LeastRadPerSec = ZeroRatio * settings.HighestSpeedRadPerSec;
        map.Standstill.ZeroAmps = settings.ZeroAmps > 0f ? settings.ZeroAmps : ZeroRatio * AmpsRangeRatio * settings.InstantTripAmps;
        return map;
    }

    private static void WireInputs(PinMap map, Settings settings, bool hasPulses)
    {
        Wire(map, true, PinRole.SupplyVolts, PinRole.ArmatureAmps, PinRole.StopChain, PinRole.StopButton, PinRole.StartButton, PinRole.ResetButton, PinRole.LinkPermit);
        Wire(map, settings.FieldSensorFitted, PinRole.FieldAmps);
        Wire(map, settings.ResistorSensorFitted, PinRole.ResistorCelsius);
        // A case without a number of pulses measures its speed continuously, as a tacho generator does.
        Wire(map, settings.SpeedSensorFitted, hasPulses ? PinRole.SpeedEdges : PinRole.TachoRadPerSec);
        Wire(map, settings.LineContactFitted, PinRole.LineContact);
        Wire(map, settings.BrakeFitted && settings.BrakeContactFitted, PinRole.BrakeContact);
        Wire(map, settings.FieldContactFitted, PinRole.FieldContact);
        for (int i = 0; i < settings.StageCount; i++) Wire(map, settings.StageContactsFitted, PinRole.StageContact1 + i);
        for (int i = 0; i < PinMap.MostPermissives; i++) Wire(map, (settings.RequiredPermissives & (1 << i)) != 0, PinRole.Permissive1 + i);
    }

    private static void WireOutputs(PinMap map, Settings settings)
    {
        Wire(map, true, PinRole.LineCoil, PinRole.ReadyLamp, PinRole.RunningLamp, PinRole.TrippedLamp, PinRole.Watchdog);
        Wire(map, settings.BrakeFitted, PinRole.BrakeCoil);
        Wire(map, settings.FieldContactorFitted, PinRole.FieldCoil);
        for (int i = 0; i < settings.StageCount; i++) Wire(map, true, PinRole.StageCoil1 + i);
    }

    private static void Wire(PinMap map, bool isFitted, params PinRole[] roles)
    {
        if (!isFitted) return;
        foreach (PinRole role in roles) map.Wire(role, (int)role, isActiveLow: false);
    }

    private static void Scale(AnalogSetup setup, float lowest, float highest)
    {
        setup.LowestCounts = LowestCounts;
        setup.HighestCounts = HighestCounts;
        setup.Calibration.UnitsPerCount = (highest - lowest) / (HighestCounts - LowestCounts);
        setup.Calibration.OffsetCounts = LowestCounts - lowest / setup.Calibration.UnitsPerCount;
    }

    private static float HighestFieldAmps(RunSetup setup, Settings settings)
    {
        double amps = setup.Field == null ? 0 : (setup.Field.IsShunt ? setup.Supply.OpenCircuitVolts : setup.Field.SupplyVolts) / setup.Field.Ohms;
        return Math.Max(1f, VoltsRangeRatio * Math.Max((float)amps, settings.MinimumFieldAmps));
    }

    private static void SetPulses(PulseSetup pulses, RunSetup setup, Settings settings)
    {
        pulses.EdgesPerTurn = Math.Max(1, setup.Sensors?.PulsesPerRevolution ?? 0);
        double constant = setup.Machine.Flux?.Curve.Constants[^1] ?? setup.Machine.Constant;
        pulses.HighestRadPerSecSquared = (float)(AccelerationRatio * constant * settings.InstantTripAmps / setup.Machine.InertiaKgM2);
        // The desk counts every edge that there is.
        pulses.MostEdgesPerSecond = int.MaxValue;
    }
}
