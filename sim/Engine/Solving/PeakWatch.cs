using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Largest current and torque since a restart. The torque's is not the current's where the flux changes on the way.</summary>
internal struct PeakWatch
{
    private double _amps;
    private double _newtonMetres;

    /// <summary>Largest magnitude of the current, A.</summary>
    public readonly double Amps => Math.Max(_amps, SteadyFluxAmps);

    /// <summary>Largest magnitude of the torque while the flux moved, or up to its last change, N m.</summary>
    public readonly double NewtonMetres => _newtonMetres;

    /// <summary>Largest magnitude of the current since the flux last changed, A.</summary>
    public double SteadyFluxAmps { readonly get; private set; }

    /// <summary>Looks at a current.</summary>
    public void Note(double amps)
    {
        double magnitude = Math.Abs(amps);
        if (magnitude > SteadyFluxAmps) SteadyFluxAmps = magnitude;
    }

    /// <summary>Looks at a torque.</summary>
    public void NoteTorque(double newtonMetres)
    {
        if (newtonMetres > _newtonMetres) _newtonMetres = newtonMetres;
    }

    /// <summary>Forgets the peaks; they begin again at a current.</summary>
    public void Restart(double amps)
    {
        _newtonMetres = 0;
        _amps = 0;
        SteadyFluxAmps = Math.Abs(amps);
    }

    /// <summary>Begins a span of other flux.</summary>
    /// <param name="newtonMetres">Largest torque of the span before, N m.</param>
    /// <param name="amps">Current now, A.</param>
    public void ChangeFlux(double newtonMetres, double amps)
    {
        NoteTorque(newtonMetres);
        _amps = Amps;
        SteadyFluxAmps = Math.Abs(amps);
    }
}
