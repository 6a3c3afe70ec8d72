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

    internal bool Brake { get; init; }

    internal bool Field { get; init; }

    internal float BackEmfVolts { get; init; }

    internal float ArmatureAmps { get; init; }

    internal float SupplyVolts { get; init; } = Alphabet.SupplyVolts;

    internal bool SpeedValid { get; init; } = true;

    internal float FieldAmps { get; init; }

    internal float ResistorCelsius { get; init; }

    internal bool Stale { get; init; }

    internal int Permissives { get; init; } = -1;

    internal void Fill(Readings readings)
    {
        readings.Stale = Stale;
        readings.SupplyVolts = SupplyVolts;
        readings.ArmatureAmps = ArmatureAmps;
        readings.SpeedRadPerSec = BackEmfVolts / Alphabet.MachineConstant;
        readings.SpeedValid = SpeedValid;
        readings.LineClosed = Line;
        readings.StagesClosed = Stages;
        readings.BrakeClosed = Brake;
        readings.FieldClosed = Field;
        readings.FieldAmps = FieldAmps;
        readings.ResistorCelsius = ResistorCelsius;
        readings.Permissives = Permissives;
        readings.StartPressed = Start;
        readings.StopPressed = Stop;
        readings.ResetPressed = Reset;
        readings.EmergencyStop = EmergencyStop;
    }

    public override string ToString()
    {
        string pressed = (Start ? " start" : "") + (Stop ? " stop" : "") + (Reset ? " reset" : "") + (EmergencyStop ? " e-stop" : "");
        string more = (Brake ? " brake" : "") + (Field ? " field" : "") + (Permissives == -1 ? "" : " not permitted") + (Stale ? " stale" : "");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{ElapsedMicroseconds * 1e-6:G4} s line {(Line ? 1 : 0)} stages {Stages}{more} {BackEmfVolts} V {ArmatureAmps} A of {SupplyVolts} V field {FieldAmps} A{(SpeedValid ? "" : " speed bad")}{pressed}");
    }
}
