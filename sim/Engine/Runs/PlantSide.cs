using System;
using System.Collections.Generic;
using StarterCtl.Core;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// Everything on the far side of the controller's terminals: machine, load, supply, contactors, sensors, operator, and what a case lets
/// happen to them. Whoever holds the clock calls <see cref="Read"/>, lets a controller decide, passes its commands to
/// <see cref="Command"/> and goes on by <see cref="Advance"/>.
/// </summary>
public sealed class PlantSide
{
    // A happening that rounding puts just behind the end of a span belongs to it.
    private const double TimeRounding = 1e-12;

    private readonly RunSetup _setup;
    private readonly IPlantWatch? _watch;
    private readonly PlantSolver _plant;
    private readonly ContactorBank _contactors;
    private readonly SensorPanel _sensors;
    private readonly OperatorPanel _panel = new();
    private readonly ComingEvents _events;
    private readonly Surroundings _surroundings;
    private readonly Temperatures? _temperatures;
    private readonly Readings _readings = new();
    private double _plannedSeconds;
    private bool _isRamping;

    /// <summary>Builds everything as it stands when the case begins.</summary>
    /// <param name="setup">The case.</param>
    /// <param name="watch">Looks on; null: nobody does.</param>
    public PlantSide(RunSetup setup, IPlantWatch? watch = null)
    {
        _setup = setup;
        _watch = watch;
        _plant = new PlantSolver(
            new PlantConditions(setup.Machine, setup.Load, setup.Supply, setup.SectionOhms, false, 0)
            {
                BrakeOhms = setup.BrakeOhms ?? double.PositiveInfinity,
                ArcVolts = setup.Contactors.ArcVolts,
                Field = setup.Field,
                IsFieldClosed = setup.Field is not { HasContactor: true },
            },
            setup.InitialSpeedRadPerSec);
        _surroundings = new Surroundings(setup);
        if (setup.Heat is ThermalSetup heat) _temperatures = new Temperatures(setup, heat);
        _contactors = new ContactorBank(setup.Contactors, setup.SectionOhms.Count);
        _sensors = new SensorPanel(setup);
        _events = new ComingEvents(setup.Events);
        LookAhead();
    }

    /// <summary>The machine in its circuit.</summary>
    public PlantSolver Plant => _plant;

    /// <summary>True while an event waits for a condition.</summary>
    public bool IsWaiting { get; private set; }

    /// <summary>Events that have not happened.</summary>
    public IReadOnlyList<RunEvent> EventsLeft => _events.Left;

    /// <summary>Courses of what warms up.</summary>
    public IReadOnlyList<BodyTemperature> TemperatureCourses => _temperatures?.Courses ?? [];

    /// <summary>True temperature of the armature winding, degC; NaN where it does not follow the run.</summary>
    public double ArmatureCelsius => _temperatures?.ArmatureCelsius ?? double.NaN;

    /// <summary>True temperature of the field winding, degC; NaN likewise.</summary>
    public double FieldCelsius => _temperatures?.FieldCelsius ?? double.NaN;

    /// <summary>True temperature of the hottest starter section, degC; NaN likewise.</summary>
    public double HottestSectionCelsius => _temperatures?.HottestSectionCelsius ?? double.NaN;

    /// <summary>What a controller reads, as of the last <see cref="Read"/>.</summary>
    public Readings Readings => _readings;

    /// <summary>Reads everything anew.</summary>
    /// <param name="now">Time, s.</param>
    public void Read(double now)
    {
        _sensors.Show(_plant, _readings, now);
        _contactors.Show(_readings);
        _panel.Show(now, _readings);
    }

    /// <summary>Passes commands to the coils. Contacts without a delay move by <see cref="MoveContacts"/>.</summary>
    /// <returns>Stages that are newly commanded, bit 0 = stage 1.</returns>
    public int Command(Outputs outputs, double now) => _contactors.Command(outputs, now);

    /// <summary>Does at the panel what an operator does.</summary>
    public void Obey(OperatorCommand command, double now) => _panel.Obey(command, now);

    /// <summary>Lets contacts move that are due.</summary>
    public void MoveContacts(double now)
    {
        if (_contactors.NextMoveSeconds > now) return;
        SwitchContacts(now);
        Warm(now);
    }

    /// <summary>Carries everything on. What falls due at the very end has happened then.</summary>
    /// <param name="now">Where it stands, s.</param>
    /// <param name="end">Where it goes, s.</param>
    /// <param name="seconds">The span between them, s: given, because the difference of two times is not always the same to the last bit.</param>
    public void Advance(double now, double end, double seconds)
    {
        double last = end + TimeRounding;
        if (_contactors.NextMoveSeconds > last && _plannedSeconds > last) AdvancePlant(now, end, seconds);
        else AdvanceWithHappenings(now, end, seconds);
    }

    /// <summary>Looks whether what an event waits for is there.</summary>
    /// <param name="now">Time, s.</param>
    /// <param name="stage">Stage in effect; 0 while no start is under way.</param>
    public void LookAtConditions(double now, int stage)
    {
        _events.Look(now, _plant.SpeedRadPerSec, stage);
        LookAhead();
    }

    /// <summary>Lets every event happen that is due.</summary>
    public void Happen(double now)
    {
        if (_plannedSeconds > now) return;
        while (_events.NextSeconds <= now)
        {
            RunEvent happening = _events.Take();
            if (Surroundings.IsConcerned(happening)) ChangeSurroundings(happening, now);
            if (happening.ContactFault is ContactFault fault) _contactors.Fail(fault, now);
            if (happening.CoilVoltageRatio is double ratio) _contactors.Feed(ratio, now);
            _temperatures?.Obey(happening, now, _plant);
            _sensors.Obey(happening, _readings);
            _watch?.Happened(happening, now);
            if (happening.Command is OperatorCommand command) _panel.Obey(command, now);
        }

        LookAhead();
    }

    /// <summary>Closes the books of what warms up, at the end of a run.</summary>
    public void End(double now) => _temperatures?.End(now, _plant);

    // Happenings inside the span split it; those of its last instant are there when the next tick reads.
    private void AdvanceWithHappenings(double now, double end, double seconds)
    {
        double last = end + TimeRounding;
        double at = now;
        for (double next = NextHappening(); next <= last; next = NextHappening())
        {
            if (next > at) AdvancePlant(at, next, next - at);
            at = Math.Max(at, next);
            if (_surroundings.NextSeconds <= at) SettleRamps(at);
            if (_contactors.NextMoveSeconds <= at) SwitchContacts(at);
            Happen(at);
            Warm(at);
        }

        if (at == now) AdvancePlant(at, end, seconds);
        else if (end > at) AdvancePlant(at, end, end - at);
    }

    private double NextHappening() => Math.Min(_contactors.NextMoveSeconds, _plannedSeconds);

    // What every tick asks for stands here, so that a run without any of it pays nothing.
    private void LookAhead()
    {
        _plannedSeconds = Math.Min(_events.NextSeconds, _surroundings.NextSeconds);
        if (_temperatures != null) _plannedSeconds = Math.Min(_plannedSeconds, _temperatures.NextSeconds);
        IsWaiting = _events.IsWaiting;
        _isRamping = _surroundings.IsMoving;
    }

    private void AdvancePlant(double from, double to, double seconds)
    {
        if (_isRamping) _plant.Change(_surroundings.At((from + to) / 2, _plant.Conditions));
        _plant.Advance(seconds);
    }

    // Whatever happened at this instant ends the span over which the temperatures were foreseen.
    private void Warm(double now)
    {
        if (_temperatures == null) return;
        _temperatures.End(now, _plant);
        PlantConditions warmed = _temperatures.Begin(now, _plant);
        if (!ReferenceEquals(warmed, _plant.Conditions)) _plant.Change(warmed);
        _sensors.Feel(_temperatures.HottestSectionCelsius);
        LookAhead();
    }

    // A ramp's last step held the middle of its span; from here on it is where it went.
    private void SettleRamps(double now)
    {
        _surroundings.Settle(now);
        LookAhead();
        _plant.Change(_surroundings.At(now, _plant.Conditions));
        _watch?.Changed(now);
    }

    private void SwitchContacts(double now)
    {
        _watch?.Leaving();
        int closing = _contactors.Move(now);
        bool hasSwitched = _contactors.HasSwitched;
        if (hasSwitched) _watch?.BeforeChange(now, closing);
        else _watch?.Bounced(now);
        _plant.Change(_plant.Conditions with
        {
            LineClosed = _contactors.LineClosed,
            StagesClosed = _contactors.StagesClosed,
            BrakeClosed = _contactors.BrakeClosed,
            IsFieldClosed = IsFieldClosed,
        });
        if (hasSwitched) _watch?.AfterChange(now);
        else _watch?.Bounced(now);
        _watch?.Changed(now);
    }

    private void ChangeSurroundings(RunEvent happening, double now)
    {
        _watch?.Leaving();
        _watch?.BeforeChange(now, 0);
        PlantConditions changed = _surroundings.Obey(happening, now, _plant);
        _plant.Change(changed with { IsFieldClosed = IsFieldClosed });
        _watch?.AfterChange(now);
        _watch?.Changed(now);
    }

    private bool IsFieldClosed => !_surroundings.IsFieldBroken && (_setup.Field is not { HasContactor: true } || _contactors.FieldClosed);
}
