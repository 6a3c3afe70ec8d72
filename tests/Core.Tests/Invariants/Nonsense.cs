namespace StarterCtl.Core.Tests.Invariants;

/// <summary>
/// Inputs of any kind, told by numbers: from an almost sound plant with a chattering button to pure noise. Contacts
/// mostly follow their coils, and the current mostly belongs to them, or no sequence would ever come far.
/// </summary>
internal sealed class Nonsense(Settings settings, int noisePercent)
{
    private static readonly float[] OddFloats =
    [
        float.NaN, float.PositiveInfinity, float.NegativeInfinity, float.MaxValue, float.Epsilon, -0f, 0f, -1f,
        1_000_001f, -1_000_001f, 1001f, -1001f, 499f, 501f, -51f, 199f, 201f,
    ];

    private static readonly int[] OddTimes = [0, -1, 1, int.MinValue, int.MaxValue, 99_999, 100_000, 1_000_000_000];

    private uint _number;
    private float _speed;
    private int _dip;
    private int _mood;

    internal int ElapsedMicroseconds { get; private set; }

    /// <summary>Makes the next tick's inputs from one number and from what the coils were told last.</summary>
    internal void Next(uint number, Readings readings, Outputs coils)
    {
        _number = number;
        ElapsedMicroseconds = Odd() ? OddTimes[Pick(OddTimes.Length)] : 1000;
        // Now and then the plant does something else for a while: jams, runs away, turns backwards, dips, loses its field.
        if (Pick(100) == 0) _mood = Pick(18);

        FollowCoils(readings, coils);
        MoveShaft(coils);
        Measure(readings);
        readings.StartPressed = Pick(8) == 0;
        readings.ResetPressed = Pick(8) == 0;
        readings.StopPressed = Pick(300) == 0 || Odd();
        readings.EmergencyStop = Pick(600) == 0 || Odd();
    }

    private void FollowCoils(Readings readings, Outputs coils)
    {
        if (Pick(4) != 0) readings.LineClosed = coils.CloseLine;
        if (Pick(4) != 0) readings.StagesClosed = coils.CloseStages;
        if (Pick(4) != 0) readings.BrakeClosed = coils.CloseBrake && _mood != 1;
        if (Pick(4) != 0) readings.FieldClosed = coils.CloseField;
        if (Odd()) readings.LineClosed = Pick(2) == 0;
        if (Odd()) readings.StagesClosed = Pick(2) == 0 ? Pick(1 << (settings.StageCount + 1)) : (int)_number;
        if (Odd()) readings.BrakeClosed = Pick(2) == 0;
        if (Odd()) readings.FieldClosed = Pick(2) == 0;
    }

    private void MoveShaft(Outputs coils)
    {
        _speed = coils.CloseLine ? _speed + Pick(20) * 0.1f : coils.CloseBrake ? _speed * 0.8f : _speed * 0.98f;
        if (_speed > 100f) _speed = 96f;
        if (_mood == 2) _speed = 0f;
        if (_mood == 3 && Pick(10) == 0) _speed = 150f;
        if (_mood == 4 && Pick(10) == 0) _speed = -20f;
        _dip = _mood is 5 or 14 ? 100 : _mood == 6 ? -60 : 0;
        if (_mood == 14) _speed *= 0.9f;
        if (_mood == 15) _speed = 130f;
    }

    private void Measure(Readings readings)
    {
        readings.Stale = Odd() && Pick(4) == 0;
        readings.SupplyVolts = Odd() ? OddFloats[Pick(OddFloats.Length)] : 240f + Pick(20) - _dip;
        readings.SpeedRadPerSec = Odd() ? OddFloats[Pick(OddFloats.Length)] : _speed;
        readings.SpeedValid = !Odd() && (_mood != 7 || Pick(10) == 0);
        readings.FieldAmps = Odd() ? OddFloats[Pick(OddFloats.Length)] : _mood == 8 && Pick(4) == 0 ? 0.2f : 2f;
        readings.ResistorCelsius = Odd() ? OddFloats[Pick(OddFloats.Length)] : _mood == 9 && Pick(30) == 0 ? 400f : 80f;
        readings.Permissives = Odd() || (_mood == 10 && Pick(4) != 0) ? Pick(8) : -1;
        readings.ArmatureAmps = Odd() ? OddFloats[Pick(OddFloats.Length)] : _mood == 11 ? Pick(900) - 100f : Amps(readings);
    }

    // What the contacts let flow, as far as they make sense.
    private float Amps(Readings readings)
    {
        int stages = 0;
        while (stages < settings.StageCount && (readings.StagesClosed & (1 << stages)) != 0) stages++;
        float volts = 2.5f * _speed;
        float drift = _mood == 12 ? 0.6f : 1f;
        if (readings.LineClosed || _mood == 13) return (readings.SupplyVolts - volts) / settings.StageOhms[stages] * drift;
        return readings.BrakeClosed && settings.BrakeFitted ? -volts / settings.BrakeOhms : 0f;
    }

    private bool Odd() => Pick(1000) < noisePercent * 10;

    private int Pick(int count)
    {
        // A linear congruential generator; its high bits are the good ones.
        _number = unchecked(_number * 1664525u + 1013904223u);
        return (int)((_number >> 8) % (uint)count);
    }
}
