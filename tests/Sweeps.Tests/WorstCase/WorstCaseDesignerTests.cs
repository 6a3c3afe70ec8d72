using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Sweeps.WorstCase;
using Xunit;

namespace StarterCtl.Sweeps.Tests.WorstCase;

public sealed class WorstCaseDesignerTests
{
    private static readonly string[] Widths = ["0.5 %", "1 %", "2 %", "4 %"];

    private static readonly WorstCaseRequest Few = new() { Starts = 64 };

    [Fact]
    public void Without_anything_that_matters_it_is_the_geometric_grading_of_the_books()
    {
        // 350 A at the last moment of each stage, 250 V, 0.05 ohm, 3 stages: I1^4 = I2^3 V / Ra (Theraja's equal steps; from memory).
        double peak = Math.Pow(Math.Pow(350, 3) * 250 / 0.05, 0.25);
        WorstCaseChoice choice = Choose("load.inertia = \"1 kg m2 to 2 kg m2\"");
        Assert.Equal(680.4, peak, 0.1);
        Assert.Equal(peak, choice.Chosen.PeakAmps, 0.001 * peak);
        Assert.Empty(choice.Decisive);
        Assert.Equal(1, choice.Corners);
        double first = 250 / peak, ratio = 350 / peak;
        Assert.Equal([first * (1 - ratio), first * ratio * (1 - ratio), first * ratio * ratio - 0.05], Sections(choice), Close(0.002));
        Assert.All(choice.Designed.Design.Stages, stage => Assert.Equal(250 - 350 * stage.TotalOhms, stage.CutoutVolts, 0.2));
    }

    [Fact]
    public void A_supply_that_may_be_a_tenth_higher_raises_the_peak_by_its_fourth_root()
    {
        // The first section must bear the highest supply; behind it the controller measures the supply, so that it has no further part in it.
        double peak = Math.Pow(Math.Pow(350, 3) * 275 / 0.05, 0.25);
        WorstCaseChoice choice = Choose("supply.voltage = \"10 %\"");
        Assert.Equal(peak, choice.Chosen.PeakAmps, 0.001 * peak);
        Assert.Equal(["supply.voltage"], choice.Decisive);
        Assert.Equal(275 / peak, choice.Designed.Design.Stages[0].TotalOhms, 0.002);
    }

    [Fact]
    public void Sections_that_may_be_five_percent_off_cost_what_the_closed_form_says()
    {
        // Stage by stage: the current before is 350 A through the largest total, or the threshold has it so; behind it lies the least.
        double peak = Choose("starter.sections = \"5 %\"").Chosen.PeakAmps;
        double low = 0.95, high = 1.05;
        double x1 = (250 / peak - 0.05) / low, x2 = Next(x1), x3 = Next(x2), rest = Next(x3);
        Assert.Equal(0, rest, 3e-3 * x3);

        // The lockout of 350 A and the threshold for the largest total both must let go; the later decides. Least own section, least behind it,
        // and the threshold's volts through it: min over both of volts, then the worst combination of what is own and what is behind.
        double Next(double x)
        {
            double setting = 350 * (0.05 + high * x), next = 0;
            for (int i = 0; i < 100; i++)
            {
                double worst = double.NegativeInfinity;
                foreach (double own in new[] { low, high })
                {
                    foreach (double behind in new[] { low, high })
                    {
                        double total = 0.05 + own * (x - next) + behind * next;
                        worst = Math.Max(worst, (Math.Min(setting, 350 * total) / peak - 0.05) / behind);
                    }
                }

                next = worst;
            }

            return next;
        }
    }

    [Fact]
    public void Wider_tolerances_never_lower_the_peak_and_another_stage_never_raises_it()
    {
        double Peak(string tolerance, int stages) => Choose($"motor.constant = \"{tolerance}\"\nsensors.speed-gain = \"0.5 %\"", ("stages = 3", $"stages = {stages}")).Chosen.PeakAmps;
        double[] byWidth = [.. Widths.Select(width => Peak(width, 3))], byStages = [.. Enumerable.Range(2, 4).Select(stages => Peak("1 %", stages))];
        Assert.Equal(byWidth.Order(), byWidth);
        Assert.Equal(byStages.OrderDescending(), byStages);
        Assert.True(byWidth[^1] > byWidth[0] + 1 && byStages[0] > byStages[^1] + 1);
    }

    [Fact]
    public void No_simulated_start_of_the_rig_passes_the_bound_that_the_textbook_passes_in_most()
    {
        CaseFile file = CaseFile.Parse("rig.toml", RigSweep.CaseText.Replace("duration = \"2 s\"", "duration = \"6 s\"", StringComparison.Ordinal));
        WorstCaseChoice choice = WorstCaseDesigner.Choose(file, new WorstCaseRequest { Starts = 1000 }, cancellation: TestContext.Current.CancellationToken);
        Assert.True(choice.IsVerified);
        Assert.Equal((0, 0), (choice.Chosen.Seen.Above, choice.Chosen.Seen.Unfinished));
        Assert.InRange(choice.Chosen.PeakAmps, 0.99 * choice.ClimbedPeakAmps, 32);
        Assert.InRange(choice.Textbook.Seen.Above, 500, 1000);
        Assert.True(choice.Textbook.PeakAmps > 1.2 * choice.Chosen.PeakAmps);
        Assert.True(choice.Textbook.Seen.HighestAmps <= choice.Textbook.PeakAmps);
        Assert.True(choice.Chosen.Nominal.Seconds > choice.Textbook.Nominal.Seconds);
    }

    [Fact]
    public void Noise_that_can_show_a_threshold_too_early_is_in_the_bound()
    {
        (string, string)[] alone = [("period = \"1 ms\"", "period = \"1 ms\"\nlockout-current = \"100000 A\""), ("[run]", "[sensors]\nspeed-noise = \"3 rpm\"\n\n[run]")];
        WorstCaseChoice noisy = Choose("sensors.speed-gain = \"0.1 %\"", alone), quiet = Choose("sensors.speed-gain = \"0.1 %\"", alone[0]);
        Assert.Equal((0, 0), (noisy.Chosen.Seen.Above, noisy.Chosen.Seen.Unfinished));
        CaseFile quietWithNoise = CaseFile.Parse("quiet.toml", quiet.File.SourceText.Replace("[run]", alone[1].Item2, StringComparison.Ordinal));
        StartsSeen seen = new SimulatedStarts(quietWithNoise, TestContext.Current.CancellationToken).Sample(64, 1, quiet.Chosen.PeakAmps, null);
        Assert.Equal(64, seen.Above);
        Assert.InRange(seen.HighestAmps, 1.03 * quiet.Chosen.PeakAmps, noisy.Chosen.PeakAmps);
    }

    [Fact]
    public void Given_sections_are_kept_and_get_the_thresholds_with_the_least_peak()
    {
        CaseFile file = WorkshopCase.With("motor.constant = \"1 %\"", ("stages = 3", "sections = [\"0.18 ohm\", \"0.09 ohm\", \"0.04 ohm\"]"), ("2000 A", "800 A"));
        WorstCaseChoice choice = WorstCaseDesigner.Choose(file, Few, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal([0.18, 0.09, 0.04], Sections(choice), Close(1e-12));
        // The first current, 250 V through 0.36 ohm, can be no less; the last step is 350 A through 0.09 ohm on 0.05 ohm, and the load's share of it.
        Assert.InRange(choice.Chosen.PeakAmps, 694.4, 730);
        Assert.True(choice.Textbook.PeakAmps > choice.Chosen.PeakAmps);
    }

    [Fact]
    public void A_lockout_current_of_the_case_is_kept()
    {
        WorstCaseChoice choice = Choose("motor.constant = \"1 %\"", ("period = \"1 ms\"", "period = \"1 ms\"\nlockout-current = \"900 A\""));
        Assert.Equal(900, choice.File.Number(CaseKeys.ControlLockoutCurrent));
        Assert.True(choice.Chosen.PeakAmps > Choose("motor.constant = \"1 %\"").Chosen.PeakAmps);
    }

    [Fact]
    public void A_start_that_would_take_too_long_gets_more_torque_to_spare()
    {
        WorstCaseChoice slow = Choose("motor.constant = \"1 %\"");
        double seconds = Math.Round(0.8 * slow.ClimbedSeconds, 3);
        WorstCaseChoice fast = Choose("motor.constant = \"1 %\"", ("[run]", $"[limits]\nstart-time = \"{Engine.Text.Number(seconds)} s\"\n\n[run]"));
        Assert.InRange(fast.ClimbedSeconds, 0.95 * seconds, seconds);
        Assert.True(fast.SpareTorque > slow.SpareTorque && fast.Chosen.PeakAmps > slow.Chosen.PeakAmps);
    }

    [Fact]
    public void A_limit_below_the_least_peak_is_refused_with_the_least_peak_of_this_and_of_one_more_stage()
    {
        CaseException error = Assert.Throws<CaseException>(() => Choose("supply.voltage = \"10 %\"", ("peak-current = \"2000 A\"", "peak-current = \"650 A\"")));
        string four = Engine.Text.Number(Math.Pow(Math.Pow(350, 4) * 275 / 0.05, 0.2)), three = Engine.Text.Number(Math.Pow(Math.Pow(350, 3) * 275 / 0.05, 0.25));
        Assert.Equal($"workshop.toml:17: starter.stages: found no design meets the peak of 650 A over the tolerances with 3 stages: the least peak is {three} A, with 4 stages {four} A; allowed: a higher peak current, more stages, narrower tolerances or a lighter load during the start", error.Message);
    }

    [Fact]
    public void Without_a_number_of_stages_it_takes_the_fewest_that_keep_the_peak()
    {
        WorstCaseChoice choice = Choose("supply.voltage = \"10 %\"", ("stages = 3", "switching-current = \"350 A\""), ("peak-current = \"2000 A\"", "peak-current = \"640 A\""));
        // 697 A with three and 615 A with four, by the closed form.
        Assert.Equal(4, choice.Designed.Design.StageCount);
        Assert.Equal(Math.Pow(Math.Pow(350, 4) * 275 / 0.05, 0.2), choice.Chosen.PeakAmps, 0.7);
    }

    [Theory]
    [InlineData("", "a case without tolerances")]
    [InlineData("starter.sections = \"0.01 ohm\"", "which is no part of a section that is still to be chosen")]
    public void Tolerances_that_it_cannot_work_with_are_refused(string tolerances, string words)
    {
        CaseException error = Assert.Throws<CaseException>(() => Choose(tolerances));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("peak-current = \"2000 A\"", "switching-current = \"350 A\"", "starter.peak-current: found nothing")]
    [InlineData("stages = 3", "cutout-voltages = [\"100 V\", \"200 V\"]", "starter.cutout-voltages: found it in a case whose thresholds are to be chosen")]
    [InlineData("[run]", "[expect]\nfault = \"overload\"\n\n[run]", "expect.fault: found it in a case whose start must always complete")]
    [InlineData("[run]", "[sensors]\nspeed = \"no\"\n\n[run]", "sensors.speed: found no speed sensor")]
    public void Cases_that_it_cannot_work_with_are_refused(string found, string replacement, string words)
    {
        CaseException error = Assert.Throws<CaseException>(() => Choose("motor.constant = \"1 %\"", (found, replacement)));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_written_case_says_what_was_chosen_and_keeps_everything_else()
    {
        WorstCaseChoice choice = Choose("motor.constant = \"1 %\"");
        string[] before = WorkshopCase.Text.Split('\n'), after = choice.File.SourceText.Split('\n');
        Assert.Empty(before.Except(after));
        Assert.Contains("[limits]", after);
        Assert.Equal(choice.PeakTorqueNewtonMetres, choice.File.Number(CaseKeys.LimitsPeakTorque), 3e-3 * choice.PeakTorqueNewtonMetres);
        Assert.True(choice.PeakTorqueNewtonMetres <= choice.File.Number(CaseKeys.LimitsPeakTorque));
    }

    private static WorstCaseChoice Choose(string tolerances, params (string Found, string Replacement)[] changes) =>
        WorstCaseDesigner.Choose(WorkshopCase.With(tolerances, changes), Few, cancellation: TestContext.Current.CancellationToken);

    private static IEnumerable<double> Sections(WorstCaseChoice choice) => choice.Designed.Design.Stages.Select((DesignedStage stage) => stage.SectionOhms);

    private static Func<double, double, bool> Close(double part) => (expected, found) => Math.Abs(found - expected) <= part * Math.Abs(expected);
}
