using System;
using System.Collections.Generic;
using System.IO;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Desk.Tests;

/// <summary>A board on the desk in lockstep, with a shipped case compiled in, as fast as it goes.</summary>
internal sealed class DeskBench : IDisposable
{
    private readonly MemoryFile _memory;

    /// <param name="caseName">The case.</param>
    /// <param name="instead">What stands in the place of the case's tolerances and events; null keeps them.</param>
    /// <param name="line">The serial line; null: nobody is there.</param>
    internal DeskBench(string caseName, string? instead = null, ISerialLine? line = null)
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "sim/cases", caseName));
        // Tolerances are for the sensors of the case, which other ones may take the place of.
        int end = text.IndexOf("[tolerances]", StringComparison.Ordinal);
        if (end < 0) end = text.IndexOf("[[event]]", StringComparison.Ordinal);
        Case = CaseFile.Parse(caseName, instead == null ? text : text[..end] + instead);
        Run = CaseRunner.Prepare(Case);
        Folder = Directory.CreateTempSubdirectory("starterctl-desk").FullName;
        _memory = MemoryFile.Open(Path.Combine(Folder, "board.bin"));
        BoardMemory memory = new(_memory, ResetCause.PowerUp);
        memory.FillBlank(Run.Settings, SettingsChecksum.Of(Run.Settings), CaseHash.Of(Case.Sha256));
        Board = new DeskBoard(Run, line ?? new SilentLine(), memory, isPermitted: false);
    }

    internal CaseFile Case { get; }

    internal PreparedRun Run { get; }

    internal string Folder { get; }

    internal DeskBoard Board { get; }

    internal Controller Controller => Board.Starter.Loop.Controller;

    /// <summary>Stages in the order in which their main contacts closed, with the time since the first coil was energised.</summary>
    internal List<(int Stage, double Seconds)> Cutouts { get; } = [];

    /// <summary>Goes on until something is the case or the time is over.</summary>
    internal DeskBench Until(Func<bool> isOver, double seconds)
    {
        double end = Board.Plant.Seconds + seconds;
        while (Board.Plant.Seconds < end && !isOver())
        {
            int before = Board.Plant.StagesClosed;
            Board.Step();
            int closed = Board.Plant.StagesClosed & ~before;
            if (closed != 0) Cutouts.Add((int.TrailingZeroCount(closed) + 1, Board.Plant.Seconds - Board.Plant.BeganSeconds));
        }

        return this;
    }

    /// <summary>Waits for the lock at power-up and presses start.</summary>
    internal DeskBench Start()
    {
        Until(() => Board.Starter.PowerUp.IsOpen, 5);
        Assert.Equal(PowerUpProblem.None, Board.Starter.PowerUp.Problem);
        Until(() => false, 0.1);
        Board.Plant.Obey(OperatorCommand.Start);
        return this;
    }

    public void Dispose()
    {
        _memory.Dispose();
        Directory.Delete(Folder, true);
    }
}
