using System.Globalization;
using StarterCtl.Core;
using StarterCtl.Firmware;

namespace StarterCtl.Link;

/// <summary>The lock at power-up as a board tells it.</summary>
/// <param name="Problem">Why it is locked; none once it is open.</param>
/// <param name="Value">What was found, in the problem's unit.</param>
/// <param name="Wiring">Why the wiring is refused.</param>
/// <param name="Role">The role that it is about.</param>
/// <param name="OtherRole">The other role on the same pin.</param>
/// <param name="WiringValue">What was found of the wiring.</param>
/// <param name="WiringLimit">What it is held against.</param>
public sealed record BoardLock(
    PowerUpProblem Problem, float Value, BoardProblem Wiring, PinRole Role, PinRole OtherRole, float WiringValue, float WiringLimit)
{
    /// <summary>True once the controller may run.</summary>
    public bool IsOpen => Problem == PowerUpProblem.None;

    /// <summary>The reason in words, with what was found.</summary>
    public string Sentence => Problem switch
    {
        PowerUpProblem.None => "the controller runs",
        PowerUpProblem.Proving => $"everything must stay in order for another {Number(Value)} s",
        PowerUpProblem.BootCheckFailed => "the controller does something else on this board than at the desk: the firmware is damaged or was built wrongly",
        PowerUpProblem.SettingsUnsound => $"the setting {(SettingId)(int)Value} failed its check",
        PowerUpProblem.ChecksumWrong => "the settings are not those that were kept",
        PowerUpProblem.WiringRefused => $"the wiring is refused: {WiringSentence}",
        PowerUpProblem.NotRead => "the inputs could not be read",
        PowerUpProblem.CoilOn => $"the coil of {(PinRole)(int)Value} is energised",
        PowerUpProblem.ReadingUnusable => $"the reading of {(Channel)(int)Value} is not a number: wire open or shorted",
        PowerUpProblem.LineNotOpen => "the line contactor is not proven open",
        PowerUpProblem.StageNotOpen => $"the contactor of stage {Number(Value)} is not proven open",
        PowerUpProblem.BrakeNotOpen => "the brake contactor is not proven open",
        PowerUpProblem.FieldNotOpen => "the field contactor is not proven open",
        PowerUpProblem.CurrentFlows => $"{Number(Value)} A flow in the armature",
        PowerUpProblem.SpeedUnknown => "the speed is not known",
        PowerUpProblem.ShaftTurns => $"the shaft turns at {Number(Value)} rad/s, and a turning shaft may not be started",
        _ => $"reason {(int)Problem}, which this program does not know",
    };

    private string WiringSentence => Wiring switch
    {
        BoardProblem.PinUsedTwice => $"{Role} and {OtherRole} share pin {Number(WiringValue)}",
        BoardProblem.PinMissing => $"{Role} has no pin",
        BoardProblem.GainUnusable => $"{Role} has a gain of {Number(WiringValue)}",
        BoardProblem.CountsCrossed => $"{Role} has a least count of {Number(WiringValue)} and a largest of {Number(WiringLimit)}",
        BoardProblem.MedianUnknown => $"{Role} has a median of {Number(WiringValue)} samples; allowed: 1, 3 or 5",
        BoardProblem.RangeTooSmall => $"{Role} ends at {Number(WiringValue)} and must show {Number(WiringLimit)}",
        BoardProblem.NegativeRangeTooSmall => $"{Role} begins at {Number(WiringValue)} and must show {Number(WiringLimit)}",
        BoardProblem.TooManyEdges => $"the fastest shaft makes {Number(WiringValue)} edges a second and the board counts {Number(WiringLimit)}",
        BoardProblem.PulsesUnusable => $"a number that the speed of {Role} is worked out with is {Number(WiringValue)}; allowed: above 0",
        BoardProblem.NoZeroCurrent => $"{Role} needs the setting ZeroAmps to prove standstill; in a case, set sensors.zero-current",
        BoardProblem.DebounceTooLong => $"contacts are debounced for {Number(WiringValue)} s and the controller waits {Number(WiringLimit)} s for them",
        BoardProblem.PeriodTooLong => $"the control period, lateness included, is {Number(WiringValue)} s; allowed: above 0, up to {Number(WiringLimit)} s",
        BoardProblem.NegativeTime => $"a debounce, filter or lateness time is {Number(WiringValue)} s",
        BoardProblem.LeastSpeedTooSmall => $"the least speed that the tacho is believed is {Number(WiringValue)} rad/s and a count makes {Number(WiringLimit)} rad/s",
        _ => $"reason {(int)Wiring}, which this program does not know",
    };

    /// <summary>A wiring that is refused, as the desk finds it by the board's own check.</summary>
    public static BoardLock Of(BoardCheck wiring) => new(
        wiring.Problem == BoardProblem.None ? PowerUpProblem.None : PowerUpProblem.WiringRefused,
        (int)wiring.Problem, wiring.Problem, wiring.Role, wiring.OtherRole, wiring.Value, wiring.Limit);

    internal static BoardLock Of(LockAnswer answer) => new(
        answer.Problem, answer.Value, answer.Wiring, answer.Role, answer.OtherRole, answer.WiringValue, answer.WiringLimit);

    private static string Number(float value) => value.ToString("G5", CultureInfo.InvariantCulture);
}
