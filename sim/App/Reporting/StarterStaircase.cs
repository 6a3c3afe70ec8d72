using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.App.Reporting;

/// <summary>
/// The designed start in the plane of current and speed: down the characteristic of a stage, across at constant speed to the
/// next, and so on to the point where the machine carries its load.
/// </summary>
internal sealed class StarterStaircase
{
    private const int PointsPerTread = 40;

    private readonly StarterDesign _design;

    /// <summary>Builds the staircase of a study; rated supply, without the supply's resistance, as the design has it.</summary>
    public StarterStaircase(StartStudy study)
    {
        _design = study.Design;
        double[] totals = [.. _design.Stages.Select(stage => stage.TotalOhms), _design.ArmatureOhms];
        Curves = [.. totals.Select(ohms => study.DesignInput.CharacteristicOn(ohms))];
        Load load = study.DesignInput.Load;
        Running = Curves[^1].Carrying(load);
        Treads = [.. Curves.Select((curve, i) => (curve.AtAmps(PeakAmps(i)), EndOf(i)))];
    }

    /// <summary>The characteristic of each stage; the last is that of the armature alone.</summary>
    public IReadOnlyList<Characteristic> Curves { get; }

    /// <summary>Where the machine carries its load; null where it does not.</summary>
    public OperatingPoint? Running { get; }

    /// <summary>Where the machine comes onto each curve and where it leaves it, or rests on the last.</summary>
    public IReadOnlyList<(OperatingPoint From, OperatingPoint To)> Treads { get; }

    /// <summary>The whole way, along the curves.</summary>
    public IEnumerable<OperatingPoint> Path() =>
        Treads.SelectMany((tread, i) => Curves[i].Curve(tread.From.ArmatureAmps, tread.To.ArmatureAmps, PointsPerTread));

    private double PeakAmps(int index) => index < _design.StageCount ? _design.Stages[index].PeakAmps : _design.FinalPeakAmps;

    private OperatingPoint EndOf(int index) =>
        index < _design.StageCount ? Curves[index].AtAmps(_design.Stages[index].SwitchingAmps) : Running ?? Curves[index].AtAmps(_design.FinalPeakAmps);
}
