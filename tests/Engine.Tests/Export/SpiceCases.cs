using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Export;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Export;

/// <summary>The cases in tests/published/spice and what ngspice makes of them.</summary>
internal static class SpiceCases
{
    /// <summary>Peaks and the final current, as a part.</summary>
    public const double AmpsTolerance = 5e-4;

    /// <summary>Cutouts, s. Ours come on the next of the controller's ticks, every 20 us, each up to a tick later than the one before makes it.</summary>
    public const double SecondsTolerance = 1e-4;

    /// <summary>Final speed, as a part.</summary>
    public const double SpeedTolerance = 1e-4;

    private static readonly string Published = Path.Combine(FindRoot(), "tests", "published");

    /// <summary>Names of the case files without their ending.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.EnumerateFiles(Path.Combine(Published, "spice"), "*.toml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    /// <summary>The committed figures of ngspice, by case.</summary>
    public static ILookup<string, (string Figure, double Value)> Table { get; } = ReadTable();

    /// <summary>Reads and runs a case.</summary>
    public static (CaseFile File, StartStudy Study) Run(string name)
    {
        CaseFile file = CaseFile.Read(Path.Combine(Published, "spice", name + ".toml"));
        return (file, CaseRunner.Run(file, null, TestContext.Current.CancellationToken));
    }

    /// <summary>Holds the figures of our own run against others.</summary>
    /// <param name="own">Our own.</param>
    /// <param name="others">Those of ngspice.</param>
    public static void AssertAgree(IReadOnlyList<SpiceFigure> own, IReadOnlyDictionary<string, double> others)
    {
        Assert.Equal(others.Keys.Order(StringComparer.Ordinal), own.Select(figure => figure.Name).Order(StringComparer.Ordinal));
        string[] apart = [.. own.Where(figure => !Agrees(figure, others[figure.Name])).Select(figure => string.Create(
            CultureInfo.InvariantCulture, $"{figure.Name}: own {figure.Own}, ngspice {others[figure.Name]}"))];
        Assert.True(apart.Length == 0, string.Join('\n', apart));
    }

    private static bool Agrees(SpiceFigure figure, double other)
    {
        if (figure.Name.EndsWith("_seconds", StringComparison.Ordinal)) return Math.Abs(figure.Own - other) <= SecondsTolerance;
        return Math.Abs(figure.Own / other - 1) <= (figure.Name.EndsWith("_rpm", StringComparison.Ordinal) ? SpeedTolerance : AmpsTolerance);
    }

    private static ILookup<string, (string Figure, double Value)> ReadTable() =>
        File.ReadLines(Path.Combine(Published, "ngspice.csv"))
            .Where(line => !line.StartsWith('#')).Skip(1)
            .Select(line => line.Split(','))
            .ToLookup(cells => cells[0], cells => (cells[1], double.Parse(cells[2], CultureInfo.InvariantCulture)));

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder != null && !File.Exists(Path.Combine(folder.FullName, "StarterCtl.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("no StarterCtl.sln above the tests");
    }
}
