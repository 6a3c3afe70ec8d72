using System;

namespace StarterCtl.Engine.Solving;

/// <summary>Largest current and torque since a restart. The torque's is not the current's where the flux changes on the way.</summary>
internal struct PeakWatch
{
    private double _spanAmps;
    private double _amps;
    private double _newtonMetres;

    /// <summary>Largest magnitude of the current, A.</summary>
    public readonly double Amps => Math.Max(_amps, _spanAmps);

    /// <summary>Largest magnitude of the torque, N m.</summary>
    /// <param name="constant">Machine constant times flux since the last <see cref="ChangeFlux"/>, V s/rad.</param>
    public readonly double NewtonMetres(double constant) => Math.Max(_newtonMetres, constant * _spanAmps);

    /// <summary>Looks at a current.</summary>
    public void Note(double amps)
    {
        double magnitude = Math.Abs(amps);
        if (magnitude > _spanAmps) _spanAmps = magnitude;
    }

    /// <summary>Forgets the peaks; they begin again at a current.</summary>
    public void Restart(double amps)
    {
        _amps = 0;
        _newtonMetres = 0;
        _spanAmps = Math.Abs(amps);
    }

    /// <summary>Begins a span of other flux.</summary>
    /// <param name="constantBefore">Machine constant times flux up to here, V s/rad.</param>
    /// <param name="amps">Current now, A.</param>
    public void ChangeFlux(double constantBefore, double amps)
    {
        _newtonMetres = NewtonMetres(constantBefore);
        _amps = Amps;
        _spanAmps = Math.Abs(amps);
    }
}
