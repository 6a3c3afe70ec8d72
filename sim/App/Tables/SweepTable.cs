using System.Globalization;
using System.Linq;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.Sweeps.Sensitivity;
using StarterCtl.Sweeps.Summary;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Tables;

/// <summary>A sweep as people read it.</summary>
internal static class SweepTable
{
    /// <summary>Prints the summary.</summary>
    public static void Show(IAnsiConsole console, SweepJson sweep)
    {
        ShareEstimate failed = sweep.Failed;
        console.MarkupLineInterpolated($"[bold]{sweep.Sweep.Case}[/]: {failed.Of} starts, {sweep.Sweep.Inputs.Count} quantities differ, {sweep.Sweep.Method.ToString().ToLowerInvariant()}, seed {sweep.Sweep.Seed}");
        console.MarkupLineInterpolated($"{failed.Count} of them pass a limit: {Percent(failed.Share)}, with {Percent(sweep.Confidence)} confidence {Percent(failed.Low)} to {Percent(failed.High)}.");
        foreach ((string fault, long count) in sweep.Faults) console.MarkupLineInterpolated($"{count} trip: {fault}.");
        console.Write(Outcomes(sweep));
        console.Write(Worst(sweep));
        foreach (OutcomeSensitivity outcome in sweep.Sensitivity) SensitivityTable.Show(console, outcome);
        WorstRowJson first = sweep.Worst[0];
        console.MarkupLineInterpolated($"{first.Name} again, with its record: {first.Command}");
    }

    private static Table Outcomes(SweepJson sweep)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("outcome"));
        foreach (string heading in (string[])["least", .. sweep.Outcomes[0].Quantiles.Where(IsShown).Select(quantile => Percent(quantile.Part)), "most"]) table.AddColumn(Tables.Number(heading));
        foreach (OutcomeSummary outcome in sweep.Outcomes)
        {
            table.AddRow([Markup.Escape(outcome.Name), Value(outcome.Least), .. outcome.Quantiles.Where(IsShown).Select(quantile => Value(quantile.Value)), Value(outcome.Most)]);
        }

        return table;
    }

    private static Table Worst(SweepJson sweep)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("worst"));
        table.AddColumn(Tables.Number("row"));
        table.AddColumn(Tables.Number("value"));
        table.AddColumn(Tables.Word("verdict"));
        foreach (WorstRowJson worst in sweep.Worst) table.AddRow(worst.Name, worst.Row.ToString(CultureInfo.InvariantCulture), Value(worst.Value), worst.IsPassed ? "pass" : "fail");
        return table;
    }

    // A table of 80 columns has no room for what is better than usual.
    private static bool IsShown(QuantileEstimate quantile) => quantile.Part >= 0.5;

    private static string Value(double value) => double.IsInfinity(value) ? "never" : Text.Number(value);

    private static string Percent(double part) => $"{Text.Number(100 * part)} %";
}
