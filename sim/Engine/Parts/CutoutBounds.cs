using System;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Engine.Parts;

/// <summary>
/// Which totals can follow each other when every stage is cut out at one switching current: at a cutout the speed stands, so that
/// the current after it follows from the two totals alone.
/// </summary>
/// <remarks>
/// Speed at the cutout from <c>V - I2 Rj = k(I2) w</c>, current after it from <c>V - I Rj+1 = k(I) w</c>; at constant flux
/// <c>I = I2 Rj/Rj+1</c>. Supposes that a larger total gives a smaller current at every speed.
/// </remarks>
internal sealed class CutoutBounds
{
    private const int Halvings = 40;

    private readonly Characteristic _alone;
    private readonly bool _isConstant;
    private readonly double _volts;
    private readonly double _armatureOhms;
    private readonly double _switchingAmps;

    public CutoutBounds(DesignInput input, double switchingAmps)
    {
        _alone = input.CharacteristicOn(input.ArmatureOhms);
        _isConstant = input.Flux == null;
        _volts = _alone.DrivingVolts;
        _armatureOhms = input.ArmatureOhms;
        _switchingAmps = switchingAmps;
    }

    /// <summary>True where <see cref="LeastPeak(double, int)"/> is one formula, and not a search.</summary>
    public bool IsConstantFlux => _isConstant;

    /// <summary>Current just after a cutout, A.</summary>
    /// <param name="total">Total before it, ohm.</param>
    /// <param name="next">Total after it, ohm.</param>
    public double PeakAfter(double total, double next) =>
        _isConstant ? _switchingAmps * total / next : _alone.On(next).AmpsAt(_alone.On(total).AtAmps(_switchingAmps).SpeedRadPerSec, _switchingAmps);

    /// <summary>Largest total before a cutout that keeps a peak, ohm.</summary>
    public double MostBefore(double next, double peakAmps) => _isConstant
        ? peakAmps * next / _switchingAmps
        : (_volts - _alone.ConstantAt(_switchingAmps) * (_volts - peakAmps * next) / _alone.ConstantAt(peakAmps)) / _switchingAmps;

    /// <summary>Smallest total after a cutout that keeps a peak, ohm.</summary>
    public double LeastAfter(double total, double peakAmps) => _isConstant
        ? _switchingAmps * total / peakAmps
        : (_volts - _alone.ConstantAt(peakAmps) * (_volts - _switchingAmps * total) / _alone.ConstantAt(_switchingAmps)) / peakAmps;

    /// <summary>Current at standstill, A.</summary>
    public double FirstPeak(double total) => _volts / total;

    /// <summary>The least peak that sections of any value reach before a total.</summary>
    /// <param name="total">The total, ohm.</param>
    /// <param name="sections">How many sections come before it.</param>
    /// <returns>Amperes; never more than the least.</returns>
    public double LeastPeak(double total, int sections)
    {
        if (_isConstant) return sections == 0 ? _volts / total : Math.Pow(Math.Pow(_switchingAmps, sections) * _volts / total, 1.0 / (sections + 1));
        double low = Math.Min(_switchingAmps, _volts / total), high = _volts / total;
        if (sections == 0) return high;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2, first = total;
            for (int section = 0; section < sections; section++) first = MostBefore(first, middle);
            if (first >= _volts / middle) high = middle;
            else low = middle;
        }

        return low;
    }

    /// <summary>The least peak of a number of stages with sections of any value, A.</summary>
    public double LeastPeak(int stages) => LeastPeak(_armatureOhms, stages);

    /// <summary>Between which totals every stage must lie for no peak to pass a limit.</summary>
    /// <param name="stages">Number of stages.</param>
    /// <param name="limitAmps">The limit, A.</param>
    /// <returns>Ohms, one more than stages: the last is the armature alone.</returns>
    public (double[] Lowest, double[] Highest) Windows(int stages, double limitAmps)
    {
        double[] lowest = new double[stages + 1], highest = new double[stages + 1];
        lowest[stages] = highest[stages] = _armatureOhms;
        // A stage that passes no more than the switching current at standstill is no stage.
        for (int i = stages - 1; i >= 0; i--) highest[i] = Math.Min(MostBefore(highest[i + 1], limitAmps), _volts / _switchingAmps);
        for (int i = 0; i < stages; i++) lowest[i] = Math.Max(_armatureOhms, i == 0 ? _volts / limitAmps : LeastAfter(lowest[i - 1], limitAmps));
        return (lowest, highest);
    }
}
