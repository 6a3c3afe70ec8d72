using System;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Solving;

/// <summary>
/// Carries a separately excited field beside the machine's two states. The armature does not act on the field, so that its
/// current is exact; over a sub-step the machine sees the flux of the sub-step's middle. A sub-step changes that flux by
/// at most <see cref="LargestChange"/>: the error of current and speed falls with its square. While nothing carries the
/// armature current the flux does nothing, and while the field stands still the solver keeps its own steps.
/// </summary>
public sealed class Excitation
{
    /// <summary>Largest change of the flux within a sub-step, as a part of the flux.</summary>
    public const double LargestChange = 1e-3;

    private readonly PlantSolver _plant;
    private readonly FieldCurrent? _field;
    private readonly bool _hasContactor;
    private bool _isContactClosed;
    private bool _isBroken;
    private double _supplyVolts;

    /// <summary>Puts a field beside a machine, which takes its flux from there.</summary>
    /// <param name="plant">The machine.</param>
    /// <param name="circuit">The field circuit; null leaves the machine its own constant for ever.</param>
    public Excitation(PlantSolver plant, FieldCircuit? circuit)
    {
        _plant = plant;
        LargestConstant = plant.Conditions.Machine.Constant;
        if (circuit == null) return;
        _hasContactor = circuit.HasContactor;
        _isContactClosed = !_hasContactor;
        _supplyVolts = circuit.SupplyVolts;
        Magnetisation curve = plant.Conditions.Machine.Flux?.Curve
            ?? throw new ArgumentException("A machine with a field circuit has a flux that follows it.", nameof(plant));
        _field = new FieldCurrent(circuit, curve, _isContactClosed);
        LargestConstant = curve.Constants[^1];
        Magnetise(_field.Constant);
    }

    /// <summary>Field current, A; 0 for a machine without a field circuit.</summary>
    public double FieldAmps => _field?.Amps ?? 0;

    /// <summary>Largest machine constant times flux that the machine can have, V s/rad.</summary>
    public double LargestConstant { get; }

    /// <summary>Changes the field circuit at this instant. What is null does not change.</summary>
    /// <param name="isContactClosed">True while the field contactor's main contact is closed; means nothing where there is none.</param>
    /// <param name="isBroken">True while the circuit is broken elsewhere.</param>
    /// <param name="supplyVolts">Voltage of the field's supply, V, 0 or more.</param>
    public void Change(bool? isContactClosed = null, bool? isBroken = null, double? supplyVolts = null)
    {
        if (_hasContactor) _isContactClosed = isContactClosed ?? _isContactClosed;
        _isBroken = isBroken ?? _isBroken;
        _supplyVolts = supplyVolts ?? _supplyVolts;
        if (_field == null) return;
        _field.Set(_isContactClosed && !_isBroken, _supplyVolts);
        Magnetise(_field.Constant);
    }

    /// <summary>Goes forward in time, machine and field.</summary>
    /// <param name="seconds">Span, s, 0 or more.</param>
    public void Advance(double seconds)
    {
        if (_field == null || _field.IsSteady)
        {
            _plant.Advance(seconds);
            return;
        }

        double remaining = seconds;
        while (remaining > 0)
        {
            bool isLive = _plant.Conditions.IsLive;
            double h = isLive ? SubStep(_field, remaining) : remaining;
            if (isLive) Magnetise(_field.ConstantAfter(h / 2));
            _plant.Advance(h);
            _field.Advance(h);
            remaining -= h;
        }

        Magnetise(_field.Constant);
    }

    // A span is shortened until the flux changes little enough; the flux goes one way only while the circuit stands.
    private static double SubStep(FieldCurrent field, double longest)
    {
        double largest = LargestChange * field.Constant, h = longest;
        while (true)
        {
            double change = Math.Abs(field.ConstantAfter(h) - field.Constant);
            if (change <= largest) return h;
            h *= Math.Min(0.5, 0.9 * largest / change);
        }
    }

    private void Magnetise(double constant)
    {
        PlantConditions conditions = _plant.Conditions;
        if (conditions.Machine.Constant == constant) return;
        _plant.Change(conditions with { Machine = conditions.Machine with { Constant = constant } });
    }
}
