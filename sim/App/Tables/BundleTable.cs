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

        if (manifest.ByTheClock) console.MarkupLineInterpolated($"  none  replay: by the clock the board's ticks are its own, and the rows of the record those of the machine");
        string without = manifest.ByTheClock ? ", without a replay" : "";
        console.MarkupLineInterpolated($"[bold]Verified: {(verdict.Passed ? $"yes{without}" : "no")}[/]");
    }
}
