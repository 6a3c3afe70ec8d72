using System;
using System.Globalization;
using Spectre.Console;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sampling;
using StarterCtl.Sweeps.Sensitivity;

namespace StarterCtl.App.Tables;

/// <summary>What drives an outcome, as people read it.</summary>
internal static class SensitivityTable
{
    private const int LongestBar = 10;

    /// <summary>Prints the inputs of one outcome, the one that matters most first.</summary>
    public static void Show(IAnsiConsole console, OutcomeSensitivity outcome)
    {
        Tables.Heading(console, $"What drives {(outcome.Outcome == SweepColumns.Passed ? "whether a start passes" : outcome.Outcome)}, by share of its variance ({outcome.Points} points)");
        if (outcome.PointsWithoutValue > 0)
        {
            console.MarkupLineInterpolated($"{outcome.PointsWithoutValue} more points have a start without this value: the shares say nothing about such starts.");
        }

        if (outcome.Inputs.Count == 0)
        {
            console.WriteLine(outcome.Points < SensitivitySampling.LeastPoints ? $"Too few points: at least {SensitivitySampling.LeastPoints} are needed." : "It does not vary.");
            return;
        }

        console.Write(Inputs(outcome));
    }

    private static Table Inputs(OutcomeSensitivity outcome)
    {
        Table table = Tables.New();
        table.AddColumn(Tables.Word("quantity"));
        table.AddColumn(Tables.Number("alone"));
        table.AddColumn(Tables.Number("total"));
        table.AddColumn(Tables.Number("95 %"));
        table.AddColumn(Tables.Word(""));
        foreach (InputSensitivity input in outcome.Inputs)
        {
            string bar = new('█', (int)Math.Round(LongestBar * Math.Clamp(input.Total.Value, 0, 1)));
            table.AddRow(Markup.Escape(input.Input.Split(" [")[0]), Share(input.FirstOrder.Value), Share(input.Total.Value), $"{Share(input.Total.Low)} to {Share(input.Total.High)}", bar);
        }

        return table;
    }

    // Two digits are all that the bounds bear.
    private static string Share(double share)
    {
        string written = share.ToString("0.00", CultureInfo.InvariantCulture);
        return written == "-0.00" ? "0.00" : written;
    }
}
