using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>A contactor: its main contact follows the coil after a delay; a coil that changes its mind first cancels.</summary>
internal sealed class Contactor(Contactors times)
{
    private bool _commanded;

    /// <summary>True while the main contact is closed.</summary>
    public bool IsClosed { get; private set; }

    /// <summary>When the contact will move, s; infinity when it will not.</summary>
    public double MovesAtSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>Hands the coil's command over.</summary>
    public void Command(bool close, double nowSeconds)
    {
        if (close == _commanded) return;
        _commanded = close;
        MovesAtSeconds = close == IsClosed
            ? double.PositiveInfinity
            : nowSeconds + (close ? times.ClosingSeconds : times.OpeningSeconds);
    }

    /// <summary>Moves the contact where its coil wants it.</summary>
    public void Move()
    {
        IsClosed = _commanded;
        MovesAtSeconds = double.PositiveInfinity;
    }
}
