using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>A board of pins kept in memory, with everything wired of the three-stage starter of CHK-01.</summary>
internal sealed class SoftPins : IBoardPins
{
    private const int AdcFullScale = 4095;

    private readonly PinMap _map;
    private readonly bool[] _levels = new bool[PinMap.RoleCount];
    private readonly int[] _counts = new int[PinMap.RoleCount];

    internal SoftPins(PinMap map)
    {
        _map = map;
    }

    /// <summary>Pins written, as "LineCoil 1", in order, by what they mean and not by their level.</summary>
    internal List<string> Writes { get; } = [];

    internal bool Logs { get; set; }

    internal int CounterMicroseconds { get; set; }

    internal int EdgeCount { get; set; }

    internal int LastEdgeMicroseconds { get; set; }

    /// <summary>Coils whose pin does not follow: it shows the energised level.</summary>
    internal HashSet<PinRole> StuckOn { get; } = [];

    public int MicrosecondCounter() => CounterMicroseconds;

    public IAnalogInput Analog(int pin) => new AnalogPin(this, pin);

    public IDigitalInput Input(int pin) => new DigitalPin(this, pin);

    public IPulseInput Pulses(int pin, int directionPin) => new EdgePin(this);

    public IDigitalOutput Output(int pin, bool isHigh)
    {
        DigitalPin output = new(this, pin);
        output.Write(isHigh);
        return output;
    }

    /// <summary>Wires every role to the pin of its own number, with sensors of CHK-01's size.</summary>
    internal static PinMap Wired(Settings settings, params PinRole[] activeLow)
    {
        PinMap map = new();
        List<PinRole> roles =
        [
            PinRole.SupplyVolts, PinRole.ArmatureAmps, PinRole.SpeedEdges, PinRole.StopChain, PinRole.StopButton, PinRole.StartButton,
            PinRole.ResetButton, PinRole.LineContact, PinRole.LineCoil, PinRole.ReadyLamp, PinRole.RunningLamp, PinRole.TrippedLamp,
            PinRole.Watchdog, PinRole.Permissive1,
        ];
        for (int i = 0; i < settings.StageCount; i++) roles.AddRange([PinRole.StageContact1 + i, PinRole.StageCoil1 + i]);
        foreach (PinRole role in roles) map.Wire(role, (int)role, activeLow.Contains(role));

        Scale(map.Supply, 0f, 500f);
        Scale(map.Armature, -1200f, 1200f);
        map.Pulses.EdgesPerTurn = 60;
        map.Standstill.ZeroAmps = 5f;
        map.Standstill.LeastRadPerSec = 2f;
        map.Pulses.HighestRadPerSecSquared = 700f;
        map.Pulses.MostEdgesPerSecond = 10_000;
        return map;
    }

    /// <summary>A sensor that shows its range between 5 % and 95 % of the converter's.</summary>
    internal static void Scale(AnalogSetup setup, float lowest, float highest)
    {
        setup.LowestCounts = 205;
        setup.HighestCounts = 3890;
        setup.Calibration.UnitsPerCount = (highest - lowest) / (3890 - 205);
        setup.Calibration.OffsetCounts = 205 - lowest / setup.Calibration.UnitsPerCount;
    }

    /// <summary>What a converter makes of a quantity.</summary>
    internal void Show(PinRole role, AnalogSetup setup, double quantity) =>
        _counts[_map.Pin(role)] = (int)System.Math.Round(setup.Calibration.OffsetCounts + quantity / setup.Calibration.UnitsPerCount);

    internal void ShowCounts(PinRole role, int counts) => _counts[_map.Pin(role)] = counts;

    internal void Close(PinRole role, bool isClosed = true) => _levels[_map.Pin(role)] = isClosed != _map.IsActiveLow(role);

    internal bool IsOn(PinRole role) => _map.IsFitted(role) && _levels[_map.Pin(role)] != _map.IsActiveLow(role);

    /// <summary>Everything sound and at rest: chain and stop closed, contacts open, 250 V, no current.</summary>
    internal SoftPins AtRest()
    {
        foreach (PinRole role in Enumerable.Range(0, PinMap.RoleCount).Select(i => (PinRole)i).Where(_map.IsFitted)) Close(role, false);
        Close(PinRole.StopChain);
        Close(PinRole.StopButton);
        Close(PinRole.Permissive1);
        Show(PinRole.SupplyVolts, _map.Supply, 250);
        Show(PinRole.ArmatureAmps, _map.Armature, 0);
        return this;
    }

    private sealed class AnalogPin(SoftPins board, int pin) : IAnalogInput
    {
        public int FullScale => AdcFullScale;

        public int Read() => board._counts[pin];
    }

    private sealed class EdgePin(SoftPins board) : IPulseInput
    {
        public void Read(EdgeMark mark)
        {
            mark.Edges = board.EdgeCount;
            mark.LastEdgeMicroseconds = board.LastEdgeMicroseconds;
        }
    }

    private sealed class DigitalPin(SoftPins board, int pin) : IDigitalInput, IDigitalOutput
    {
        public bool Read() => board.StuckOn.Contains((PinRole)pin) ? !board._map.IsActiveLow((PinRole)pin) : board._levels[pin];

        public void Write(bool isHigh)
        {
            board._levels[pin] = isHigh;
            if (board.Logs) board.Writes.Add($"{(PinRole)pin} {(isHigh != board._map.IsActiveLow((PinRole)pin) ? 1 : 0)}");
        }
    }
}
