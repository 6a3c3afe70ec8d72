namespace StarterCtl.Core;

/// <summary>
/// First-order image of a temperature rise: its level goes towards a target with one time constant. 1 is the limit.
/// </summary>
/// <remarks>
/// d(level)/dt = (target - level) / tau, the form of IEC 60255-149 with target = (I / Ith)^2. Targets are averaged over
/// a tenth of a second before a step is made, so that the size of the tick does not matter beyond that and single precision is
/// enough. The step's factor is the exponential's fraction to third order and stays below 1 for a step of any length.
/// </remarks>
public sealed class ThermalImage
{
    private const int StepMicroseconds = 100000;

    // A thousand times the current that reaches the limit; keeps every product finite.
    private const float MostTarget = 1000000f;

    private readonly float _perTimeConstant;
    private int _microseconds;
    private float _targetSeconds;

    /// <summary>Level now: 0 cold, 1 at the limit. Kept through a reset; a board may write it once after power-up.</summary>
    public float Level;

    /// <summary>Builds a cold image.</summary>
    /// <param name="timeConstantSeconds">Time constant, s, above 0.</param>
    public ThermalImage(float timeConstantSeconds)
    {
        _perTimeConstant = timeConstantSeconds > 0f ? 1f / timeConstantSeconds : 0f;
    }

    /// <summary>Goes on with a target.</summary>
    /// <param name="elapsedMicroseconds">Clamped time since the last tick.</param>
    /// <param name="target">Level that it would come to, 0 or more.</param>
    public void Advance(int elapsedMicroseconds, float target)
    {
        // A board's memory may be spoilt: what is no level counts as the limit.
        if (!(Level >= 0f && Level <= MostTarget)) Level = 1f;
        // Less than a step and a tick: it fits. At a ceiling the time would lack what the target's seconds have.
        _microseconds += elapsedMicroseconds;
        _targetSeconds += (target <= MostTarget ? target : MostTarget) * (elapsedMicroseconds * 0.000001f);
        if (_microseconds < StepMicroseconds) return;

        float seconds = _microseconds * 0.000001f;
        float ratio = seconds * _perTimeConstant;
        float rising = ratio * (1f + ratio * (0.5f + ratio * (1f / 6f)));
        Level += (_targetSeconds / seconds - Level) * (rising / (1f + rising));
        _microseconds = 0;
        _targetSeconds = 0f;
    }
}
