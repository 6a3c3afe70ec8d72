using Spectre.Console;
using StarterCtl.Engine.Runs;
using StarterCtl.Trials.Bundles;

namespace StarterCtl.App.Tables;

/// <summary>A bundle's check as people read it.</summary>
internal static class BundleTable
{
    /// <summary>Prints every check and what the bundle's own verdict was.</summary>
    public static void Show(IAnsiConsole console, BundleManifest manifest, Verdict verdict)
    {
        console.MarkupLineInterpolated($"[bold]{manifest.Planned.Trial}, attempt {manifest.Attempt}, against the {manifest.Target}: {manifest.Verdict}[/]");
        foreach (LimitCheck check in verdict.Checks)
        {
            if (check.Passed) console.MarkupLineInterpolated($"  pass  {check.Name}: {check.Seen}");
            else console.MarkupLineInterpolated($"  FAIL  {check.Name}: {check.Seen}, the bundle says {check.Limit}");
        }

        console.MarkupLineInterpolated($"[bold]Verified: {(verdict.Passed ? "yes" : "no")}[/]");
    }
}
