using System;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.App.Reporting.Sections;

/// <summary>What no calculation replaces.</summary>
internal static class CautionSection
{
    public static void Write(ReportPage page, StartStudy study)
    {
        page.BeginSection("cautions", "Read this first");
        page.Paragraph($"The figures in this report are calculated and simulated. They are no test of a real drive. Local codes apply, and a licensed electrician or engineer decides what may be built and switched on.");
        page.List(
        [
            $"<strong>The controller is not a safety device.</strong> Every contactor must be able to drop out without the software. Fit a hard-wired emergency stop and a hardware overcurrent device first.",
            $"<strong>A spinning machine is a generator.</strong> Its terminals are live after the line has opened.",
            $"<strong>A field winding stores energy.</strong> Opening it suddenly makes a high voltage. Give it a discharge path.",
            Runaway(StudyMachine.Kind(study)),
            $"<strong>A DC arc does not go out by itself.</strong> Use contactors, fuses and switches that are rated for DC at this voltage and inductance.",
            $"<strong>Starting resistors stay hot</strong> long after a start. They are rated for a few starts an hour, not for continuous current.",
        ]);
        page.EndSection();
    }

    private static FormattableString Runaway(MachineKind kind) => kind switch
    {
        MachineKind.Series => $"<strong>A series machine without load runs away.</strong> This is one. Never start it uncoupled and never let the load come off; couple it rigidly and fit an overspeed trip.",
        MachineKind.Shunt => $"<strong>Never open the shunt field under power.</strong> The flux collapses, and the armature takes a destructive current and runs away. No fuse and no switch of its own belongs in the field circuit of a running machine.",
        MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound => $"<strong>Never open the shunt field under power.</strong> What is left is a series machine: lightly loaded it runs away. No fuse and no switch of its own belongs in the field circuit of a running machine.",
        MachineKind.PermanentMagnet => $"<strong>Too much current weakens permanent magnets for good.</strong> The machine is then faster and weaker than its plate says. Stay below the current that its maker allows for the magnets.",
        _ => $"<strong>Never open the field under power.</strong> The flux collapses, and the armature takes a destructive current and runs away. A series machine runs away when it loses its load.",
    };
}
