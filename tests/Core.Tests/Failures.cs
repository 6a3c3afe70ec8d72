using System;

namespace StarterCtl.Core.Tests;

/// <summary>An input of the controller, as a row group of the fault-reaction matrix.</summary>
internal enum Input
{
    SupplyVolts,
    ArmatureAmps,
    Speed,
    FieldAmps,
    ResistorTemperature,
    LineContact,
    StageContact,
    BrakeContact,
    FieldContact,
    Start,
    Stop,
    Reset,
    EmergencyStop,
    Permissive,
    TickTime,
}

/// <summary>How an input fails.</summary>
internal enum Failure
{
    OpenWire,
    Short,
    Stuck,
    Offset,
    Drift,
    Noise,
    Late,
    ImpossibleRate,
}

/// <summary>What a failure makes of a true signal. The number counts milliseconds from the failure.</summary>
internal static class Failures
{
    private const int SpikeEvery = 100;
    private const int WearEvery = 200;
    private const int WearStep = 10;
    private const int MostDelay = 128;

    /// <summary>The value at the moment of the failure, for ever.</summary>
    internal static Func<float, int, float> Frozen()
    {
        float frozen = 0f;
        return (truth, ms) => ms == 0 ? frozen = truth : frozen;
    }

    /// <summary>Evenly spread noise of a fixed seed.</summary>
    internal static Func<float, int, float> Noisy(float magnitude)
    {
        uint number = 1;
        return (truth, _) =>
        {
            number = unchecked(number * 1664525u + 1013904223u);
            return truth + magnitude * ((number >> 8) / 8388608f - 1f);
        };
    }

    /// <summary>What was true some milliseconds before.</summary>
    internal static Func<float, int, float> Delayed(int delay)
    {
        float[] ring = new float[MostDelay];
        return (truth, ms) =>
        {
            if (ms == 0) Array.Fill(ring, truth);
            ring[ms % MostDelay] = truth;
            return ring[(ms + MostDelay - delay) % MostDelay];
        };
    }

    /// <summary>Another value for a single millisecond in every 100.</summary>
    internal static Func<float, int, float> Spiking(float spike) => (truth, ms) => ms % SpikeEvery == 0 ? spike : truth;

    /// <summary>Reads open for 0 ms in the first 200, 10 ms in the next, 20 ms in the one behind it.</summary>
    internal static Func<float, int, float> Worn() => (truth, ms) => ms % WearEvery < ms / WearEvery * WearStep ? 0f : truth;

    /// <summary>Closed or open by chance.</summary>
    internal static Func<float, int, float> Chattering()
    {
        uint number = 1;
        return (_, _) =>
        {
            number = unchecked(number * 1664525u + 1013904223u);
            return number >> 31;
        };
    }

    /// <summary>Closed on one tick, open on the next.</summary>
    internal static float Toggling(float truth, int ms) => ms & 1;
}
