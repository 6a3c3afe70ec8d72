using System;
using StarterCtl.Core;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>The contactors of the panel: line, stages, brake and field.</summary>
public sealed class ContactorBank
{
    private readonly Contactor _line;
    private readonly Contactor _brake;
    private readonly Contactor _field;
    private readonly Contactor[] _stages;
    private bool _lineCommanded;
    private bool _brakeCommanded;
    private bool _fieldCommanded;
    private int _stagesCommanded;
    private bool _isShown;

    /// <summary>Builds a bank with every contact open.</summary>
    public ContactorBank(Contactors times, int stageCount)
    {
        _line = new Contactor(times);
        _brake = new Contactor(times);
        _field = new Contactor(times);
        _stages = new Contactor[stageCount];
        for (int i = 0; i < stageCount; i++) _stages[i] = new Contactor(times);
    }

    /// <summary>True while the line's main contact is closed.</summary>
    public bool LineClosed => _line.IsClosed;

    /// <summary>True while the brake's main contact is closed.</summary>
    public bool BrakeClosed => _brake.IsClosed;

    /// <summary>True while the field's main contact is closed.</summary>
    public bool FieldClosed => _field.IsClosed;

    /// <summary>Closed main contacts of the stages, bit 0 = stage 1.</summary>
    public int StagesClosed { get; private set; }

    /// <summary>True when the last <see cref="Move(double)"/> moved anything that was not bouncing.</summary>
    public bool HasSwitched { get; private set; }

    /// <summary>When the next contact moves, s; infinity when none will.</summary>
    public double NextMoveSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>Reads the auxiliary contacts into the readings, which keep what has not changed.</summary>
    public void Show(Readings readings)
    {
        if (_isShown) return;
        _isShown = true;
        readings.LineClosed = _line.IsReportedClosed;
        readings.BrakeClosed = _brake.IsReportedClosed;
        readings.FieldClosed = _field.IsReportedClosed;
        readings.StagesClosed = 0;
        for (int i = 0; i < _stages.Length; i++)
        {
            if (_stages[i].IsReportedClosed) readings.StagesClosed |= 1 << i;
        }
    }

    /// <summary>Hands the coils' commands over.</summary>
    /// <returns>Stages that are newly commanded closed, as bits.</returns>
    public int Command(Outputs outputs, double nowSeconds)
    {
        if (outputs.CloseLine == _lineCommanded && outputs.CloseStages == _stagesCommanded
            && outputs.CloseBrake == _brakeCommanded && outputs.CloseField == _fieldCommanded) return 0;
        return Obey(outputs, nowSeconds);
    }

    /// <summary>Lets a contactor go wrong, or repairs it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The panel has no such contactor.</exception>
    public void Fail(ContactFault fault, double nowSeconds)
    {
        Named(fault).Fail(fault.Kind, nowSeconds);
        LookAgain();
    }

    /// <summary>Gives every coil another voltage.</summary>
    /// <param name="ratio">Part of the rated one.</param>
    /// <param name="nowSeconds">Since when, s.</param>
    public void Feed(double ratio, double nowSeconds)
    {
        _line.Feed(ratio, nowSeconds);
        _brake.Feed(ratio, nowSeconds);
        _field.Feed(ratio, nowSeconds);
        foreach (Contactor stage in _stages) stage.Feed(ratio, nowSeconds);
        LookAgain();
    }

    /// <summary>Moves every contact whose time has come.</summary>
    /// <returns>Stages whose contacts close with it, bit 0 = stage 1; one that only bounces has closed before.</returns>
    public int Move(double nowSeconds)
    {
        HasSwitched = false;
        Move(_line, nowSeconds);
        Move(_brake, nowSeconds);
        Move(_field, nowSeconds);
        int closing = 0;
        for (int i = 0; i < _stages.Length; i++)
        {
            if (Move(_stages[i], nowSeconds)) closing |= 1 << i;
        }

        LookAgain();
        return closing;
    }

    private int Obey(Outputs outputs, double nowSeconds)
    {
        int newStages = outputs.CloseStages & ~_stagesCommanded;
        _lineCommanded = outputs.CloseLine;
        _brakeCommanded = outputs.CloseBrake;
        _fieldCommanded = outputs.CloseField;
        _stagesCommanded = outputs.CloseStages;
        _line.Command(_lineCommanded, nowSeconds);
        _brake.Command(_brakeCommanded, nowSeconds);
        _field.Command(_fieldCommanded, nowSeconds);
        for (int i = 0; i < _stages.Length; i++) _stages[i].Command((_stagesCommanded & (1 << i)) != 0, nowSeconds);
        LookAgain();
        return newStages;
    }

    private bool Move(Contactor contactor, double nowSeconds)
    {
        if (contactor.MovesAtSeconds > nowSeconds) return false;
        HasSwitched |= !contactor.IsBouncing;
        return contactor.Move();
    }

    private Contactor Named(ContactFault fault) => fault.Contact switch
    {
        ContactName.Line => _line,
        ContactName.Brake => _brake,
        ContactName.Field => _field,
        ContactName.Stage when fault.Stage >= 1 && fault.Stage <= _stages.Length => _stages[fault.Stage - 1],
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "The panel has no such contactor."),
    };

    private void LookAgain()
    {
        _isShown = false;
        NextMoveSeconds = Math.Min(_line.MovesAtSeconds, Math.Min(_brake.MovesAtSeconds, _field.MovesAtSeconds));
        StagesClosed = 0;
        for (int i = 0; i < _stages.Length; i++)
        {
            NextMoveSeconds = Math.Min(NextMoveSeconds, _stages[i].MovesAtSeconds);
            if (_stages[i].IsClosed) StagesClosed |= 1 << i;
        }
    }
}
