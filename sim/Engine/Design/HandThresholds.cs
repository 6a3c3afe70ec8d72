using System.Collections.Generic;

namespace StarterCtl.Engine.Design;

/// <summary>Checks thresholds that were given by hand.</summary>
internal static class HandThresholds
{
    /// <summary>Refuses thresholds that no starter can have: wrong in number, out of reach, or not rising.</summary>
    /// <param name="cutoutVolts">Back-EMF of each cutout, V.</param>
    /// <param name="drivingVolts">Supply less brush drop, V.</param>
    /// <param name="stageCount">Number of stages.</param>
    public static void Check(IReadOnlyList<double> cutoutVolts, double drivingVolts, int stageCount)
    {
        if (cutoutVolts.Count != stageCount)
        {
            throw new DesignException(DesignQuantity.CutoutVoltages, $"{cutoutVolts.Count} thresholds", $"{stageCount}, one for each stage");
        }

        for (int i = 0; i < stageCount; i++)
        {
            if (cutoutVolts[i] >= drivingVolts)
            {
                throw new DesignException(
                    DesignQuantity.CutoutVoltages,
                    $"{Volts(cutoutVolts[i])} for stage {i + 1}, which no back-EMF reaches",
                    $"below supply less brush drop, {Volts(drivingVolts)}");
            }

            if (cutoutVolts[i] <= 0)
            {
                throw new DesignException(DesignQuantity.CutoutVoltages, $"{Volts(cutoutVolts[i])} for stage {i + 1}, which would be cut out at standstill", "above 0 V");
            }

            if (i > 0 && cutoutVolts[i] <= cutoutVolts[i - 1])
            {
                throw new DesignException(
                    DesignQuantity.CutoutVoltages,
                    $"{Volts(cutoutVolts[i])} for stage {i + 1}, not above the {Volts(cutoutVolts[i - 1])} of stage {i}",
                    "thresholds that rise from stage to stage");
            }
        }
    }

    private static string Volts(double volts) => Text.Number(volts) + " V";
}
