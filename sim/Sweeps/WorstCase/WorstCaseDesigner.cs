using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using StarterCtl.Engine;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>Chooses the sections and thresholds of a case so that the worst peak over its tolerances is as low as it can be and no start sticks.</summary>
public sealed class WorstCaseDesigner
{
    // More torque to spare than this, as a part of the load's, is not tried where starts take too long.
    private const double MostSpare = 8;
    private const double SpareTolerance = 0.02;

    // After so many time constants 1 % is left.
    private const double SettlingFactor = 4.6;

    private const int FirstPoints = 8;
    private const int MostRounds = 100;

    // What is worse than what was designed for by less than this part is rounding.
    private const double Rounding = 1e-5;
    private const double WrittenRounding = 2e-3;

    private readonly CaseFile _file;
    private readonly WorstCaseRequest _request;
    private readonly CancellationToken _cancellation;
    private readonly PreparedRun _prepared;
    private readonly PlantSpace _space;
    private readonly SectionSpan _span;

    // Those that decide: a few corners to begin with, and whatever turns out to be worse.
    private readonly List<PlantPoint> _points;
    private readonly double _limitAmps;
    private readonly double? _lockoutAmps;

    private WorstCaseDesigner(CaseFile file, WorstCaseRequest request, CancellationToken cancellation)
    {
        _file = file;
        _request = request;
        _cancellation = cancellation;
        _prepared = CaseRunner.Prepare(file);
        _space = new PlantSpace(_prepared);
        _span = SectionSpan.Of(_prepared.Variables);
        _points = [.. _space.Corners.Take(FirstPoints)];
        double lockout = file.Number(CaseKeys.ControlLockoutCurrent);
        _lockoutAmps = double.IsFinite(lockout) ? lockout : null;
        _limitAmps = file.Number(file.Has(CaseKeys.LimitsPeakCurrent) ? CaseKeys.LimitsPeakCurrent : CaseKeys.StarterPeakCurrent);
    }

    // Everything that a bound begins from.
    private IReadOnlyList<PlantPoint> Known => [.. _space.Corners, .. _points];

    /// <summary>Chooses the starter of a case.</summary>
    /// <param name="file">A case with tolerances and a peak current, without thresholds of its own. Sections that it has are kept.</param>
    /// <param name="request">What is asked for.</param>
    /// <param name="progress">Told which part is done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="CaseException">The case cannot be designed for the worst case, or no starter meets its peak: then with the least peak there is.</exception>
    public static WorstCaseChoice Choose(CaseFile file, WorstCaseRequest request, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        CaseProblem[] problems = [.. WorstCaseProblems.Of(file)];
        if (problems.Length > 0) throw new CaseException(problems);
        return new WorstCaseDesigner(file, request, cancellation).Choose(progress);
    }

    private WorstCaseChoice Choose(IProgress<double>? progress)
    {
        (CaseFile chosen, double spare) = _file.Has(CaseKeys.StarterSections) ? OnGivenSections()
            : _file.Has(CaseKeys.StarterStages) ? WithStages(_file.Count(CaseKeys.StarterStages))
            : WithFewestStages();
        CaseDesign designed = CaseDesign.ForRun(chosen);
        GradingBound bound = new(GradingOf(designed), _span), textbook = new(GradingOf(_prepared.Designed), _span);
        PeakFound peak = HighestPeak(bound);
        SimulatedStarts starts = new(chosen, _cancellation), textbookStarts = new(_file, _cancellation);
        PlantPoint slowest = LeastRatio(bound).Point;
        double climbedPeak = starts.ClimbPeak(_space, peak.Point, _span), climbedSeconds = starts.ClimbSeconds(_space, slowest, _span);
        StartsSeen seen = starts.Sample(_request.Starts, _request.Seed, peak.Amps, Half(progress, 0));
        StartsSeen textbookSeen = textbookStarts.Sample(_request.Starts, _request.Seed, peak.Amps, Half(progress, 0.5));
        return new WorstCaseChoice(
            _request,
            designed,
            _limitAmps,
            PointOf(bound, peak, seen, starts.Nominal()),
            PointOf(textbook, HighestPeak(textbook), textbookSeen, textbookStarts.Nominal()),
            _prepared.Designed.Design.StageCount)
        {
            PeakTorqueNewtonMetres = HighestTorque(bound),
            SpareTorque = spare,
            Decisive = [.. _space.Decisive.Select(variable => variable.Path)],
            Corners = _space.Corners.Count,
            AllCorners = _space.CornerCount,
            ClimbedPeakAmps = climbedPeak,
            ClimbedSeconds = climbedSeconds,
        };
    }

    private (CaseFile File, double Spare) WithFewestStages()
    {
        string reason = "";
        for (int stages = 1; stages <= StarterDesigner.MostStages; stages++)
        {
            (CaseFile? found, double spare, string why) = Try(stages);
            if (found != null) return (found, spare);
            reason = why;
        }

        throw Refused($"no design meets the peak of {Amps(_limitAmps)} over the tolerances with up to {StarterDesigner.MostStages} stages: {reason}", "a higher peak current, narrower tolerances or a lighter load during the start");
    }

    private (CaseFile File, double Spare) WithStages(int stages)
    {
        (CaseFile? found, double spare, string why) = Try(stages);
        if (found != null) return (found, spare);
        string more = stages < StarterDesigner.MostStages && Least(stages + 1, _request.SpareTorque) is (_, double next) ? $", with {stages + 1} stages {Amps(next)}" : "";
        throw Refused($"no design meets the peak of {Amps(_limitAmps)} over the tolerances with {stages} stages: {why}{more}", "a higher peak current, more stages, narrower tolerances or a lighter load during the start", CaseKeys.StarterStages);
    }

    // The least torque to spare with which the slowest start ends in time also gives the least peak.
    private (CaseFile? File, double Spare, string Why) Try(int stages)
    {
        double low = _request.SpareTorque, high = low;
        if (Least(stages, low) is not (Grading grading, double peakAmps)) return (null, low, "on the worst plant the load is not accelerated at any peak");
        if (peakAmps > _limitAmps) return (null, low, $"the least peak is {Amps(peakAmps)}");
        string why = $"the least peak is {Amps(peakAmps)}, with which the slowest start does not end in time";
        CaseFile? file = InTime(grading);
        while (file == null)
        {
            if (high >= MostSpare || peakAmps > _limitAmps) return (null, high, why);
            (low, high) = (high, Math.Min(MostSpare, 1.5 * high + 0.05));
            if (Least(stages, high) is not (Grading faster, double higher)) return (null, high, why);
            (file, peakAmps) = (InTime(faster), higher);
        }

        while (high - low > SpareTolerance * high)
        {
            double middle = (low + high) / 2;
            if (Least(stages, middle) is (Grading slower, double lower) && InTime(slower) is CaseFile found) (file, high, peakAmps) = (found, middle, lower);
            else low = middle;
        }

        return peakAmps <= _limitAmps ? (file, high, "") : (null, high, $"{why}, and with {Amps(peakAmps)} it would");
    }

    private (CaseFile File, double Spare) OnGivenSections()
    {
        double[] sections = _prepared.Designed.SectionOhms();
        for (double spare = _request.SpareTorque; spare < MostSpare; spare = 1.2 * spare + 0.02)
        {
            if (Through(sections, spare) is not (Grading grading, double peakAmps)) break;
            if (InTime(grading) is not CaseFile file) continue;
            if (peakAmps <= _limitAmps) return (file, spare);
            throw Refused($"no thresholds keep these sections within the peak of {Amps(_limitAmps)} over the tolerances: the least peak is {Amps(peakAmps)}", "a higher peak current, other sections or narrower tolerances", CaseKeys.StarterSections);
        }

        throw Refused("sections with which the start does not end in time on the worst plant, whatever the thresholds", "less resistance, a lighter load during the start or narrower tolerances", CaseKeys.StarterSections);
    }

    private (Grading Grading, double PeakAmps)? Least(int stages, double spare) =>
        Settled(spare, Dwell(stages), search => search.Lowest(stages));

    private (Grading Grading, double PeakAmps)? Through(double[] sections, double spare)
    {
        double peakAmps = _limitAmps;
        return Settled(spare, Dwell(sections.Length), search =>
        {
            if (search.Through(sections, peakAmps) is not Grading grading) return null;
            peakAmps = new GradingBound(grading, _span).Peak(_points).Amps;
            return (grading, peakAmps);
        });
    }

    // Corners, and places between them, that are worse than those designed for join them, until there is none.
    private (Grading Grading, double PeakAmps)? Settled(double spare, double dwellSeconds, Func<GradingSearch, (Grading Grading, double PeakAmps)?> find)
    {
        for (int round = 0; ; round++)
        {
            if (find(new GradingSearch(_points, _span, spare, _lockoutAmps, dwellSeconds, _cancellation)) is not (Grading grading, double peakAmps)) return null;
            GradingBound bound = new(grading, _span);
            PlantPoint highest = bound.Peak(_space.Corners).Point, shortest = bound.Shortfall(_space.Corners, spare).Point;
            if (!IsWorse(highest, shortest))
            {
                highest = _space.Climb(highest, point => bound.PeakOn(point).Amps);
                shortest = _space.Climb(shortest, point => bound.ShortfallOn(point, spare));
            }

            // What is left after so many rounds is in the bound, and a stage that sticks keeps the starter from being called verified.
            if (!IsWorse(highest, shortest) || round >= MostRounds) return (grading, Math.Max(peakAmps, bound.PeakOn(highest).Amps));
            if (bound.PeakOn(highest).Amps > peakAmps * (1 + Rounding)) _points.Add(highest);
            if (bound.ShortfallOn(shortest, spare) > Rounding) _points.Add(shortest);

            bool IsWorse(PlantPoint high, PlantPoint weak) => bound.PeakOn(high).Amps > peakAmps * (1 + Rounding) || bound.ShortfallOn(weak, spare) > Rounding;
        }
    }

    // Long enough for the current to settle in the last stage, where that takes longest: its circuit has about as many times the armature's
    // resistance as each stage has of the next.
    private double Dwell(int stages)
    {
        double given = 1e-6 * _prepared.Settings.MinimumDwellMicroseconds;
        if (_file.Has(CaseKeys.ControlMinimumDwell)) return given;
        double settling = _space.Corners.Max(point => point.Plant.SettlingSeconds(Math.Pow(Math.Max(1, point.Plant.DirectAmps / _limitAmps), 1.0 / stages)));
        return Math.Max(given, Math.Ceiling(1e3 * SettlingFactor * settling) / 1e3);
    }

    // The case with a grading; null where its slowest start does not end in time.
    private CaseFile? InTime(Grading grading)
    {
        CaseFile file = WorstCaseFile.Of(_prepared.Designed, grading, WrittenTorque(grading));
        PlantPoint weakest = LeastRatio(new GradingBound(grading, _span)).Point;
        return double.IsFinite(new SimulatedStarts(file, _cancellation).ClimbSeconds(_space, weakest, _span)) ? file : null;
    }

    // Written settings are rounded, the lockout upwards.
    private double WrittenTorque(Grading grading) => HighestTorque(new GradingBound(grading, _span)) * (1 + WrittenRounding);

    private PeakFound HighestPeak(GradingBound bound) => bound.PeakOn(_space.Climb(bound.Peak(Known).Point, point => bound.PeakOn(point).Amps));

    private double HighestTorque(GradingBound bound) => bound.TorqueOn(_space.Climb(bound.PeakTorque(Known).Point, bound.TorqueOn));

    private (double Ratio, int Stage, PlantPoint Point) LeastRatio(GradingBound bound) => bound.RatioOn(_space.Climb(bound.LeastRatio(Known).Point, point => -bound.RatioOn(point).Ratio));

    private WorstPoint PointOf(GradingBound bound, PeakFound peak, StartsSeen seen, NominalCost nominal)
    {
        (double ratio, int stage, PlantPoint _) = LeastRatio(bound);
        WorstValue[] where = [.. Enumerable.Range(0, _space.Variables.Count).Where(i => _space.Decisive.Contains(_space.Variables[i])).Select(i => ValueOf(_space.Variables[i], peak.Point.Values[i]))];
        return new WorstPoint(peak.Amps, peak.Cutout, where, ratio, stage, seen, nominal);
    }

    private static WorstValue ValueOf(PlantVariable variable, double value) => new(variable.Path, variable.Unit, value, value == variable.Low, value == variable.High);

    private static Grading GradingOf(CaseDesign designed) => new(
        [.. designed.Design.Stages.Select(stage => stage.SectionOhms)],
        [.. designed.Design.Stages.Select(stage => stage.VoltsLeft)],
        new Lockout(designed.File.Number(CaseKeys.ControlLockoutCurrent), designed.File.Number(CaseKeys.ControlMinimumDwell)));

    private static Progress? Half(IProgress<double>? progress, double from) => progress == null ? null : new Progress(progress, from);

    private CaseException Refused(string found, string allowed, CaseKey? key = null) =>
        new([_file.Problem(key ?? (_file.Has(CaseKeys.LimitsPeakCurrent) ? CaseKeys.LimitsPeakCurrent : CaseKeys.StarterPeakCurrent), found, allowed)]);

    private static string Amps(double amps) => Text.Number(amps) + " A";

    private sealed class Progress(IProgress<double> whole, double from) : IProgress<double>
    {
        public void Report(double value) => whole.Report(from + value / 2);
    }
}
