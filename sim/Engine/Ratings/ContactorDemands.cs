using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Engine.Ratings;

/// <summary>Works out what line, stage and brake contactors make and break.</summary>
internal sealed class ContactorDemands
{
    private readonly PreparedRun _prepared;
    private readonly RunSetup _setup;
    private readonly StarterDesign _design;
    private readonly UtilisationCategory _category;
    private readonly double _runningAmps;
    private readonly double _emfVolts;
    private readonly double _carriedAmps;
    private readonly double _tripAmps;
    private readonly double _volts;
    private readonly IReadOnlyList<double>? _given;

    private ContactorDemands(PreparedRun prepared, HeatedStart settled)
    {
        _prepared = prepared;
        _setup = prepared.Setup;
        _design = prepared.Designed.Design;
        _category = UtilisationCategory.Of(prepared.Designed.Machine.Kind);
        // A load that drives the machine feeds the supply: its current runs the other way, against a back-EMF above it.
        double amps = settled.Result.FinalAmps;
        _runningAmps = Math.Abs(amps);
        _carriedAmps = Math.Max(prepared.Designed.Plate.RatedAmps ?? 0, _runningAmps);
        _tripAmps = prepared.Settings.InstantTripAmps;
        _volts = _design.SupplyVolts;
        _emfVolts = _volts - Math.Sign(amps) * DrivingVolts(_runningAmps, _setup.Supply.SourceOhms + _setup.Machine.ArmatureOhms);
        CaseFile file = prepared.Designed.File;
        _given = file.Has(CaseKeys.ContactorsRatedCurrent) ? file.Numbers(CaseKeys.ContactorsRatedCurrent) : null;
    }

    /// <summary>Every contactor of a case that switches the armature's current: line, stages, brake.</summary>
    /// <param name="prepared">The case.</param>
    /// <param name="settled">Its start from cold, until the machine has settled.</param>
    public static IReadOnlyList<ContactorDemand> Of(PreparedRun prepared, HeatedStart settled) =>
        [.. new ContactorDemands(prepared, settled).All(settled)];

    private IEnumerable<ContactorDemand> All(HeatedStart settled)
    {
        yield return Line();
        for (int i = 0; i < _design.StageCount; i++) yield return Stage(i, settled.Result.Cutouts);
        if (_setup.BrakeOhms is double ohms) yield return Brake(ohms, settled.Result.FinalRpm * Math.PI / 30);
    }

    // A stop while running breaks its current against the little that the back-EMF leaves; a jammed shaft leaves all of the supply.
    private ContactorDemand Line()
    {
        double first = _design.Stages[0].PeakAmps, bare = _setup.Supply.SourceOhms + _setup.Machine.ArmatureOhms, whole = bare + _setup.SectionOhms.Sum();
        return Demand(
            "line",
            0,
            [
                new("makes the first peak", true, first, _volts, Constant(whole)),
                new("breaks at a stop while running", false, _runningAmps, DrivingVolts(_runningAmps, bare), Constant(bare)),
                new("breaks with the shaft jammed, stage 1 in", false, first, _volts, Constant(whole)),
                new("breaks at the instantaneous trip, all resistance out", false, _tripAmps, DrivingVolts(_tripAmps, bare), Constant(bare)),
            ],
            _carriedAmps,
            Math.Max(Math.Max(_volts, _emfVolts), _setup.Contactors.ArcVolts));
    }

    private ContactorDemand Stage(int index, IReadOnlyList<Runs.Cutout> cutouts)
    {
        double ohms = _setup.SectionOhms[index];
        Runs.Cutout? cutout = cutouts.FirstOrDefault(one => one.Stage == index + 1);
        double next = Math.Max(index + 1 < _design.StageCount ? _design.Stages[index + 1].PeakAmps : _design.FinalPeakAmps, cutout?.PeakAmpsAfter ?? 0);
        double before = cutout?.AmpsBefore ?? _design.Stages[index].SwitchingAmps;
        return Demand(
            $"stage {index + 1}",
            index + 1,
            [
                new("makes the next peak", true, next, before * ohms, 0),
                new("breaks while running: its section takes over", false, _runningAmps, _runningAmps * ohms, 0),
                new("breaks at the instantaneous trip: its section takes over", false, _tripAmps, _tripAmps * ohms, 0),
            ],
            _carriedAmps,
            _tripAmps * ohms);
    }

    private ContactorDemand Brake(double ohms, double speedRadPerSec)
    {
        Machine machine = _setup.Machine;
        double loop = machine.ArmatureOhms + ohms, emf = _emfVolts;
        double released = emf * Math.Min(1, _prepared.Settings.BrakeReleaseRadPerSec / speedRadPerSec);
        return Demand(
            "brake",
            _design.StageCount + 1,
            [
                new("makes at the speed of running", true, Amps(emf), emf, Constant(loop)),
                new("breaks at the release speed", false, Amps(released), released, Constant(loop)),
                new("breaks just after it has made", false, Amps(emf), emf, Constant(loop)),
            ],
            0,
            Math.Max(emf, _setup.Contactors.ArcVolts));

        double Amps(double volts) => Math.Max(0, volts - machine.BrushDropVolts) / loop;
    }

    private ContactorDemand Demand(string name, int index, ContactSwitching[] switchings, double carriedAmps, double peakVolts)
    {
        (double Amps, string Why)[] needs =
        [
            (carriedAmps, "the current that it carries"),
            .. switchings.Select(one => (_category.RatedAmpsFor(one.Amps), $"{one.When}: {Text.Number(one.Amps)} A")),
            .. switchings.Where(one => one is { IsMaking: false, TimeConstantSeconds: > 0 }).Select(one => (
                _category.RatedAmpsForEnergy(_setup.Machine.ArmatureHenries, one.Amps, _volts),
                $"{one.When}: magnetic energy of {Text.Number(_setup.Machine.ArmatureHenries * one.Amps * one.Amps / 2)} J")),
        ];
        (double amps, string why) = needs.MaxBy(need => need.Amps);
        return new ContactorDemand
        {
            Name = name,
            Switchings = switchings,
            CarriedAmps = carriedAmps,
            Category = _category,
            PeakVolts = peakVolts,
            RatedAmps = amps,
            Decides = why,
            // A section that has burnt open leaves the whole supply across its contact.
            RatedVolts = _volts,
            GivenAmps = _given?[_given.Count == 1 ? 0 : index],
        };
    }

    private double DrivingVolts(double amps, double ohms) => Math.Min(_volts, amps * ohms + _setup.Machine.BrushDropVolts);

    private double Constant(double ohms) => _setup.Machine.ArmatureHenries / ohms;
}
