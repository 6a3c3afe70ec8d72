using BenchmarkDotNet.Attributes;
using StarterCtl.Core;

namespace StarterCtl.Benchmarks;

/// <summary>
/// One control period of the core, phase by phase: for a plain starter, with field contactor and brake for the phases that need
/// them, and with everything switched on.
/// </summary>
[MemoryDiagnoser]
public class TickBenchmarks
{
    private const int PeriodMicroseconds = 1000;
    private const int MostTicks = 1000;

    private readonly Readings _readings = new();
    private readonly Outputs _outputs = new();
    private Controller _controller = null!;
    private int _elapsedMicroseconds = PeriodMicroseconds;

    /// <summary>The phase to stay in.</summary>
    [Params(Phase.Ready, Phase.FieldBuilding, Phase.Accelerating, Phase.Running, Phase.Stopping, Phase.Braking, Phase.Tripped)]
    public Phase Phase { get; set; }

    /// <summary>True with every function of the controller switched on.</summary>
    [Params(false, true)]
    public bool Everything { get; set; }

    [GlobalSetup]
    public void BringToPhase()
    {
        bool needsFieldOrBrake = Phase is Phase.FieldBuilding or Phase.Braking;
        Settings settings = Everything ? BootCourse.Settings()
            : needsFieldOrBrake ? ReferenceStart.SettingsWithFieldAndBrake() : ReferenceStart.Settings;
        _controller = new Controller(settings);
        _readings.SupplyVolts = 240;
        _readings.SpeedValid = true;
        _readings.Permissives = 1;
        Follow();
        if (Phase == Phase.Ready) return;
        if (Phase == Phase.Tripped) _readings.EmergencyStop = true;

        _readings.StartPressed = true;
        _readings.FieldAmps = Phase == Phase.FieldBuilding ? 0 : 2;
        TickUntil(Phase.FieldBuilding, Phase.Accelerating, Phase.Tripped);
        _readings.StartPressed = false;
        if (Phase is Phase.FieldBuilding or Phase.Tripped)
        {
            Settle();
            return;
        }

        TickUntil(Phase.Accelerating);
        bool isToRun = Phase is Phase.Running or Phase.Stopping or Phase.Braking;
        if (isToRun) _readings.SpeedRadPerSec = Everything ? 110 : 94;
        else _readings.SpeedRadPerSec = 10;
        for (int i = 0; i < 20 || (isToRun && _controller.Phase == Phase.Accelerating && i < MostTicks); i++) Follow();
        if (Phase is Phase.Stopping or Phase.Braking)
        {
            _readings.StopPressed = true;
            if (Phase == Phase.Stopping) Tick();
            else TickUntil(Phase.Braking);
        }

        Settle();
    }

    /// <summary>The tick.</summary>
    [Benchmark]
    public bool Tick()
    {
        _controller.Tick(_elapsedMicroseconds, _readings, _outputs);
        return _outputs.CloseLine;
    }

    // Elapsed time 0, so that no timer runs out however often it is called; the work is the same.
    private void Settle()
    {
        _elapsedMicroseconds = 0;
        Tick();
        if (_controller.Phase != Phase) throw new System.InvalidOperationException($"stands in {_controller.Phase}, not in {Phase}");
    }

    private void TickUntil(params Phase[] phases)
    {
        for (int i = 0; i < MostTicks && System.Array.IndexOf(phases, _controller.Phase) < 0; i++) Follow();
    }

    private void Follow()
    {
        Tick();
        _readings.LineClosed = _outputs.CloseLine;
        _readings.StagesClosed = _outputs.CloseStages;
        _readings.BrakeClosed = _outputs.CloseBrake;
        _readings.FieldClosed = _outputs.CloseField;
        float volts = _outputs.CloseLine ? 238 - 1.94f * _readings.SpeedRadPerSec : 0;
        int stage = System.Numerics.BitOperations.PopCount((uint)_outputs.CloseStages);
        _readings.ArmatureAmps = volts / BootCourse.Settings().StageOhms[stage];
    }
}
