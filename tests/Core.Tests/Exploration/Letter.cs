using System.Globalization;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>The inputs of one tick.</summary>
internal sealed record Letter
{
    internal int ElapsedMicroseconds { get; init; }

    internal bool Start { get; init; }

    internal bool Stop { get; init; }

    internal bool Reset { get; init; }

    internal bool EmergencyStop { get; init; }

    internal bool Line { get; init; }

    internal int Stages { get; init; }

    internal float BackEmfVolts { get; init; }

    internal float ArmatureAmps { get; init; }

    internal float SupplyVolts { get; init; }

    internal bool SpeedValid { get; init; }

    internal void Fill(Readings readings)
    {
        readings.SupplyVolts = SupplyVolts;
        readings.ArmatureAmps = ArmatureAmps;
        readings.SpeedRadPerSec = BackEmfVolts / Alphabet.MachineConstant;
        readings.SpeedValid = SpeedValid;
        readings.LineClosed = Line;
        readings.StagesClosed = Stages;
        readings.StartPressed = Start;
        readings.StopPressed = Stop;
        readings.ResetPressed = Reset;
        readings.EmergencyStop = EmergencyStop;
    }

    public override string ToString()
    {
        string pressed = (Start ? " start" : "") + (Stop ? " stop" : "") + (Reset ? " reset" : "") + (EmergencyStop ? " e-stop" : "");
        string time = ElapsedMicroseconds < 0 ? "none" : ElapsedMicroseconds == Alphabet.TickMicroseconds ? "tick" : "huge";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{time} line {(Line ? 1 : 0)} stages {Stages} {BackEmfVolts} V {ArmatureAmps} A of {SupplyVolts} V{(SpeedValid ? "" : " speed bad")}{pressed}");
    }
}
