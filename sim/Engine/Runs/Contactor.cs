using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// A contactor: its main contact follows the coil after a delay; a coil that changes its mind first cancels. A fault of the
/// main contact changes where the contact wants to be, one of the auxiliary contact only what is reported. A coil without enough voltage
/// pulls nothing; one with less than it takes to hold lets go. A main contact that bounces opens and closes again after its first
/// touch, the auxiliary contact follows after the last.
/// </summary>
/// <param name="times">What it does between its coil and its contacts.</param>
public sealed class Contactor(Contactors times)
{
    private bool _commanded;
    private bool _isPulled;
    private double _coilRatio = 1;
    private int _movesOfBounce;
    private ContactFaultKind _mainFault;
    private ContactFaultKind _auxiliaryFault;

    /// <summary>True while the main contact is closed.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>What the auxiliary contact says.</summary>
    public bool IsReportedClosed => _auxiliaryFault switch
    {
        ContactFaultKind.AuxiliaryStuckOpen => false,
        ContactFaultKind.AuxiliaryStuckClosed => true,
        _ => IsClosed && _movesOfBounce == 0,
    };

    /// <summary>True from the first touch until the contact lies still.</summary>
    public bool IsBouncing => _movesOfBounce > 0;

    /// <summary>When the contact will move, s; infinity when it will not.</summary>
    public double MovesAtSeconds { get; private set; } = double.PositiveInfinity;

    private bool Target => _mainFault switch
    {
        ContactFaultKind.Welds => IsClosed || _isPulled,
        ContactFaultKind.RefusesToClose => IsClosed && _isPulled,
        ContactFaultKind.DropsOut => false,
        _ => _isPulled,
    };

    /// <summary>Hands the coil's command over.</summary>
    public void Command(bool close, double nowSeconds)
    {
        if (close == _commanded) return;
        _commanded = close;
        Pull(nowSeconds);
    }

    /// <summary>Gives the coil another voltage.</summary>
    /// <param name="ratio">Part of the rated one.</param>
    /// <param name="nowSeconds">Since when, s.</param>
    public void Feed(double ratio, double nowSeconds)
    {
        _coilRatio = ratio;
        Pull(nowSeconds);
    }

    /// <summary>Goes wrong, or is repaired.</summary>
    public void Fail(ContactFaultKind kind, double nowSeconds)
    {
        switch (kind)
        {
            case ContactFaultKind.Sound:
                _auxiliaryFault = kind;
                _mainFault = kind;
                break;
            case ContactFaultKind.AuxiliaryStuckOpen or ContactFaultKind.AuxiliaryStuckClosed:
                _auxiliaryFault = kind;
                return;
            default:
                _mainFault = kind;
                break;
        }

        Plan(nowSeconds);
        if (kind == ContactFaultKind.DropsOut && IsClosed) MovesAtSeconds = nowSeconds;
    }

    /// <summary>Moves the contact where it wants to be, or on in its bounce.</summary>
    /// <returns>True when it closes and did not just bounce.</returns>
    public bool Move()
    {
        if (_movesOfBounce > 0)
        {
            IsClosed = !IsClosed;
            MovesAtSeconds = --_movesOfBounce > 0 ? MovesAtSeconds + times.BounceSeconds : double.PositiveInfinity;
            return false;
        }

        bool closes = !IsClosed && Target;
        IsClosed = Target;
        if (closes && times.BounceCount > 0 && _mainFault != ContactFaultKind.Welds)
        {
            _movesOfBounce = 2 * times.BounceCount;
            MovesAtSeconds += times.BounceSeconds;
        }
        else
        {
            MovesAtSeconds = double.PositiveInfinity;
        }

        return closes;
    }

    private void Pull(double nowSeconds)
    {
        bool isPulled = _commanded && _coilRatio >= (_isPulled ? times.DropOutRatio : times.PickUpRatio);
        if (isPulled == _isPulled) return;
        _isPulled = isPulled;
        Plan(nowSeconds);
    }

    // A contact already on its way there keeps its time; one that bounces lies still where it is.
    private void Plan(double nowSeconds)
    {
        if (_movesOfBounce > 0)
        {
            _movesOfBounce = 0;
            MovesAtSeconds = double.PositiveInfinity;
        }

        bool target = Target;
        if (target == IsClosed) MovesAtSeconds = double.PositiveInfinity;
        else if (double.IsInfinity(MovesAtSeconds)) MovesAtSeconds = nowSeconds + (target ? times.ClosingSeconds : times.OpeningSeconds);
    }
}
