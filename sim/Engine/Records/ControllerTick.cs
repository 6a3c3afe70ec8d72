using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>A tick of the controller to and from a sample: whoever records and whoever replays goes by the same lines.</summary>
public static class ControllerTick
{
    /// <summary>Puts what the controller was given into a sample.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="elapsedMicroseconds">Time that the controller was told.</param>
    /// <param name="readings">Its readings.</param>
    public static void PutReadings(ref Sample sample, int elapsedMicroseconds, Readings readings)
    {
        sample.ElapsedMicroseconds = elapsedMicroseconds;
        sample.Stale = readings.Stale;
        sample.SupplyVolts = readings.SupplyVolts;
        sample.ArmatureAmps = readings.ArmatureAmps;
        sample.SpeedRadPerSec = readings.SpeedRadPerSec;
        sample.SpeedValid = readings.SpeedValid;
        sample.FieldAmps = readings.FieldAmps;
        sample.ResistorCelsius = readings.ResistorCelsius;
        sample.LineClosed = readings.LineClosed;
        sample.StagesClosed = readings.StagesClosed;
        sample.BrakeClosed = readings.BrakeClosed;
        sample.FieldClosed = readings.FieldClosed;
        sample.Permissives = readings.Permissives;
        sample.StartPressed = readings.StartPressed;
        sample.StopPressed = readings.StopPressed;
        sample.ResetPressed = readings.ResetPressed;
        sample.EmergencyStop = readings.EmergencyStop;
    }

    /// <summary>Puts what the controller made of it into a sample.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="controller">The controller behind its tick.</param>
    /// <param name="outputs">The outputs of that tick.</param>
    public static void PutDecisions(ref Sample sample, Controller controller, Outputs outputs)
    {
        Explanation why = controller.Why;
        Estimate estimate = controller.Estimate;
        sample.BackEmfVolts = estimate.BackEmfVolts;
        sample.ResistiveBackEmfVolts = estimate.ResistiveValid ? estimate.ResistiveBackEmfVolts : float.NaN;
        sample.Phase = controller.Phase;
        sample.Stage = controller.Stage;
        sample.Reason = why.Reason;
        sample.ReasonQuantity = why.Quantity;
        sample.ReasonLimit = why.Limit;
        sample.Fault = controller.Fault.Id;
        sample.CloseLine = outputs.CloseLine;
        sample.CloseStages = outputs.CloseStages;
        sample.CloseBrake = outputs.CloseBrake;
        sample.CloseField = outputs.CloseField;
        sample.ReadyLamp = outputs.ReadyLamp;
        sample.RunningLamp = outputs.RunningLamp;
        sample.TrippedLamp = outputs.TrippedLamp;
    }

    /// <summary>Gives a controller what a sample recorded.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="readings">Receives every reading.</param>
    public static void ReadInto(in Sample sample, Readings readings)
    {
        readings.Stale = sample.Stale;
        readings.SupplyVolts = sample.SupplyVolts;
        readings.ArmatureAmps = sample.ArmatureAmps;
        readings.SpeedRadPerSec = sample.SpeedRadPerSec;
        readings.SpeedValid = sample.SpeedValid;
        readings.FieldAmps = sample.FieldAmps;
        readings.ResistorCelsius = sample.ResistorCelsius;
        readings.LineClosed = sample.LineClosed;
        readings.StagesClosed = sample.StagesClosed;
        readings.BrakeClosed = sample.BrakeClosed;
        readings.FieldClosed = sample.FieldClosed;
        readings.Permissives = sample.Permissives;
        readings.StartPressed = sample.StartPressed;
        readings.StopPressed = sample.StopPressed;
        readings.ResetPressed = sample.ResetPressed;
        readings.EmergencyStop = sample.EmergencyStop;
    }
}
