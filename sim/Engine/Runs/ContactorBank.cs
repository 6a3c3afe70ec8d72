using System;
using StarterCtl.Core;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>The line contactor and the stage contactors.</summary>
internal sealed class ContactorBank
{
    private readonly Contactor _line;
    private readonly Contactor[] _stages;
    private bool _lineCommanded;
    private int _stagesCommanded;

    /// <summary>Builds a bank with every contact open.</summary>
    public ContactorBank(Contactors times, int stageCount)
    {
        _line = new Contactor(times);
        _stages = new Contactor[stageCount];
        for (int i = 0; i < stageCount; i++) _stages[i] = new Contactor(times);
    }

    /// <summary>True while the line contact is closed.</summary>
    public bool LineClosed => _line.IsClosed;

    /// <summary>Closed stage contacts, bit 0 = stage 1.</summary>
    public int StagesClosed { get; private set; }

    /// <summary>When the next contact moves, s; infinity when none will.</summary>
    public double NextMoveSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>Hands the coils' commands over.</summary>
    /// <returns>Stages that are newly commanded closed, as bits.</returns>
    public int Command(Outputs outputs, double nowSeconds)
    {
        if (outputs.CloseLine == _lineCommanded && outputs.CloseStages == _stagesCommanded) return 0;
        int newStages = outputs.CloseStages & ~_stagesCommanded;
        _lineCommanded = outputs.CloseLine;
        _stagesCommanded = outputs.CloseStages;
        _line.Command(_lineCommanded, nowSeconds);
        for (int i = 0; i < _stages.Length; i++) _stages[i].Command((_stagesCommanded & (1 << i)) != 0, nowSeconds);
        FindNextMove();
        return newStages;
    }

    /// <summary>Moves every contact whose time has come.</summary>
    public void Move(double nowSeconds)
    {
        if (_line.MovesAtSeconds <= nowSeconds) _line.Move();
        for (int i = 0; i < _stages.Length; i++)
        {
            if (_stages[i].MovesAtSeconds > nowSeconds) continue;
            _stages[i].Move();
            StagesClosed ^= 1 << i;
        }

        FindNextMove();
    }

    private void FindNextMove()
    {
        NextMoveSeconds = _line.MovesAtSeconds;
        foreach (Contactor stage in _stages) NextMoveSeconds = Math.Min(NextMoveSeconds, stage.MovesAtSeconds);
    }
}
