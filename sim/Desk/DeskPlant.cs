using System;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>
/// A case's machine, contactors, sensors and operator behind a board's pins. Coils are read off the pins at the beginning of each control
/// period, everything else is on the pins at its end. The events of the case count from the first time that a coil is energised; a
/// press of start that the case times itself is that moment.
/// </summary>
/// <remarks>Windings and sections keep their resistance: what warms up in a case stays as warm as it begins.</remarks>
public sealed class DeskPlant
{
    // A happening that rounding puts just behind the end of a period belongs to it.
    private const double TimeRounding = 1e-12;

    private readonly RunSetup _setup;
    private readonly DeskPins _pins;
    private readonly PlantSolver _plant;
    private readonly ContactorBank _contactors;
    private readonly Surroundings _surroundings;
    private readonly OperatorPanel _panel = new();
    private readonly DeskSensors _sensors;
    private readonly DeskPickup _pickup;
    private readonly Outputs _coils = new();
    private readonly Readings _contacts = new();
    private ComingEvents _events = new([]);
    private int _permissives = -1;
    private long _microseconds;

    /// <summary>Builds everything at rest, with all of it on the pins.</summary>
    /// <param name="setup">The case.</param>
    /// <param name="map">The board's wiring.</param>
    /// <param name="pins">The board's pins.</param>
    public DeskPlant(RunSetup setup, PinMap map, DeskPins pins)
    {
        _setup = setup;
        _pins = pins;
        _plant = new PlantSolver(
            new PlantConditions(setup.Machine, setup.Load, setup.Supply, setup.SectionOhms, false, 0)
            {
                BrakeOhms = setup.BrakeOhms ?? double.PositiveInfinity,
                ArcVolts = setup.Contactors.ArcVolts,
                Field = setup.Field,
                IsFieldClosed = setup.Field is not { HasContactor: true },
            },
            setup.InitialSpeedRadPerSec);
        _contactors = new ContactorBank(setup.Contactors, setup.SectionOhms.Count);
        _surroundings = new Surroundings(setup);
        _sensors = new DeskSensors(map, pins, setup);
        _pickup = new DeskPickup(pins, map.Pulses.RadPerEdge);
        Show();
    }

    /// <summary>Time since the plant was built, s.</summary>
    public double Seconds => _microseconds * 1e-6;

    /// <summary>When a coil was first energised, s since the plant was built; not a number before.</summary>
    public double BeganSeconds { get; private set; } = double.NaN;

    /// <summary>Armature current, A.</summary>
    public double ArmatureAmps => _plant.ArmatureAmps;

    /// <summary>Largest magnitude of the armature current so far, A.</summary>
    public double PeakAmps => _plant.PeakAmps;

    /// <summary>Speed of the shaft, rad/s.</summary>
    public double SpeedRadPerSec => _plant.SpeedRadPerSec;

    /// <summary>True while the line's main contact is closed.</summary>
    public bool LineClosed => _contactors.LineClosed;

    /// <summary>Closed main contacts of the stages, bit 0 = stage 1.</summary>
    public int StagesClosed => _contactors.StagesClosed;

    /// <summary>Does at the panel what an operator does.</summary>
    public void Obey(OperatorCommand command) => _panel.Obey(command, Seconds);

    /// <summary>Carries everything on by one control period.</summary>
    public void Advance()
    {
        double now = Seconds;
        Command(now);
        LookAtConditions(now);
        _microseconds += _setup.PeriodMicroseconds;
        double end = Seconds;
        for (double next = NextHappening(); next <= end + TimeRounding; next = NextHappening())
        {
            double at = Math.Max(now, next);
            Carry(now, at);
            now = at;
            Happen(now);
        }

        Carry(now, end);
        _pins.CounterMicroseconds = unchecked((int)_microseconds);
        Show();
    }

    private double NextHappening() => Math.Min(_contactors.NextMoveSeconds, Math.Min(_events.NextSeconds, _surroundings.NextSeconds));

    private void Command(double now)
    {
        _coils.CloseLine = _pins.IsOn(PinRole.LineCoil);
        _coils.CloseBrake = _pins.IsOn(PinRole.BrakeCoil);
        _coils.CloseField = _pins.IsOn(PinRole.FieldCoil);
        _coils.CloseStages = 0;
        for (int i = 0; i < _setup.SectionOhms.Count; i++)
        {
            if (_pins.IsOn(PinRole.StageCoil1 + i)) _coils.CloseStages |= 1 << i;
        }

        _contactors.Command(_coils, now);
        if (double.IsNaN(BeganSeconds) && (_coils.CloseLine || _coils.CloseField)) Begin(now);
    }

    private void Begin(double now)
    {
        BeganSeconds = now;
        RunEvent? start = _setup.Events.FirstOrDefault(happening => happening is { Command: OperatorCommand.Start, When: null });
        double shift = now - (start?.AtSeconds ?? 0);
        _events = new ComingEvents([.. _setup.Events.Where(happening => happening != start).Select(happening => happening with { AtSeconds = happening.AtSeconds + shift })]);
    }

    private void LookAtConditions(double now)
    {
        int stage = _coils.CloseLine ? 1 + int.PopCount(_coils.CloseStages) : 0;
        if (_events.IsWaiting) _events.Look(now, _plant.SpeedRadPerSec, stage);
    }

    private void Carry(double from, double to)
    {
        if (to <= from) return;
        if (_surroundings.IsMoving) _plant.Change(_surroundings.At((from + to) / 2, _plant.Conditions));
        double before = _plant.SpeedRadPerSec;
        _plant.Advance(to - from);
        _pickup.Turn(unchecked((int)(long)Math.Round(from * 1e6)), to - from, before, _plant.SpeedRadPerSec);
    }

    private void Happen(double now)
    {
        if (_surroundings.NextSeconds <= now)
        {
            _surroundings.Settle(now);
            _plant.Change(_surroundings.At(now, _plant.Conditions));
        }

        if (_contactors.NextMoveSeconds <= now) _contactors.Move(now);
        while (_events.NextSeconds <= now) Happen(_events.Take(), now);
        _plant.Change(_plant.Conditions with
        {
            LineClosed = _contactors.LineClosed,
            StagesClosed = _contactors.StagesClosed,
            BrakeClosed = _contactors.BrakeClosed,
            IsFieldClosed = !_surroundings.IsFieldBroken && (_setup.Field is not { HasContactor: true } || _contactors.FieldClosed),
        });
    }

    private void Happen(RunEvent happening, double now)
    {
        if (Surroundings.IsConcerned(happening)) _plant.Change(_surroundings.Obey(happening, now, _plant));
        if (happening.ContactFault is ContactFault fault) _contactors.Fail(fault, now);
        if (happening.CoilVoltageRatio is double ratio) _contactors.Feed(ratio, now);
        if (happening.Command is OperatorCommand command) _panel.Obey(command, now);
        _permissives = happening.Permissives ?? _permissives;
        _sensors.Obey(happening);
        _pickup.Obey(happening, _plant.SpeedRadPerSec);
    }

    private void Show()
    {
        _sensors.Show(_plant);
        _contactors.Show(_contacts);
        _panel.Show(Seconds, _contacts);
        _pins.Close(PinRole.LineContact, _contacts.LineClosed);
        _pins.Close(PinRole.BrakeContact, _contacts.BrakeClosed);
        _pins.Close(PinRole.FieldContact, _contacts.FieldClosed);
        for (int i = 0; i < _setup.SectionOhms.Count; i++) _pins.Close(PinRole.StageContact1 + i, (_contacts.StagesClosed & (1 << i)) != 0);
        _pins.Close(PinRole.StopChain, !_contacts.EmergencyStop);
        _pins.Close(PinRole.StopButton, !_contacts.StopPressed);
        _pins.Close(PinRole.StartButton, _contacts.StartPressed);
        _pins.Close(PinRole.ResetButton, _contacts.ResetPressed);
        for (int i = 0; i < PinMap.MostPermissives; i++) _pins.Close(PinRole.Permissive1 + i, (_permissives & (1 << i)) != 0);
    }
}
