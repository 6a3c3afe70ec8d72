using System;
using System.Diagnostics;
using System.Threading;
using StarterCtl.Engine;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>
/// The whole firmware on a board of memory, with a case's machine at its pins. The board's clock is the machine's: one control period is
/// one period of both, in real time or as fast as it goes.
/// </summary>
public sealed class DeskBoard
{
    /// <summary>What the board is called over the link.</summary>
    public const string Name = "board on the desk";

    // A computer that was asleep, or busy for longer than this, is not made up for.
    private static readonly TimeSpan MostLag = TimeSpan.FromMilliseconds(200);

    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(1);

    private readonly PreparedRun _run;
    private readonly DeskPins _pins;
    private readonly IDeskLine? _line;

    /// <summary>Builds the board, powered up on a machine at rest.</summary>
    /// <param name="run">The case: it gives the machine and the wiring, and no settings.</param>
    /// <param name="line">The serial line.</param>
    /// <param name="memory">What is kept; with compiled settings, filled by <see cref="BoardMemory.FillBlank"/> before.</param>
    /// <param name="isPermitted">True closes the switch that permits a start over the link.</param>
    public DeskBoard(PreparedRun run, ISerialLine line, BoardMemory memory, bool isPermitted)
    {
        _run = run;
        _line = line as IDeskLine;
        PinMap map = DeskWiring.Of(run);
        _pins = new DeskPins(map);
        // The sensors are the wiring's nominal ones: built before the board puts its own calibration there.
        Plant = new DeskPlant(run.Setup, map, _pins);
        _pins.Close(PinRole.LinkPermit, isPermitted);
        Version version = Version.Parse(CoreIdentity.Version);
        Starter = new StarterBoard(map, _pins, line, memory, new BoardIdentity
        {
            Name = Name,
            VersionMajor = version.Major,
            VersionMinor = version.Minor,
            VersionPatch = version.Build,
            ResetCause = memory.Resets.Cause,
        });
    }

    /// <summary>What is at its pins.</summary>
    public DeskPlant Plant { get; }

    /// <summary>The firmware.</summary>
    public StarterBoard Starter { get; }

    /// <summary>True while any coil is energised.</summary>
    public bool IsAnyCoilOn
    {
        get
        {
            bool isOn = _pins.IsOn(PinRole.LineCoil) || _pins.IsOn(PinRole.BrakeCoil) || _pins.IsOn(PinRole.FieldCoil);
            for (int i = 0; i < _run.Setup.SectionOhms.Count; i++) isOn |= _pins.IsOn(PinRole.StageCoil1 + i);
            return isOn;
        }
    }

    /// <summary>One control period: the machine first, then the board that reads it.</summary>
    public void Step()
    {
        Plant.Advance();
        Starter.Step();
    }

    /// <summary>Runs by the computer's clock until cancelled; then presses stop and goes on until every coil is off.</summary>
    /// <param name="cancellation">Ends it.</param>
    /// <param name="stopSeconds">Longest time for the stop, s of the board's clock.</param>
    public void Run(CancellationToken cancellation, double stopSeconds = 10)
    {
        TimeSpan period = TimeSpan.FromMicroseconds(_run.Setup.PeriodMicroseconds);
        Stopwatch watch = Stopwatch.StartNew();
        TimeSpan due = TimeSpan.Zero;
        while (!cancellation.IsCancellationRequested)
        {
            for (; due <= watch.Elapsed; due += period)
            {
                if (watch.Elapsed - due > MostLag) due = watch.Elapsed;
                Step();
            }

            // With the desk keeping the time a period begins when something has come; the board's own clock stays that of the computer.
            if (!Starter.IsInLockstep)
            {
                Thread.Sleep(1);
                continue;
            }

            if (Starter.IsLinkIdle) _line?.Wait(Rest);
            Starter.Step();
        }

        Plant.Obey(OperatorCommand.Stop);
        double end = Plant.Seconds + stopSeconds;
        do Step();
        while (IsAnyCoilOn && Plant.Seconds < end);
    }
}
