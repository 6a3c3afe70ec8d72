namespace StarterCtl.App.Reporting.Sections;

/// <summary>What no calculation replaces.</summary>
internal static class CautionSection
{
    public static void Write(ReportPage page)
    {
        page.BeginSection("cautions", "Read this first");
        page.Paragraph($"The figures in this report are calculated and simulated. They are no test of a real drive. Local codes apply, and a licensed electrician or engineer decides what may be built and switched on.");
        page.List(
        [
            $"<strong>The controller is not a safety device.</strong> Every contactor must be able to drop out without the software. Fit a hard-wired emergency stop and a hardware overcurrent device first.",
            $"<strong>A spinning machine is a generator.</strong> Its terminals are live after the line has opened.",
            $"<strong>A field winding stores energy.</strong> Opening it suddenly makes a high voltage. Give it a discharge path.",
            $"<strong>A lost field makes a shunt machine run away.</strong> A series machine runs away when it loses its load.",
            $"<strong>A DC arc does not go out by itself.</strong> Use contactors, fuses and switches that are rated for DC at this voltage and inductance.",
            $"<strong>Starting resistors stay hot</strong> long after a start. They are rated for a few starts an hour, not for continuous current.",
        ]);
        page.EndSection();
    }
}
