using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>One case of each kind of machine, figures our own, and changes to them.</summary>
internal static class MachineCases
{
    private const string Rest = """

        [load]
        inertia = "1.2 kg m2"
        constant-torque = "30 N m"

        [starter]
        switching-current = "120 %"
        peak-current = "200 %"

        [run]
        duration = "6 s"
        """;

    private const string Curve = """
        curve-currents = ["0 A", "0.3 A", "0.6 A", "0.9 A", "1.2 A", "1.5 A"]
        curve-emfs = ["7 V", "82 V", "148 V", "190 V", "218 V", "232 V"]
        curve-speed = "1000 rpm"
        """;

    private const string ShuntPlate = """
        rated-power = "7.5 kW"
        rated-voltage = "220 V"
        rated-current = "40 A"
        rated-speed = "1000 rpm"
        armature-resistance = "0.35 ohm"
        armature-inductance = "6 mH"
        brush-drop = "2 V"
        inertia = "0.35 kg m2"
        """;

    /// <summary>A field on its own 110 V, with a curve.</summary>
    public const string SeparatelyExcited = $"""
        [supply]
        voltage = "220 V"

        [motor]
        kind = "separately excited"
        {ShuntPlate}

        [field]
        supply-voltage = "110 V"
        resistance = "100 ohm"
        inductance = "20 H"
        {Curve}
        {Rest}
        """;

    /// <summary>The same machine with a field winding for its own supply, and armature reaction.</summary>
    public const string Shunt = $"""
        [supply]
        voltage = "220 V"

        [motor]
        kind = "shunt"
        {ShuntPlate}

        [field]
        resistance = "200 ohm"
        inductance = "40 H"
        armature-reaction = 0.002
        {Curve}
        {Rest}
        """;

    /// <summary>A travel motor.</summary>
    public const string Series = $"""
        [supply]
        voltage = "220 V"

        [motor]
        kind = "series"
        rated-power = "12 kW"
        rated-voltage = "220 V"
        rated-current = "64 A"
        rated-speed = "750 rpm"
        armature-resistance = "0.2 ohm"
        armature-inductance = "4 mH"
        brush-drop = "2 V"
        inertia = "0.5 kg m2"

        [field]
        curve-currents = ["0 A", "20 A", "40 A", "64 A", "100 A", "160 A"]
        curve-emfs = ["6 V", "88 V", "150 V", "197.5 V", "235 V", "258 V"]
        curve-speed = "750 rpm"

        [series-field]
        resistance = "120 mohm"
        inductance = "3 mH"
        {Rest}
        """;

    /// <summary>A press drive, long shunt, cumulative.</summary>
    public const string Compound = $"""
        [supply]
        voltage = "220 V"

        [motor]
        kind = "compound"
        rated-power = "10 kW"
        rated-voltage = "220 V"
        rated-current = "52 A"
        rated-speed = "900 rpm"
        armature-resistance = "0.25 ohm"
        armature-inductance = "4 mH"
        brush-drop = "2 V"
        inertia = "0.5 kg m2"

        [field]
        resistance = "180 ohm"
        inductance = "30 H"
        armature-reaction = 0.001
        curve-currents = ["0 A", "0.4 A", "0.8 A", "1.2 A", "1.6 A", "2.4 A", "3 A"]
        curve-emfs = ["6 V", "80 V", "144 V", "184 V", "209 V", "230 V", "236 V"]
        curve-speed = "900 rpm"

        [series-field]
        resistance = "50 mohm"
        inductance = "1 mH"
        turns-ratio = 0.006
        {Rest}
        """;

    /// <summary>A bench motor with magnets that are weaker when warm.</summary>
    public const string PermanentMagnet = $"""
        [supply]
        voltage = "48 V"

        [motor]
        kind = "permanent magnet"
        rated-current = "12 A"
        armature-resistance = "0.3 ohm"
        armature-inductance = "0.8 mH"
        inertia = "0.004 kg m2"
        constant = "0.14 V s/rad"
        magnet-temperature-coefficient = -0.002

        [load]
        constant-torque = "0.4 N m"

        [starter]
        switching-current = "120 %"
        peak-current = "200 %"

        [run]
        duration = "4 s"
        """;

    /// <summary>The short-shunt form of <see cref="Compound"/>.</summary>
    public static string ShortShunt => With(Compound, "series-field", "connection = \"short shunt\"");

    /// <summary>The same press with a few turns against its shunt winding, faster at its rated point.</summary>
    public static string Differential =>
        With(Without(Compound, "turns-ratio", "rated-speed"), "series-field", "turns-ratio = 0.001", "sense = \"differential\"")
            .Replace("[motor]\n", "[motor]\nrated-speed = \"1030 rpm\"\n", StringComparison.Ordinal);

    /// <summary>Every kind, by name.</summary>
    public static TheoryData<string> Names => ["separately excited", "shunt", "series", "long shunt", "short shunt", "differential", "permanent magnet"];

    /// <summary>The text of a kind.</summary>
    public static string Text(string name) => name switch
    {
        "separately excited" => SeparatelyExcited,
        "shunt" => Shunt,
        "series" => Series,
        "long shunt" => Compound,
        "short shunt" => ShortShunt,
        "differential" => Differential,
        _ => PermanentMagnet,
    };

    /// <summary>A case with lines added to a table, which is added too where it is missing.</summary>
    public static string With(string text, string table, params string[] lines)
    {
        string header = $"[{table}]\n", added = string.Join('\n', lines) + "\n";
        return text.Contains(header, StringComparison.Ordinal) ? text.Replace(header, header + added, StringComparison.Ordinal) : $"{text}\n{header}{added}";
    }

    /// <summary>A case without the lines of a key.</summary>
    public static string Without(string text, params string[] keys)
    {
        IEnumerable<string> lines = text.Split('\n').Where(line => !Array.Exists(keys, key => line.StartsWith(key + " =", StringComparison.Ordinal)));
        return string.Join('\n', lines);
    }

    /// <summary>A case read and designed, ready to run.</summary>
    public static PreparedRun Prepare(string text) => CaseRunner.Prepare(CaseFile.Parse("case.toml", text));

    /// <summary>The machine of a case.</summary>
    public static CaseMachine Machine(string text) => Prepare(text).Designed.Machine;

    /// <summary>The problems of a case that cannot be run, one a line.</summary>
    public static string Refused(string text) => Assert.Throws<CaseException>(() => Prepare(text)).Message;
}
