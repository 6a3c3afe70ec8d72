using System;
using System.Collections.Generic;
using Moq;
using StarterCtl.Core;

namespace StarterCtl.Firmware.Tests;

/// <summary>
/// A board of the three-stage starter of CHK-01 behind a strict mock: what was called in which order, contacts that
/// follow their coils by the next reading, a counter that the test sets.
/// </summary>
internal sealed class FakeBoard
{
    private readonly Mock<IBoard> _board = new(MockBehavior.Strict);

    internal FakeBoard(int counterMicroseconds = 0)
    {
        CounterMicroseconds = counterMicroseconds;
        _board.Setup(board => board.MicrosecondCounter()).Returns(() =>
        {
            Calls.Add("counter");
            return CounterMicroseconds;
        });
        _board.Setup(board => board.TryRead(It.IsAny<Readings>())).Returns((Readings readings) =>
        {
            Calls.Add("read");
            if (ReadFails) Garbage(readings);
            else Inputs(readings);
            return !ReadFails;
        });
        _board.Setup(board => board.Write(It.IsAny<Outputs>())).Callback((Outputs outputs) =>
        {
            CloseLine = outputs.CloseLine;
            CloseStages = outputs.CloseStages;
            TrippedLamp = outputs.TrippedLamp;
            Calls.Add($"write line {(CloseLine ? 1 : 0)} stages {CloseStages}");
        });
    }

    internal IBoard Board => _board.Object;

    internal List<string> Calls { get; } = [];

    internal int CounterMicroseconds { get; set; }

    internal float SpeedRadPerSec { get; set; }

    internal bool StartPressed { get; set; }

    internal bool ResetPressed { get; set; }

    internal bool ReadFails { get; set; }

    internal bool LineWelded { get; set; }

    /// <summary>What a failing read leaves in the readings before it gives up.</summary>
    internal Action<Readings> Garbage { get; set; } = _ => { };

    internal bool CloseLine { get; private set; }

    internal int CloseStages { get; private set; }

    internal bool TrippedLamp { get; private set; }

    internal static Settings Chk01(Action<Settings>? change = null)
    {
        Settings settings = new()
        {
            StageCount = 3,
            MachineConstant = 2.5f,
            PeakAmps = 700f,
            InstantTripAmps = 1000f,
            HighestSupplyVolts = 500f,
            HighestSpeedRadPerSec = 200f,
            ContactMicroseconds = 100_000,
        };
        new[] { 250f / 700f, 125f / 700f, 62.5f / 700f, 0.05f }.CopyTo(settings.StageOhms, 0);
        new[] { 125f, 62.5f, 31.25f }.CopyTo(settings.VoltsLeft, 0);
        change?.Invoke(settings);
        return settings;
    }

    /// <summary>One control period of the loop.</summary>
    internal void Step(ControlLoop loop, int microseconds = 1000)
    {
        CounterMicroseconds = unchecked(CounterMicroseconds + microseconds);
        loop.Step();
    }

    /// <summary>Powers up and presses start; the line is commanded.</summary>
    internal ControlLoop Started(Settings settings)
    {
        ControlLoop loop = new(Board, settings);
        Step(loop);
        StartPressed = true;
        Step(loop);
        StartPressed = false;
        return loop;
    }

    private void Inputs(Readings readings)
    {
        readings.SupplyVolts = 250f;
        readings.ArmatureAmps = 0f;
        readings.SpeedRadPerSec = SpeedRadPerSec;
        readings.SpeedValid = true;
        readings.StartPressed = StartPressed;
        readings.ResetPressed = ResetPressed;
        readings.StopPressed = false;
        readings.EmergencyStop = false;
        readings.LineClosed = CloseLine || LineWelded;
        readings.StagesClosed = CloseStages;
    }
}
