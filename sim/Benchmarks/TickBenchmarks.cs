using BenchmarkDotNet.Attributes;
using StarterCtl.Core;

namespace StarterCtl.Benchmarks;

/// <summary>One control period of the core, phase by phase.</summary>
[MemoryDiagnoser]
public class TickBenchmarks
{
    private const int PeriodMicroseconds = 1000;

    private readonly Readings _readings = new();
    private readonly Outputs _outputs = new();
    private Controller _controller = null!;

    /// <summary>The phase to stay in.</summary>
    [Params(Phase.Ready, Phase.Accelerating, Phase.Running, Phase.Tripped)]
    public Phase Phase { get; set; }

    [GlobalSetup]
    public void BringToPhase()
    {
        _controller = new Controller(ReferenceStart.Settings);
        _readings.SupplyVolts = 250;
        _readings.SpeedValid = true;
        Tick();
        if (Phase == Phase.Ready) return;

        _readings.StartPressed = true;
        Tick();
        _readings.LineClosed = true;
        _readings.ArmatureAmps = 500;
        _readings.SpeedRadPerSec = 10;
        Tick();
        if (Phase == Phase.Tripped) _readings.EmergencyStop = true;
        for (int i = 0; Phase == Phase.Running && i < 10; i++)
        {
            _readings.SpeedRadPerSec = 99;
            _readings.StagesClosed = _outputs.CloseStages;
            Tick();
        }

        Tick();
        if (_controller.Phase != Phase) throw new System.InvalidOperationException($"stands in {_controller.Phase}");
    }

    // Elapsed time 0, so that no timer runs out however often it is called; the work is the same.
    [Benchmark]
    public bool Tick()
    {
        _controller.Tick(Phase == Phase.Accelerating ? 0 : PeriodMicroseconds, _readings, _outputs);
        return _outputs.CloseLine;
    }
}
