using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Runs;

/// <summary>From a machine's smooth flux over two currents to the straight pieces over one that the controller holds.</summary>
public static class ControllerCurve
{
    // Pieces this straight, as a part of the curve's end, gain nothing from another point.
    private const double Straight = 1e-6;

    private const int Probes = 16;

    /// <summary>What the controller is told; null where it is to take the flux as constant.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="isFieldMeasured">True when the current of its field circuit is measured.</param>
    /// <param name="peakAmps">Permitted peak armature current, A.</param>
    /// <param name="highestAmps">Armature current up to which a curve over it is sampled, A.</param>
    public static FluxSetup? Of(CaseMachine machine, bool isFieldMeasured, double peakAmps, double highestAmps)
    {
        if (machine.Flux is not FluxLaw law) return null;
        // What an armature ampere adds while the machine drives; the controller has one ratio for both directions.
        double share = law.ArmatureShare - law.ReactionRatio, ratedField = law.FieldShare * machine.RatedFieldAmps;
        double unloaded = law.Curve.ConstantAt(ratedField);
        if (machine.Field != null && isFieldMeasured)
        {
            List<double> field = Points(law.Curve, 0, law.FieldShare, double.PositiveInfinity);
            return Setup(FluxSource.FieldCurrent, field, fieldAmps => law.ConstantAt(fieldAmps, 0), unloaded) with { ReactionRatio = 0 - share / law.FieldShare };
        }

        if (!law.FollowsArmature) return null;
        if (share <= 0) return Falling(law.ConstantAt(machine.RatedFieldAmps, peakAmps), peakAmps, unloaded);
        List<double> armature = Points(law.Curve, ratedField, share, machine.Kind == MachineKind.Series ? double.PositiveInfinity : highestAmps);
        return Setup(FluxSource.ArmatureCurrent, armature, amps => law.ConstantAt(machine.RatedFieldAmps, amps), unloaded);
    }

    // The controller's curve cannot fall. The constant at the permitted peak decides every cutout rightly and is too small below
    // it, so that no stage is cut out early.
    private static FluxSetup Falling(double constant, double peakAmps, double unloaded) =>
        new(FluxSource.ArmatureCurrent, [0, peakAmps], [constant, constant]) { UnloadedConstant = unloaded };

    private static FluxSetup Setup(FluxSource source, List<double> amps, Func<double, double> constantAt, double unloaded)
    {
        while (amps.Count < Settings.MostCurvePoints)
        {
            (int piece, double error) = MostBent(amps, constantAt);
            if (error <= Straight * constantAt(amps[^1])) break;
            amps.Insert(piece, (amps[piece - 1] + amps[piece]) / 2);
        }

        return new FluxSetup(source, amps, [.. amps.Select(constantAt)]) { UnloadedConstant = unloaded };
    }

    // The curve's own points, on the axis of the current that the controller reads.
    private static List<double> Points(Magnetisation curve, double offsetAmps, double share, double highestAmps)
    {
        List<double> amps = [0];
        foreach (double exciting in curve.Amps)
        {
            double current = (exciting - offsetAmps) / share;
            if (current > 0 && current < highestAmps) amps.Add(current);
        }

        bool isCut = offsetAmps + share * highestAmps <= curve.LastAmps;
        if (isCut || amps.Count < 2) amps.Add(highestAmps);
        return amps;
    }

    private static (int Piece, double Error) MostBent(List<double> amps, Func<double, double> constantAt)
    {
        (int Piece, double Error) most = (1, 0);
        for (int i = 1; i < amps.Count; i++)
        {
            double from = constantAt(amps[i - 1]), to = constantAt(amps[i]);
            for (int probe = 1; probe < Probes; probe++)
            {
                double part = (double)probe / Probes;
                double error = Math.Abs(constantAt(amps[i - 1] + part * (amps[i] - amps[i - 1])) - from - part * (to - from));
                if (error > most.Error) most = (i, error);
            }
        }

        return most;
    }
}
