using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Since when every coil is off and every contact open, since when a coil is on, and when one was released last.</summary>
public sealed class CoilWatch
{
    /// <summary>Time with every coil off and every contact open until the board counts as at rest, microseconds.</summary>
    public const int RestMicroseconds = 1000000;

    /// <summary>Time with the same coils on until what is measured counts as steady, microseconds.</summary>
    public const int OnMicroseconds = 500000;

    /// <summary>Time from the release of a coil for which what is measured counts as the release's, microseconds.</summary>
    public const int ReleaseMicroseconds = 100000;

    private int _coils;
    private int _restFor;
    private int _sameFor;
    private int _sinceRelease = ReleaseMicroseconds;

    /// <summary>True once everything has been off and open for <see cref="RestMicroseconds"/>.</summary>
    public bool IsAtRest => _restFor >= RestMicroseconds;

    /// <summary>What a sample of this control period is a sample of.</summary>
    public NoiseSituation Situation =>
        _sinceRelease < ReleaseMicroseconds ? NoiseSituation.Release
        : IsAtRest ? NoiseSituation.Rest
        : _coils != 0 && _sameFor >= OnMicroseconds ? NoiseSituation.CoilsOn
        : NoiseSituation.None;

    /// <summary>Takes a control period over.</summary>
    /// <param name="elapsedMicroseconds">Time since the last call; any value is handled, negative counts as 0.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="outputs">What was commanded last, which is what these readings were made under.</param>
    public void Step(int elapsedMicroseconds, Readings readings, Outputs outputs)
    {
        elapsedMicroseconds = Elapsed.Clamp(elapsedMicroseconds);
        int coils = Bits(outputs.CloseLine, outputs.CloseBrake, outputs.CloseField) | (outputs.CloseStages << 3);
        int contacts = Bits(readings.LineClosed, readings.BrakeClosed, readings.FieldClosed) | (readings.StagesClosed << 3);
        bool isReleased = (_coils & ~coils) != 0;
        bool isSame = coils == _coils;
        _coils = coils;
        _sinceRelease = isReleased ? 0 : Elapsed.Add(_sinceRelease, elapsedMicroseconds);
        _sameFor = isSame ? Elapsed.Add(_sameFor, elapsedMicroseconds) : 0;
        _restFor = isSame && (coils | contacts) == 0 && !readings.Stale ? Elapsed.Add(_restFor, elapsedMicroseconds) : 0;
    }

    private static int Bits(bool line, bool brake, bool field) => (line ? 1 : 0) | (brake ? 2 : 0) | (field ? 4 : 0);
}
