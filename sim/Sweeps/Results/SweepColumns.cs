using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Results;

/// <summary>
/// The columns of results: number and seed of the row, what differed by the quantities' paths, what came of it. Names are a contract: columns
/// are added, never renamed.
/// </summary>
public static class SweepColumns
{
    /// <summary>Number of the row, from 0.</summary>
    public const string Row = "row";

    /// <summary>Seed of the row's noise and jitter.</summary>
    public const string Seed = "seed";

    /// <summary>True when no limit of the case was passed.</summary>
    public const string Passed = "passed";

    /// <summary>Largest armature current.</summary>
    public const string Peak = "peak-current [A]";

    /// <summary>Largest torque.</summary>
    public const string Torque = "peak-torque [N m]";

    /// <summary>Time to the full supply; NaN: never.</summary>
    public const string FullSupply = "full-supply-time [s]";

    /// <summary>Time to 95 % of the final speed; NaN: never.</summary>
    public const string ToSpeed = "speed-time [s]";

    /// <summary>Speed at the end.</summary>
    public const string FinalSpeed = "final-speed [rpm]";

    /// <summary>Stages cut out.</summary>
    public const string Stages = "stages-cut-out";

    /// <summary>First fault; empty: none.</summary>
    public const string Fault = "first-fault";

    /// <summary>Phase at the end.</summary>
    public const string Phase = "phase";

    /// <summary>Hottest section; NaN: not known.</summary>
    public const string Hottest = "hottest-section [degC]";

    /// <summary>Heat of the armature circuit.</summary>
    public const string Armature = "armature-energy [J]";

    /// <summary>Heat of the brake resistor.</summary>
    public const string Brake = "brake-energy [J]";

    /// <summary>Delivered by the supply.</summary>
    public const string Supply = "supply-energy [J]";

    /// <summary>Heat of a section.</summary>
    /// <param name="section">Its number, from 1.</param>
    public static string Section(int section) => FormattableString.Invariant($"section-{section}-energy [J]");

    internal static SweepColumn[] Of(SweepHeader header) =>
    [
        new(Row, typeof(long), row => row.Row),
        new(Seed, typeof(int), row => row.Seed),
        .. header.Inputs.Select((name, i) => new SweepColumn(name, typeof(double), row => row.Inputs[i])),
        new(Passed, typeof(bool), row => row.IsPassed),
        new(Peak, typeof(double), row => row.PeakAmps),
        new(Torque, typeof(double), row => row.PeakTorqueNewtonMetres),
        new(FullSupply, typeof(double), row => row.SecondsToFullSupply),
        new(ToSpeed, typeof(double), row => row.SecondsToSpeed),
        new(FinalSpeed, typeof(double), row => row.FinalRpm),
        new(Stages, typeof(int), row => row.StagesCutOut),
        new(Fault, typeof(string), row => row.FirstFault),
        new(Phase, typeof(string), row => row.Phase),
        new(Hottest, typeof(double), row => row.HottestSectionCelsius),
        new(Armature, typeof(double), row => row.ArmatureJoules),
        new(Brake, typeof(double), row => row.BrakeJoules),
        new(Supply, typeof(double), row => row.SupplyJoules),
        .. Enumerable.Range(0, header.Sections).Select(i => new SweepColumn(Section(i + 1), typeof(double), row => row.SectionJoules[i])),
    ];

    internal static DataField FieldOf(SweepColumn column) => new(column.Name, column.Kind, false);

    internal static Task WriteAsync(ParquetRowGroupWriter group, DataField field, SweepColumn column, ReadOnlyMemory<SweepRow> rows)
    {
        object[] values = [.. Values(column, rows)];
        return column.Kind == typeof(double) ? group.WriteAsync<double>(field, Array.ConvertAll(values, value => (double)value))
            : column.Kind == typeof(long) ? group.WriteAsync<long>(field, Array.ConvertAll(values, value => (long)value))
            : column.Kind == typeof(int) ? group.WriteAsync<int>(field, Array.ConvertAll(values, value => (int)value))
            : column.Kind == typeof(bool) ? group.WriteAsync<bool>(field, Array.ConvertAll(values, value => (bool)value))
            : group.WriteAsync(field, Array.ConvertAll(values, value => (string)value));
    }

    private static IEnumerable<object> Values(SweepColumn column, ReadOnlyMemory<SweepRow> rows)
    {
        for (int i = 0; i < rows.Length; i++) yield return column.ValueOf(rows.Span[i]);
    }
}
