using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.House;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>
/// The shipped line shaft with a whole board in between: the firmware sees its machine through counts, edges and contacts, and moves
/// it through pins. Pins are carried on every 50 us, the loop runs every millisecond.
/// </summary>
internal sealed class BoardBench
{
    internal const int PeriodMicroseconds = 1000;

    private const int EdgesPerTurn = 60;
    private const int StepMicroseconds = 50;

    private readonly PreparedRun _run;
    private readonly PlantSolver _plant;
    private readonly Contactor _line;
    private readonly Contactor[] _stages;
    private double _turns;

    internal BoardBench(Action<PinMap>? change = null, int counterStart = 0)
    {
        Case = CaseFile.Read(Path.Combine(Repository.Root, "sim/cases/line-shaft.toml"));
        _run = CaseRunner.Prepare(Case);
        _plant = new PlantSolver(new PlantConditions(_run.Setup.Machine, _run.Setup.Load, _run.Setup.Supply, _run.Setup.SectionOhms, false, 0), 0);
        _line = new Contactor(_run.Setup.Contactors);
        _stages = [.. _run.Setup.SectionOhms.Select(_ => new Contactor(_run.Setup.Contactors))];

        Map = SoftPins.Wired(_run.Settings);
        SoftPins.Scale(Map.Supply, 0f, 300f);
        SoftPins.Scale(Map.Armature, -1.2f * _run.Settings.InstantTripAmps, 1.2f * _run.Settings.InstantTripAmps);
        Map.Pulses.EdgesPerTurn = EdgesPerTurn;
        // 155 A at 1.65 V s/rad on 2.65 kg m2 are 97 rad/s2.
        Map.Pulses.HighestRadPerSecSquared = 150f;
        change?.Invoke(Map);
        Wiring = new BoardCheck(Map, _run.Settings);
        Pins = new SoftPins(Map) { CounterMicroseconds = counterStart };
        Pins.AtRest();
        Board = new PanelBoard(Map, Pins);
        Guard = new LoopGuard(
            new LoopTiming(Map.PeriodMicroseconds, Map.LateMicroseconds),
            new WatchdogPulse(Pins.Output(Map.Pin(PinRole.Watchdog), false)),
            new PowerUpCheck(_run.Settings, SettingsChecksum.Of(_run.Settings), Wiring, Board.Outputs));
        Loop = new ControlLoop(Board, _run.Settings, Guard);
    }

    internal CaseFile Case { get; }

    internal PinMap Map { get; }

    internal BoardCheck Wiring { get; }

    internal SoftPins Pins { get; }

    internal PanelBoard Board { get; }

    internal LoopGuard Guard { get; }

    internal ControlLoop Loop { get; }

    /// <summary>False while the pick-up gives no more edges.</summary>
    internal bool HasEdges { get; set; } = true;

    /// <summary>Counts that the current sensor is stuck at; null while it is sound.</summary>
    internal int? StuckCurrentCounts { get; set; }

    internal double Seconds { get; private set; }

    /// <summary>Stages whose contact has closed, with the machine's speed then.</summary>
    internal List<(int Stage, double Seconds, double RadPerSec)> Cutouts { get; } = [];

    internal double RadPerSec => _plant.SpeedRadPerSec;

    /// <summary>Goes on until something is the case or the time is over.</summary>
    internal BoardBench Until(Func<bool> isOver, double seconds)
    {
        for (double end = Seconds + seconds; Seconds < end && !isOver();)
        {
            for (int i = 0; i < PeriodMicroseconds / StepMicroseconds; i++) Carry();
            ShowSensors();
            Loop.Step();
        }

        return this;
    }

    /// <summary>Waits for the lock to open and presses start.</summary>
    internal BoardBench Start()
    {
        Until(() => Guard.PowerUp.IsOpen, 5);
        Until(() => false, 0.1);
        Pins.Close(PinRole.StartButton);
        return this;
    }

    private void Carry()
    {
        Command(_line, PinRole.LineCoil, PinRole.LineContact, 0);
        for (int i = 0; i < _stages.Length; i++) Command(_stages[i], PinRole.StageCoil1 + i, PinRole.StageContact1 + i, i + 1);
        int stages = Enumerable.Range(0, _stages.Length).Sum(i => _stages[i].IsClosed ? 1 << i : 0);
        if (_plant.Conditions.LineClosed != _line.IsClosed || _plant.Conditions.StagesClosed != stages)
        {
            _plant.Change(_plant.Conditions with { LineClosed = _line.IsClosed, StagesClosed = stages });
        }

        double before = _plant.SpeedRadPerSec;
        _plant.Advance(StepMicroseconds * 1e-6);
        Seconds += StepMicroseconds * 1e-6;
        Pins.CounterMicroseconds = unchecked(Pins.CounterMicroseconds + StepMicroseconds);
        Turn(0.5 * (before + _plant.SpeedRadPerSec) * StepMicroseconds * 1e-6 / (2 * Math.PI) * EdgesPerTurn);
    }

    // Turns in edges; an edge is stamped where in the step it came, by the microsecond.
    private void Turn(double edges)
    {
        double next = Math.Floor(_turns) + 1;
        if (_turns + edges >= next && HasEdges)
        {
            Pins.EdgeCount++;
            Pins.LastEdgeMicroseconds = unchecked(Pins.CounterMicroseconds - StepMicroseconds + (int)((next - _turns) / edges * StepMicroseconds));
        }

        _turns += edges;
    }

    private void Command(Contactor contactor, PinRole coil, PinRole contact, int stage)
    {
        contactor.Command(Pins.IsOn(coil), Seconds);
        bool wasClosed = contactor.IsClosed;
        while (contactor.MovesAtSeconds <= Seconds) contactor.Move();
        Pins.Close(contact, contactor.IsReportedClosed);
        if (stage > 0 && contactor.IsClosed && !wasClosed) Cutouts.Add((stage, Seconds, _plant.SpeedRadPerSec));
    }

    private void ShowSensors()
    {
        Pins.Show(PinRole.SupplyVolts, Map.Supply, _plant.TerminalVolts);
        Pins.Show(PinRole.ArmatureAmps, Map.Armature, _plant.ArmatureAmps);
        if (StuckCurrentCounts is int counts) Pins.ShowCounts(PinRole.ArmatureAmps, counts);
    }
}
