using System;
using StarterCtl.Core;

namespace StarterCtl.App.Tests.HardwareNotes;

/// <summary>A panel on its first power-up: contactors move 40 ms after their coils, the shaft stands, and one thing is as a step wants it.</summary>
/// <param name="change">What the step makes of sound readings, on every tick.</param>
internal sealed class DeadPanel(Action<Readings> change)
{
    private const int PeriodMicroseconds = 1000;
    private const int TravelMicroseconds = 40_000;
    private const int StartMicroseconds = 500_000;
    private const int EndMicroseconds = 6_000_000;

    private readonly Readings _readings = new();
    private int _lineMicroseconds;

    public Controller Controller { get; } = new(ShippedDesigns.Prepared("line-shaft.toml").Settings);

    public Outputs Outputs { get; } = new();

    /// <summary>Start is pressed half a second after power came on.</summary>
    public bool IsStarted { get; init; }

    /// <summary>The stop chain is open at first; then it closes and reset is pressed.</summary>
    public bool IsReset { get; init; }

    public bool LineFollows { get; init; } = true;

    /// <summary>When the stop chain opens, s after start; infinite where it does not.</summary>
    public double ChainOpensSeconds { get; init; } = double.PositiveInfinity;

    /// <summary>When a fault was latched: since power came on, or start was pressed, or the chain opened, whichever came last; s.</summary>
    public double TrippedSeconds { get; private set; } = double.NaN;

    public void Run()
    {
        for (int now = 0; now < EndMicroseconds; now += PeriodMicroseconds)
        {
            double sinceStart = (now - StartMicroseconds) / 1e6;
            Read(now, sinceStart);
            Controller.Tick(PeriodMicroseconds, _readings, Outputs);
            _lineMicroseconds = Outputs.CloseLine && LineFollows ? _lineMicroseconds + PeriodMicroseconds : 0;
            if (!Controller.Fault.IsLatched) TrippedSeconds = double.NaN;
            else if (double.IsNaN(TrippedSeconds)) TrippedSeconds = now / 1e6 - (sinceStart >= ChainOpensSeconds ? 0.5 + ChainOpensSeconds : IsStarted ? 0.5 : 0);
        }
    }

    private void Read(int now, double sinceStart)
    {
        _readings.SupplyVolts = 220;
        _readings.SpeedValid = true;
        _readings.LineClosed = _lineMicroseconds > TravelMicroseconds;
        _readings.StagesClosed = 0;
        _readings.EmergencyStop = (IsReset && now < 100_000) || sinceStart >= ChainOpensSeconds;
        _readings.ResetPressed = IsReset && now is > 200_000 and < 300_000;
        _readings.StartPressed = IsStarted && sinceStart is >= 0 and < 0.2;
        change(_readings);
    }
}
