using System.Collections.Generic;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Ratings;

/// <summary>Drop in the cable, dip of the bus, and how large a motor a permitted dip leaves room for.</summary>
/// <remarks>Ohm's law throughout. The peaks are those of the designed starter on the full supply: with the drop they are a little less.</remarks>
public sealed record SupplyLoading
{
    /// <summary>Resistance up to the bus, ohm.</summary>
    public required double BusOhms { get; init; }

    /// <summary>The cable from the bus to the starter; null: none is given.</summary>
    public required Cable? Cable { get; init; }

    /// <summary>Its resistance there and back, ohm.</summary>
    public double CableOhms => Cable?.Ohms ?? 0;

    /// <summary>What each current does.</summary>
    public required IReadOnlyList<SupplyPoint> Points { get; init; }

    /// <summary>Part of its voltage by which the bus may dip; null: the case does not say.</summary>
    public required double? PermittedDip { get; init; }

    /// <summary>Current from the bus that makes just this dip, A.</summary>
    public required double? PermittedLineAmps { get; init; }

    /// <summary>Rated current of the largest motor, with a starter that lets through as many times its rated current as this one, A.</summary>
    public required double? LargestRatedAmps { get; init; }

    /// <summary>The same for a motor of this kind that is switched straight on, A.</summary>
    public required double? LargestDirectRatedAmps { get; init; }

    /// <summary>True when the start dips the bus by more than it may.</summary>
    public bool IsExceeded => Points[^1].BusDipFraction > PermittedDip;

    /// <summary>Looks at a case.</summary>
    /// <param name="designed">The designed case.</param>
    /// <returns>Null where the case gives neither cable nor permitted dip.</returns>
    public static SupplyLoading? Of(CaseDesign designed)
    {
        CaseFile file = designed.File;
        Cable? cable = SupplyReader.CableOf(file);
        double? permitted = file.Has(CaseKeys.SupplyPermittedDip) ? file.Number(CaseKeys.SupplyPermittedDip) : null;
        if (cable == null && permitted == null) return null;
        double volts = designed.Design.SupplyVolts, busOhms = file.Number(CaseKeys.SupplyResistance), cableOhms = cable?.Ohms ?? 0;
        double shunt = ShuntAmps(designed), peak = designed.Design.WorstPeakAmps + shunt;
        double? rated = designed.Plate.RatedAmps, permittedAmps = permitted * volts / busOhms;
        List<SupplyPoint> points = [];
        if (rated is double ratedAmps) points.Add(Point("rated", ratedAmps + shunt));
        points.Add(Point("peak", peak));
        return new SupplyLoading
        {
            BusOhms = busOhms,
            Cable = cable,
            Points = points,
            PermittedDip = permitted,
            PermittedLineAmps = permittedAmps,
            LargestRatedAmps = permittedAmps * rated / peak,
            LargestDirectRatedAmps = permittedAmps * rated / (designed.Design.DirectStartAmps + shunt),
        };

        SupplyPoint Point(string name, double amps) =>
            new(name, amps, amps * cableOhms, amps * cableOhms / volts, amps * busOhms / volts, volts - amps * (busOhms + cableOhms));
    }

    // A design without a curve has no field circuit: what the case writes of the winding is enough. Warm it takes less.
    private static double ShuntAmps(CaseDesign designed)
    {
        bool isShunted = designed.Machine.Kind is MachineKind.Shunt or MachineKind.LongShuntCompound or MachineKind.ShortShuntCompound;
        return isShunted && designed.File.Has(CaseKeys.FieldResistance) ? designed.Design.SupplyVolts / designed.File.Number(CaseKeys.FieldResistance) : 0;
    }
}
