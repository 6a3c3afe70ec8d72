using StarterCtl.Core;

namespace StarterCtl.Firmware;

/// <summary>Makes a sample of what one control period read, decided and commanded.</summary>
public sealed class TelemetrySampler
{
    private readonly TelemetryMessage _sample = new TelemetryMessage();

    /// <summary>Samples left out because the line was busy.</summary>
    public int DroppedSamples;

    /// <summary>Writes the sample.</summary>
    /// <param name="frame">Receives it.</param>
    /// <param name="timeMicroseconds">Time since the link was built.</param>
    /// <param name="controller">The controller behind its tick.</param>
    /// <param name="readings">What it was given.</param>
    /// <param name="outputs">What it commanded.</param>
    public void Write(Frame frame, int timeMicroseconds, Controller controller, Readings readings, Outputs outputs)
    {
        _sample.TimeMicroseconds = timeMicroseconds;
        _sample.DroppedSamples = DroppedSamples;
        _sample.Phase = controller.Phase;
        _sample.Stage = controller.Stage;
        _sample.Reason = controller.Why.Reason;
        _sample.Fault = controller.Fault.Id;
        _sample.Switches = Switches(controller.Estimate, readings, outputs);
        _sample.CloseStages = outputs.CloseStages;
        _sample.StagesClosed = readings.StagesClosed;
        _sample.SupplyVolts = readings.SupplyVolts;
        _sample.ArmatureAmps = readings.ArmatureAmps;
        _sample.SpeedRadPerSec = readings.SpeedRadPerSec;
        _sample.BackEmfVolts = controller.Estimate.BackEmfVolts;
        _sample.ResistiveBackEmfVolts = controller.Estimate.ResistiveBackEmfVolts;
        _sample.ReasonQuantity = controller.Why.Quantity;
        _sample.ReasonLimit = controller.Why.Limit;
        _sample.FieldAmps = readings.FieldAmps;
        _sample.Write(frame);
    }

    private static TelemetrySwitches Switches(Estimate estimate, Readings readings, Outputs outputs)
    {
        TelemetrySwitches switches = TelemetrySwitches.None;
        if (outputs.CloseLine) switches |= TelemetrySwitches.CloseLine;
        if (readings.LineClosed) switches |= TelemetrySwitches.LineClosed;
        if (outputs.CloseBrake) switches |= TelemetrySwitches.CloseBrake;
        if (readings.BrakeClosed) switches |= TelemetrySwitches.BrakeClosed;
        if (outputs.CloseField) switches |= TelemetrySwitches.CloseField;
        if (readings.FieldClosed) switches |= TelemetrySwitches.FieldClosed;
        if (readings.SpeedValid) switches |= TelemetrySwitches.SpeedValid;
        if (estimate.ResistiveValid) switches |= TelemetrySwitches.ResistiveValid;
        return switches;
    }
}
