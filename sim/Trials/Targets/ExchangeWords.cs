using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;

namespace StarterCtl.Trials.Targets;

/// <summary>Readings, commands and decisions to and from the messages of an exchange.</summary>
internal static class ExchangeWords
{
    /// <summary>Readings as they go to the board.</summary>
    public static ExchangeRequest Request(int elapsedMicroseconds, Readings readings) => new()
    {
        ElapsedMicroseconds = elapsedMicroseconds,
        SupplyVolts = readings.SupplyVolts,
        ArmatureAmps = readings.ArmatureAmps,
        SpeedRadPerSec = readings.SpeedRadPerSec,
        FieldAmps = readings.FieldAmps,
        ResistorCelsius = readings.ResistorCelsius,
        Permissives = readings.Permissives,
        StagesClosed = readings.StagesClosed,
        Switches = Bit(readings.LineClosed, ExchangeSwitches.LineClosed) | Bit(readings.BrakeClosed, ExchangeSwitches.BrakeClosed)
            | Bit(readings.FieldClosed, ExchangeSwitches.FieldClosed) | Bit(readings.SpeedValid, ExchangeSwitches.SpeedValid)
            | Bit(readings.StartPressed, ExchangeSwitches.StartPressed) | Bit(readings.StopPressed, ExchangeSwitches.StopPressed)
            | Bit(readings.ResetPressed, ExchangeSwitches.ResetPressed) | Bit(readings.EmergencyStop, ExchangeSwitches.EmergencyStop)
            | Bit(readings.Stale, ExchangeSwitches.Stale),
    };

    /// <summary>Puts what the board commands to the coils.</summary>
    public static void Put(ExchangeAnswer answer, Outputs coils)
    {
        coils.CloseLine = answer.Outputs.HasFlag(ExchangeOutputs.CloseLine);
        coils.CloseBrake = answer.Outputs.HasFlag(ExchangeOutputs.CloseBrake);
        coils.CloseField = answer.Outputs.HasFlag(ExchangeOutputs.CloseField);
        coils.CloseStages = answer.CloseStages;
    }

    /// <summary>Puts what the board decided into a sample.</summary>
    public static void Put(ExchangeAnswer answer, ref Sample sample)
    {
        sample.BackEmfVolts = answer.BackEmfVolts;
        sample.ResistiveBackEmfVolts = answer.Outputs.HasFlag(ExchangeOutputs.ResistiveValid) ? answer.ResistiveBackEmfVolts : float.NaN;
        sample.Phase = answer.Phase;
        sample.Stage = answer.Stage;
        sample.Reason = answer.Reason;
        sample.ReasonQuantity = answer.ReasonQuantity;
        sample.ReasonLimit = answer.ReasonLimit;
        sample.Fault = answer.Fault;
        sample.CloseLine = answer.Outputs.HasFlag(ExchangeOutputs.CloseLine);
        sample.CloseBrake = answer.Outputs.HasFlag(ExchangeOutputs.CloseBrake);
        sample.CloseField = answer.Outputs.HasFlag(ExchangeOutputs.CloseField);
        sample.CloseStages = answer.CloseStages;
        sample.ReadyLamp = answer.Outputs.HasFlag(ExchangeOutputs.ReadyLamp);
        sample.RunningLamp = answer.Outputs.HasFlag(ExchangeOutputs.RunningLamp);
        sample.TrippedLamp = answer.Outputs.HasFlag(ExchangeOutputs.TrippedLamp);
    }

    private static ExchangeSwitches Bit(bool isSet, ExchangeSwitches bit) => isSet ? bit : ExchangeSwitches.None;
}
