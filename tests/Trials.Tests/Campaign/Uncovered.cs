using System.Collections.Generic;
using StarterCtl.Core;

namespace StarterCtl.Trials.Tests.Campaign;

/// <summary>Why a fault has no trial in some phase. A fault without a row here has one in every phase.</summary>
internal static class Uncovered
{
    private const string LineIsOpen = "stopped: the line is open, and a trip has nothing more to switch off";

    public static readonly IReadOnlyDictionary<FaultId, string> Reasons = new Dictionary<FaultId, string>
    {
        [FaultId.EmergencyStop] = LineIsOpen,
        [FaultId.SettingsInvalid] = "a trial with such settings is refused before it runs",
        [FaultId.ReadingInvalid] = LineIsOpen,
        [FaultId.Overcurrent] = LineIsOpen,
        [FaultId.FieldLost] = "only the lathe has a wound field of its own; stopped: watched only while the line is commanded",
        [FaultId.Overspeed] = "in a start the stages are out before the shaft is that fast; " + LineIsOpen,
        [FaultId.CurrentWhileOpen] = "watched only while every contact says open: that is when a stop has opened them",
        [FaultId.SectionDrifted] = "mid-start on lathe and crane the same gain hides the step and reads as a contact that did not close; running and stopped: nothing closes",
        [FaultId.SpeedSignalLost] = LineIsOpen,
        [FaultId.BackEmfDisagreement] = "stopped: the line is open and volts and amperes say nothing of the back-EMF",
        [FaultId.ReverseRotation] = "mid-start and running: the current passes its trip before the shaft has come to rest; stopped: watched only with the line closed",
        [FaultId.Stalled] = "mid-start and running: a shaft that jams there trips by its current, see `jammed`; stopped: no current flows",
        [FaultId.Overload] = "stopped: no current heats the motor",
        [FaultId.ResistorTooHot] = LineIsOpen,
        [FaultId.SupplyHigh] = LineIsOpen,
        [FaultId.SupplyLow] = LineIsOpen,
        [FaultId.PermissiveLost] = "stopped: nothing needs a permissive any more",
        [FaultId.LoopLate] = "the simulator and a board in lockstep have no period that is late; the core's and the firmware's own tests have",
        [FaultId.NoField] = "only the field contactor's machine builds its field before the line closes, so there is no later phase",
        [FaultId.BrakeDidNotFinish] = "watched only while stopping and braking; the crane has no brake",
        [FaultId.StageTookTooLong] = "running and stopped: no stage is in effect",
        [FaultId.SequenceIncomplete] = "running and stopped: the start is over",
    };
}
