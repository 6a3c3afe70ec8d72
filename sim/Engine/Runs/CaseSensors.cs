using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;

namespace StarterCtl.Engine.Runs;

/// <summary>What the sensors of a case make of what is there.</summary>
internal static class CaseSensors
{
    private static readonly CaseKey[] OfSpeed =
        [CaseKeys.SensorsSpeedNoise, CaseKeys.SensorsSpeedGain, CaseKeys.SensorsSpeedOffset, CaseKeys.SensorsSpeedRange];

    private static readonly CaseKey[] OfPulses = [CaseKeys.SensorsPulsesPerRevolution, CaseKeys.SensorsPulseTimeout];

    private static readonly CaseKey[] Ranges = [CaseKeys.SensorsCurrentRange, CaseKeys.SensorsVoltageRange, CaseKeys.SensorsSpeedRange];

    private static readonly CaseKey[] All =
    [
        CaseKeys.SensorsCurrentNoise, CaseKeys.SensorsCurrentGain, CaseKeys.SensorsCurrentOffset, CaseKeys.SensorsVoltageNoise,
        CaseKeys.SensorsVoltageGain, CaseKeys.SensorsVoltageOffset, CaseKeys.SensorsFilterTime, CaseKeys.SensorsBits, .. OfSpeed, .. OfPulses, .. Ranges,
    ];

    /// <summary>Reads them.</summary>
    /// <param name="file">The case.</param>
    /// <returns>Null where every sensor is ideal.</returns>
    /// <exception cref="CaseException">A key stands alone, or beside one that it contradicts.</exception>
    public static SensorModel? Of(CaseFile file)
    {
        CaseProblem[] problems = [.. Problems(file)];
        if (problems.Length > 0) throw new CaseException(problems);
        if (!All.Any(file.Has)) return null;
        return new SensorModel
        {
            Current = Channel(file, CaseKeys.SensorsCurrentGain, CaseKeys.SensorsCurrentOffset, CaseKeys.SensorsCurrentNoise, CaseKeys.SensorsCurrentRange),
            Voltage = Channel(file, CaseKeys.SensorsVoltageGain, CaseKeys.SensorsVoltageOffset, CaseKeys.SensorsVoltageNoise, CaseKeys.SensorsVoltageRange),
            Speed = Channel(file, CaseKeys.SensorsSpeedGain, CaseKeys.SensorsSpeedOffset, CaseKeys.SensorsSpeedNoise, CaseKeys.SensorsSpeedRange),
            Bits = file.Has(CaseKeys.SensorsBits) ? file.Count(CaseKeys.SensorsBits) : 0,
            FilterSeconds = file.Number(CaseKeys.SensorsFilterTime),
            Seed = file.Count(CaseKeys.SensorsSeed),
            PulsesPerRevolution = file.Has(CaseKeys.SensorsPulsesPerRevolution) ? file.Count(CaseKeys.SensorsPulsesPerRevolution) : 0,
            PulseTimeoutSeconds = file.Number(CaseKeys.SensorsPulseTimeout),
        };
    }

    private static SensorChannel Channel(CaseFile file, CaseKey gain, CaseKey offset, CaseKey noise, CaseKey range) => new()
    {
        Gain = file.Number(gain),
        Offset = file.Number(offset),
        Noise = file.Number(noise),
        Range = file.Has(range) ? file.Number(range) : double.PositiveInfinity,
    };

    /// <summary>Keys that stand alone, or beside one that they contradict.</summary>
    public static IEnumerable<CaseProblem> Problems(CaseFile file)
    {
        if (!file.IsYes(CaseKeys.SensorsSpeed))
        {
            foreach (CaseKey key in OfSpeed.Concat(OfPulses).Where(file.Has)) yield return file.Problem(key, "it in a case without a speed sensor", "sensors.speed = \"yes\"");
            yield break;
        }

        bool hasPulses = file.Has(CaseKeys.SensorsPulsesPerRevolution);
        if (file.Has(CaseKeys.SensorsPulseTimeout) && !hasPulses) yield return file.Problem(CaseKeys.SensorsPulseTimeout, "it in a case without a pulse pick-up", $"{CaseKeys.SensorsPulsesPerRevolution.Path} in the file");
        foreach (CaseKey key in OfSpeed.Where(key => hasPulses && file.Has(key)))
        {
            yield return file.Problem(key, $"it beside {CaseKeys.SensorsPulsesPerRevolution.Path}, which is no continuous reading", "one of the two");
        }

        if (file.Has(CaseKeys.SensorsBits) && !Ranges.Any(file.Has)) yield return file.Problem(CaseKeys.SensorsBits, "it without a range", "a range of current, voltage or speed in the file");
    }
}
