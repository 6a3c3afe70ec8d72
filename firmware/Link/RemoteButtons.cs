using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// Buttons pressed over the link. They reach the controller as presses of one control period, beside the wired ones and by the
/// same inputs, and in no other way.
/// </summary>
public sealed class RemoteButtons
{
    private bool _start;
    private bool _stop;
    private bool _reset;

    /// <summary>Presses start on the next readings.</summary>
    public void PressStart() => _start = true;

    /// <summary>Presses stop on the next readings.</summary>
    public void PressStop() => _stop = true;

    /// <summary>Presses reset on the next readings.</summary>
    public void PressReset() => _reset = true;

    /// <summary>Adds what is pressed to the readings and lets go.</summary>
    public void AddTo(Readings readings)
    {
        readings.StartPressed |= _start;
        readings.StopPressed |= _stop;
        readings.ResetPressed |= _reset;
        Release();
    }

    /// <summary>Lets go of everything: a press must not wait for readings that come later.</summary>
    public void Release()
    {
        _start = false;
        _stop = false;
        _reset = false;
    }
}
