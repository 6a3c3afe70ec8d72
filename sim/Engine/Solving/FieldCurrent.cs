using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// The current of a separately excited field, in closed form: <c>If(t) = If1 + (If0 - If1) exp(-t / tau)</c>, with
/// If1 = Vf / Rf and tau = Lf / Rf in a closed circuit, If1 = 0 and the discharge resistor's tau in an open one.
/// </summary>
public sealed class FieldCurrent
{
    // What is left to the final current counts as arrived: its flux moves no armature current that could be told apart.
    private const double StillRatio = 1e-8;

    private readonly FieldCircuit _circuit;
    private readonly Magnetisation _curve;
    private readonly double _scale;
    private double _finalAmps;
    private double _seconds;

    /// <summary>Begins steady: without a current in an open circuit, with all of it in a closed one.</summary>
    /// <param name="circuit">The field circuit.</param>
    /// <param name="curve">Machine constant times flux over its current.</param>
    /// <param name="isClosed">True when the circuit is closed.</param>
    /// <exception cref="ArgumentException">The circuit's values are out of their ranges.</exception>
    public FieldCurrent(FieldCircuit circuit, Magnetisation curve, bool isClosed)
    {
        if (!(circuit.SupplyVolts >= 0 && circuit.Ohms > 0 && circuit.Henries >= 0 && circuit.DischargeSeconds >= 0))
        {
            throw new ArgumentException("A field circuit has a resistance above 0, and nothing in it is negative.", nameof(circuit));
        }

        _circuit = circuit;
        _curve = curve;
        _scale = _curve.LastAmps;
        Set(isClosed, circuit.SupplyVolts);
        Amps = _finalAmps;
    }

    /// <summary>Field current, A.</summary>
    public double Amps { get; private set; }

    /// <summary>True once the current moves no more.</summary>
    public bool IsSteady => Amps == _finalAmps;

    /// <summary>Machine constant times flux, V s/rad.</summary>
    public double Constant => _curve.ConstantAt(Amps);

    /// <summary>Switches the circuit at this instant; without inductance the current jumps.</summary>
    /// <param name="isClosed">True while the circuit is closed.</param>
    /// <param name="supplyVolts">Voltage of the field's supply, V, 0 or more.</param>
    public void Set(bool isClosed, double supplyVolts)
    {
        _finalAmps = isClosed ? supplyVolts / _circuit.Ohms : 0;
        double freewheelSeconds = _circuit.Henries / _circuit.Ohms;
        _seconds = isClosed ? freewheelSeconds : Math.Min(freewheelSeconds, _circuit.DischargeSeconds);
        Settle();
    }

    /// <summary>Goes forward in time.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public void Advance(double seconds)
    {
        Amps = AmpsAfter(seconds);
        Settle();
    }

    /// <summary>Machine constant times flux after a span, V s/rad.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public double ConstantAfter(double seconds) => _curve.ConstantAt(AmpsAfter(seconds));

    private double AmpsAfter(double seconds) =>
        _seconds == 0 ? _finalAmps : _finalAmps + (Amps - _finalAmps) * Math.Exp(-seconds / _seconds);

    private void Settle()
    {
        if (_seconds == 0 || Math.Abs(Amps - _finalAmps) <= StillRatio * _scale) Amps = _finalAmps;
    }
}
