using StarterCtl.Core;

namespace StarterCtl.Interpreter;

/// <summary>Ticks of a controller on readings that stand still, in steps of a microsecond, so that no time runs out.</summary>
public sealed class TickLoop : ILoop
{
    private readonly Controller _controller;
    private readonly Readings _readings;
    private readonly Outputs _outputs;

    public TickLoop(Controller controller, Readings readings, Outputs outputs)
    {
        _controller = controller;
        _readings = readings;
        _outputs = outputs;
    }

    public void Run(int count)
    {
        for (int i = 0; i < count; i++) _controller.Tick(1, _readings, _outputs);
    }

    public string Where() => " in phase " + ((int)_controller.Phase).ToString();
}
