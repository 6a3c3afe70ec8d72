using System;

namespace StarterCtl.Core.Tests.Invariants;

/// <summary>What the machine's equations say about the back-EMF, in double precision and from the books alone.</summary>
internal sealed class BackEmf(Settings settings)
{
    /// <summary>Back-EMF at the flux of now, from the speed, V.</summary>
    internal double Now(Readings readings) => ConstantNow(readings) * readings.SpeedRadPerSec;

    /// <summary>
    /// Back-EMF that would stand at this speed with the flux of the permitted peak, V; NaN where nothing tells it. Where the
    /// speed is unknown and the settings allow it, from the voltage equation with the resistance that is in.
    /// </summary>
    internal double AtPeak(Readings readings, int stagesIn)
    {
        if (settings.SpeedSensorFitted && readings.SpeedValid) return ConstantAtPeak(readings) * readings.SpeedRadPerSec;
        if (settings.SpeedLoss != SpeedLossAction.FinishStart) return double.NaN;
        double amps = readings.ArmatureAmps;
        // An open circuit shows the supply and nothing of the machine.
        if (Math.Abs(amps) <= settings.ZeroAmps) return double.NaN;
        double brushVolts = amps >= 0 ? settings.BrushDropVolts : -settings.BrushDropVolts;
        return (readings.SupplyVolts - brushVolts - amps * Ohms(stagesIn)) * ConstantAtPeak(readings) / ConstantNow(readings);
    }

    /// <summary>Armature circuit with these stages cut out, ohm.</summary>
    internal double Ohms(int stagesIn)
    {
        double ohms = settings.StageOhms[0];
        for (int i = 0; i < settings.StageCount; i++)
        {
            if ((stagesIn & (1 << i)) != 0) ohms -= (double)settings.StageOhms[i] - settings.StageOhms[i + 1];
        }

        return ohms;
    }

    private double ConstantNow(Readings readings) => settings.FluxSource switch
    {
        FluxSource.FieldCurrent => OnCurve(Net(readings.FieldAmps, readings.ArmatureAmps)),
        FluxSource.ArmatureCurrent => OnCurve(Math.Abs((double)readings.ArmatureAmps)),
        _ => settings.MachineConstant,
    };

    private double ConstantAtPeak(Readings readings) => settings.FluxSource switch
    {
        FluxSource.FieldCurrent => OnCurve(Net(readings.FieldAmps, settings.PeakAmps)),
        FluxSource.ArmatureCurrent => OnCurve(settings.PeakAmps),
        _ => settings.MachineConstant,
    };

    // Reaction takes away in both directions; a series winding, with its negative ratio, adds with the current's sign.
    private double Net(double fieldAmps, double armatureAmps) =>
        Math.Abs(fieldAmps) - settings.ReactionRatio * (settings.ReactionRatio > 0 ? Math.Abs(armatureAmps) : armatureAmps);

    private double OnCurve(double amps)
    {
        ReadOnlySpan<float> x = settings.CurveAmps.AsSpan(0, settings.CurvePoints);
        ReadOnlySpan<float> y = settings.CurveConstants.AsSpan(0, settings.CurvePoints);
        if (amps <= x[0]) return y[0];
        for (int i = 1; i < x.Length; i++)
        {
            if (amps <= x[i]) return y[i - 1] + (y[i] - (double)y[i - 1]) * (amps - x[i - 1]) / ((double)x[i] - x[i - 1]);
        }

        return y[^1];
    }
}
