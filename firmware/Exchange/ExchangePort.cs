using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>
/// The board's end of an exchange: readings of a machine that is simulated at the desk come in over the link, a controller of its own
/// decides on them, its commands go back. While it is on, no real input is read and no real coil is energised.
/// </summary>
public sealed class ExchangePort
{
    /// <summary>Shortest silence that may be asked for, microseconds.</summary>
    public const int ShortestSilenceMicroseconds = 20000;

    /// <summary>Longest silence that may be asked for, microseconds.</summary>
    public const int LongestSilenceMicroseconds = 60000000;

    private const int MostTicks = 65535;

    private readonly ExchangeBegin _begin = new ExchangeBegin();
    private readonly ExchangeRequest _request = new ExchangeRequest();
    private readonly ExchangeAnswer _answer = new ExchangeAnswer();
    private int _silentMicroseconds;
    private int _sequence;
    private int _ticks;
    private bool _hasReadings;
    private bool _isTickDue;
    private bool _isAnswerDue;

    /// <summary>True while the simulated machine stands in for the real one.</summary>
    public bool IsOn { get; private set; }

    /// <summary>Who keeps the time.</summary>
    public ExchangeMode Mode => _begin.Mode;

    /// <summary>Begins, or begins anew.</summary>
    /// <param name="request">The message.</param>
    /// <param name="phase">Phase of the controller that runs: what is not at rest, or has something to remember, is not left.</param>
    public LinkReason Begin(Frame request, Phase phase)
    {
        if (!IsOn && phase != Phase.Ready && phase != Phase.NotSetUp) return LinkReason.NotWhileRunning;
        _begin.Read(request);
        bool isKnown = _begin.Mode == ExchangeMode.Lockstep || _begin.Mode == ExchangeMode.RealTime;
        bool isBounded = _begin.SilenceMicroseconds >= ShortestSilenceMicroseconds && _begin.SilenceMicroseconds <= LongestSilenceMicroseconds;
        IsOn = isKnown && isBounded;
        if (!IsOn) return LinkReason.OutOfRange;
        _silentMicroseconds = 0;
        _ticks = 0;
        _hasReadings = false;
        _isTickDue = false;
        _isAnswerDue = false;
        HasBegun = true;
        return LinkReason.Done;
    }

    /// <summary>True from each beginning until it is taken notice of: the controller is then built anew.</summary>
    public bool HasBegun { get; set; }

    /// <summary>Ends.</summary>
    public LinkReason End()
    {
        IsOn = false;
        return LinkReason.Done;
    }

    /// <summary>Takes readings in, which are answered behind the next tick.</summary>
    public LinkReason Take(Frame request)
    {
        if (!IsOn) return LinkReason.NotExchanging;
        _request.Read(request);
        _sequence = request.Sequence;
        _silentMicroseconds = 0;
        _hasReadings = true;
        _isTickDue = true;
        _isAnswerDue = true;
        return LinkReason.Done;
    }

    /// <summary>Lets time pass; too long a silence ends the exchange.</summary>
    public void Wait(int elapsedMicroseconds)
    {
        _silentMicroseconds = Elapsed.Add(_silentMicroseconds, Elapsed.Clamp(elapsedMicroseconds));
        if (_silentMicroseconds >= _begin.SilenceMicroseconds) IsOn = false;
    }

    /// <summary>How long the controller's period was that ends now.</summary>
    /// <param name="elapsedMicroseconds">Time since the last period of the board.</param>
    public int ToldMicroseconds(int elapsedMicroseconds) => Mode == ExchangeMode.Lockstep ? _request.ElapsedMicroseconds : elapsedMicroseconds;

    /// <summary>Whether the controller is to tick now: not before the first readings have come. Asked once in a period of the board.</summary>
    public bool TakeTick()
    {
        if (!_hasReadings || (Mode == ExchangeMode.Lockstep && !_isTickDue)) return false;
        _isTickDue = false;
        if (_ticks < MostTicks) _ticks++;
        return true;
    }

    /// <summary>The readings that came last.</summary>
    public void Show(Readings readings)
    {
        readings.Stale = Is(ExchangeSwitches.Stale);
        readings.SupplyVolts = _request.SupplyVolts;
        readings.ArmatureAmps = _request.ArmatureAmps;
        readings.SpeedRadPerSec = _request.SpeedRadPerSec;
        readings.SpeedValid = Is(ExchangeSwitches.SpeedValid);
        readings.FieldAmps = _request.FieldAmps;
        readings.ResistorCelsius = _request.ResistorCelsius;
        readings.LineClosed = Is(ExchangeSwitches.LineClosed);
        readings.StagesClosed = _request.StagesClosed;
        readings.BrakeClosed = Is(ExchangeSwitches.BrakeClosed);
        readings.FieldClosed = Is(ExchangeSwitches.FieldClosed);
        readings.Permissives = _request.Permissives;
        readings.StartPressed = Is(ExchangeSwitches.StartPressed);
        readings.StopPressed = Is(ExchangeSwitches.StopPressed);
        readings.ResetPressed = Is(ExchangeSwitches.ResetPressed);
        readings.EmergencyStop = Is(ExchangeSwitches.EmergencyStop);
    }

    /// <summary>Answers the last exchange if that is still to be done.</summary>
    /// <param name="frame">Receives the answer; left alone where there is nothing to answer.</param>
    /// <param name="controller">The controller behind its tick.</param>
    /// <param name="outputs">What it commanded.</param>
    public void Answer(Frame frame, Controller controller, Outputs outputs)
    {
        if (!_isAnswerDue) return;
        _isAnswerDue = false;
        _answer.RequestSequence = _sequence;
        _answer.Phase = controller.Phase;
        _answer.Stage = controller.Stage;
        _answer.Reason = controller.Why.Reason;
        _answer.Fault = controller.Fault.Id;
        _answer.Outputs = Of(outputs, controller.Estimate);
        _answer.CloseStages = outputs.CloseStages;
        _answer.Ticks = _ticks;
        _answer.BackEmfVolts = controller.Estimate.BackEmfVolts;
        _answer.ResistiveBackEmfVolts = controller.Estimate.ResistiveBackEmfVolts;
        _answer.ReasonQuantity = controller.Why.Quantity;
        _answer.ReasonLimit = controller.Why.Limit;
        _answer.Write(frame);
        _ticks = 0;
    }

    private bool Is(ExchangeSwitches bit) => (_request.Switches & bit) != 0;

    private static ExchangeOutputs Of(Outputs outputs, Estimate estimate)
    {
        ExchangeOutputs bits = ExchangeOutputs.None;
        if (outputs.CloseLine) bits |= ExchangeOutputs.CloseLine;
        if (outputs.CloseBrake) bits |= ExchangeOutputs.CloseBrake;
        if (outputs.CloseField) bits |= ExchangeOutputs.CloseField;
        if (outputs.ReadyLamp) bits |= ExchangeOutputs.ReadyLamp;
        if (outputs.RunningLamp) bits |= ExchangeOutputs.RunningLamp;
        if (outputs.TrippedLamp) bits |= ExchangeOutputs.TrippedLamp;
        if (estimate.ResistiveValid) bits |= ExchangeOutputs.ResistiveValid;
        return bits;
    }
}
