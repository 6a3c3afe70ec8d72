using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>A case with the numbers of the shipped line shaft, and changes to it.</summary>
internal static class LineShaftCase
{
    private static readonly (string Key, string Value)[] Keys =
    [
        ("supply.voltage", "220 V"),
        ("supply.resistance", "10 mohm"),
        ("motor.rated-power", "15 kW"),
        ("motor.rated-voltage", "220 V"),
        ("motor.rated-current", "77 A"),
        ("motor.rated-speed", "1250 rpm"),
        ("motor.armature-resistance", "0.17 ohm"),
        ("motor.armature-inductance", "4 mH"),
        ("motor.brush-drop", "2 V"),
        ("motor.inertia", "0.45 kg m2"),
        ("load.inertia", "2.2 kg m2"),
        ("load.constant-torque", "45 N m"),
        ("load.viscous-torque", "0.06 N m s/rad"),
        ("load.fan-torque", "0.0015 N m s2/rad2"),
        ("starter.peak-current", "155 A"),
        ("starter.switching-current", "90 A"),
        ("starter.slack", "last section"),
        ("control.period", "1 ms"),
        ("control.confirm-time", "2 ms"),
        ("control.minimum-dwell", "100 ms"),
        ("control.maximum-stage-time", "4 s"),
        ("contactors.closing-time", "40 ms"),
        ("contactors.opening-time", "15 ms"),
        ("limits.start-time", "4 s"),
        ("run.duration", "8 s"),
    ];

    /// <summary>The case with keys changed, added, or taken out where the value is null. Values go without quotes, unless a number is a text.</summary>
    public static CaseFile With(params (string Key, string? Value)[] changes) => With([], changes);

    /// <summary>The same with events, each of them the inside of an inline table.</summary>
    public static CaseFile With(string[] events, params (string Key, string? Value)[] changes)
    {
        Dictionary<string, string?> values = Keys.ToDictionary(pair => pair.Key, pair => (string?)pair.Value);
        foreach ((string key, string? value) in changes) values[key] = value;
        IEnumerable<string> lines = values.Where(pair => pair.Value != null).Select(pair => $"{pair.Key} = {Written(pair.Value!)}");
        return CaseFile.Parse("shaft.toml", string.Join('\n', [.. lines, .. events.Select(text => "[[event]]\n" + text)]) + "\n");
    }

    /// <summary>Runs a case; the test's own end ends it.</summary>
    public static StartStudy Run(CaseFile file) => CaseRunner.Run(file, null, TestContext.Current.CancellationToken);

    /// <summary>The problems of a case that cannot be run.</summary>
    public static IReadOnlyList<CaseProblem> Refused(CaseFile file) => Assert.Throws<CaseException>(() => Run(file)).Problems;

    /// <summary>One check of a verdict.</summary>
    public static LimitCheck Check(StartStudy study, string name) => Assert.Single(study.Verdict.Checks, check => check.Name == name);

    private static string Written(string value) => value[0] is '[' or '"' || double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? value : $"\"{value}\"";
}
