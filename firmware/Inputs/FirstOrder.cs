using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// First-order filter: what rises or falls steadily comes later by the time constant, whatever the control period; a step is
/// there to 63 % after about the time constant and to 95 % after three.
/// </summary>
/// <remarks>Backward Euler of T dy/dt = x - y, which is stable at any period.</remarks>
public sealed class FirstOrder
{
    private readonly float _timeConstantMicroseconds;
    private float _output;
    private bool _isFilled;

    /// <summary>Builds the filter.</summary>
    /// <param name="timeConstantMicroseconds">Time constant, microseconds; 0 or less passes everything at once.</param>
    public FirstOrder(int timeConstantMicroseconds)
    {
        _timeConstantMicroseconds = timeConstantMicroseconds;
    }

    /// <summary>Takes a number in. The first one after <see cref="Restart"/> passes as it is.</summary>
    /// <param name="input">A number.</param>
    /// <param name="elapsedMicroseconds">Time since the last one; negative counts as 0.</param>
    public float Next(float input, int elapsedMicroseconds)
    {
        float elapsed = Elapsed.Clamp(elapsedMicroseconds);
        if (!_isFilled || !(_timeConstantMicroseconds > 0f)) _output = input;
        else _output += (input - _output) * (elapsed / (_timeConstantMicroseconds + elapsed));
        _isFilled = true;
        return _output;
    }

    /// <summary>Forgets what was.</summary>
    public void Restart() => _isFilled = false;
}
