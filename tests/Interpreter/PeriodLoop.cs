using StarterCtl.Firmware;

namespace StarterCtl.Interpreter;

/// <summary>Control periods of a whole board, each a millisecond of its clock.</summary>
public sealed class PeriodLoop : ILoop
{
    private const int PeriodMicroseconds = 1000;

    private readonly StarterBoard _board;
    private readonly MemoryPins _pins;

    public PeriodLoop(StarterBoard board, MemoryPins pins)
    {
        _board = board;
        _pins = pins;
    }

    public void Run(int count)
    {
        for (int i = 0; i < count; i++)
        {
            _pins.Pass(PeriodMicroseconds);
            _board.Step();
        }
    }

    public string Where() => " in phase " + ((int)_board.Loop.Controller.Phase).ToString();
}
