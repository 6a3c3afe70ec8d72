using StarterCtl.Board;
using StarterCtl.Core;
using StarterCtl.Firmware;

namespace StarterCtl.Interpreter;

/// <summary>Pins of memory for the shipped wiring: everything at rest, auxiliary contacts that move with their coils.</summary>
public sealed class MemoryPins : IBoardPins
{
    private const int MostPins = 64;
    private const int SupplyCounts = 1888;
    private const int ZeroAmpsCounts = 2048;
    // 39 rad/s with eight edges a turn: far below the first cutout.
    private const int EdgeMicroseconds = 20000;

    private readonly MemoryPin[] _digital = new MemoryPin[MostPins];
    private readonly MemoryChannel[] _analog = new MemoryChannel[2];
    private readonly PinMap _map;
    private int _microseconds;

    /// <summary>True while the shaft turns.</summary>
    public bool Turns;

    public MemoryPins(PinMap map)
    {
        _map = map;
        for (int i = 0; i < MostPins; i++) _digital[i] = new MemoryPin();
        _analog[0] = new MemoryChannel(SupplyCounts);
        _analog[1] = new MemoryChannel(ZeroAmpsCounts);
        Set(PinRole.StopChain, true);
        Set(PinRole.StopButton, true);
    }

    public int MicrosecondCounter() => _microseconds;

    public void Pass(int microseconds) => _microseconds = unchecked(_microseconds + microseconds);

    public IAnalogInput Analog(int pin) => _analog[pin - Wiring.FirstChannel];

    public IDigitalInput Input(int pin) => _digital[CoilOf(pin)];

    public IPulseInput Pulses(int pin, int directionPin) => new Shaft(this);

    public IDigitalOutput Output(int pin, bool isHigh)
    {
        _digital[pin].Write(isHigh);
        return _digital[pin];
    }

    public void Set(PinRole role, bool isHigh) => _digital[_map.Pin(role)].Write(isHigh);

    private int CoilOf(int pin)
    {
        if (pin == _map.Pin(PinRole.LineContact)) return _map.Pin(PinRole.LineCoil);
        for (int i = 0; i < Settings.MostStages; i++)
        {
            if (pin == _map.Pin(PinRole.StageContact1 + i)) return _map.Pin(PinRole.StageCoil1 + i);
        }

        return pin;
    }

    private sealed class MemoryPin : IDigitalInput, IDigitalOutput
    {
        private bool _isHigh;

        public bool Read() => _isHigh;

        public void Write(bool isHigh) => _isHigh = isHigh;
    }

    private sealed class MemoryChannel : IAnalogInput
    {
        private readonly int _counts;

        public MemoryChannel(int counts)
        {
            _counts = counts;
        }

        public int FullScale => 4095;

        public int Read() => _counts;
    }

    private sealed class Shaft : IPulseInput
    {
        private readonly MemoryPins _board;
        private int _edges;
        private int _lastMicroseconds;

        public Shaft(MemoryPins board)
        {
            _board = board;
        }

        public void Read(EdgeMark mark)
        {
            if (_board.Turns && unchecked(_board._microseconds - _lastMicroseconds) >= EdgeMicroseconds)
            {
                _edges++;
                _lastMicroseconds = _board._microseconds;
            }

            mark.Edges = _edges;
            mark.LastEdgeMicroseconds = _lastMicroseconds;
        }
    }
}
