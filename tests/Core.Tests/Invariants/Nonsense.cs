namespace StarterCtl.Core.Tests.Invariants;

/// <summary>
/// Inputs of any kind, told by numbers: from an almost sound plant with a chattering button to pure noise. Contacts
/// mostly follow their coils, or no sequence would ever come far.
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

    internal int ElapsedMicroseconds { get; private set; }

    /// <summary>Makes the next tick's inputs from one number and from what the coils were told last.</summary>
    internal void Next(uint number, Readings readings, Outputs coils)
    {
        _number = number;
        ElapsedMicroseconds = Odd() ? OddTimes[Pick(OddTimes.Length)] : 1000;

        _speed = coils.CloseLine ? _speed + Pick(20) * 0.1f : _speed * 0.9f;
        if (_speed > 100f) _speed = 96f;
        readings.SupplyVolts = Odd() ? OddFloats[Pick(OddFloats.Length)] : 240f + Pick(20);
        readings.ArmatureAmps = Odd() ? OddFloats[Pick(OddFloats.Length)] : Pick(900) - 100f;
        readings.SpeedRadPerSec = Odd() ? OddFloats[Pick(OddFloats.Length)] : _speed;
        readings.SpeedValid = !Odd();

        if (Pick(4) != 0) readings.LineClosed = coils.CloseLine;
        if (Pick(4) != 0) readings.StagesClosed = coils.CloseStages;
        if (Odd()) readings.LineClosed = Pick(2) == 0;
        if (Odd()) readings.StagesClosed = Pick(2) == 0 ? Pick(1 << (settings.StageCount + 1)) : (int)_number;

        readings.StartPressed = Pick(8) == 0;
        readings.ResetPressed = Pick(8) == 0;
        readings.StopPressed = Pick(300) == 0 || Odd();
        readings.EmergencyStop = Pick(600) == 0 || Odd();
    }

    private bool Odd() => Pick(1000) < noisePercent * 10;

    private int Pick(int count)
    {
        // A linear congruential generator; its high bits are the good ones.
        _number = unchecked(_number * 1664525u + 1013904223u);
        return (int)((_number >> 8) % (uint)count);
    }
}
