using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// A contactor: its main contact follows the coil after a delay; a coil that changes its mind first cancels. A fault of the
/// main contact changes where the contact wants to be, one of the auxiliary contact only what is reported.
/// </summary>
internal sealed class Contactor(Contactors times)
{
    private bool _commanded;
    private ContactFaultKind _mainFault;
    private ContactFaultKind _auxiliaryFault;

    /// <summary>True while the main contact is closed.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>What the auxiliary contact says.</summary>
    public bool IsReportedClosed => _auxiliaryFault switch
    {
        ContactFaultKind.AuxiliaryStuckOpen => false,
        ContactFaultKind.AuxiliaryStuckClosed => true,
        _ => IsClosed,
    };

    /// <summary>When the contact will move, s; infinity when it will not.</summary>
    public double MovesAtSeconds { get; private set; } = double.PositiveInfinity;

    private bool Target => _mainFault switch
    {
        ContactFaultKind.Welds => IsClosed || _commanded,
        ContactFaultKind.RefusesToClose => IsClosed && _commanded,
        ContactFaultKind.DropsOut => false,
        _ => _commanded,
    };

    /// <summary>Hands the coil's command over.</summary>
    public void Command(bool close, double nowSeconds)
    {
        if (close == _commanded) return;
        _commanded = close;
        Plan(nowSeconds);
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
                break;
            default:
                _mainFault = kind;
                break;
        }

        Plan(nowSeconds);
        if (kind == ContactFaultKind.DropsOut && IsClosed) MovesAtSeconds = nowSeconds;
    }

    /// <summary>Moves the contact where it wants to be.</summary>
    public void Move()
    {
        IsClosed = Target;
        MovesAtSeconds = double.PositiveInfinity;
    }

    // A contact already on its way there keeps its time.
    private void Plan(double nowSeconds)
    {
        bool target = Target;
        if (target == IsClosed) MovesAtSeconds = double.PositiveInfinity;
        else if (double.IsInfinity(MovesAtSeconds)) MovesAtSeconds = nowSeconds + (target ? times.ClosingSeconds : times.OpeningSeconds);
    }
}
