using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Export;
using StarterCtl.Engine.Runs;
using StarterCtl.Ngspice;
using Xunit;

namespace StarterCtl.Engine.Tests.Export;

/// <summary>
/// Our own solver against ngspice, which knows nothing of ours: another formulation, another method. Every file in
/// tests/published/spice is a case.
/// </summary>
public sealed class SpiceComparisonTests
{
    // Two runs of ngspice on the same netlist, another version or machine between them.
    private const double RepeatTolerance = 1e-4;

    public static TheoryData<string> Names { get; } = [.. SpiceCases.Names];

    [Fact]
    public void Table_HasEveryCaseAndNoOther()
    {
        Assert.True(SpiceCases.Names.Count >= 5);
        Assert.Equal(SpiceCases.Names, SpiceCases.Table.Select(group => group.Key).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Run_OfCase_AgreesWithTheTableOfNgspice(string name)
    {
        RunResult run = SpiceCases.Run(name).Study.Result;

        Assert.Empty(run.Faults);
        SpiceCases.AssertAgree(SpiceFigure.Of(run), SpiceCases.Table[name].ToDictionary(row => row.Figure, row => row.Value));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Run_OfCase_AgreesWithNgspiceOnThisMachine(string name)
    {
        Assert.SkipWhen(NgspiceProgram.Path == null, NgspiceProgram.WhyNot);
        (CaseFile file, StartStudy study) = SpiceCases.Run(name);

        Dictionary<string, double> solved = NgspiceProgram.Solve(SpiceNetlist.Of(SpiceSceneReader.Read(file, study, TestContext.Current.CancellationToken)));

        SpiceCases.AssertAgree(SpiceFigure.Of(study.Result), solved);
        Assert.All(SpiceCases.Table[name], row => Assert.Equal(1, solved[row.Figure] / row.Value, RepeatTolerance));
    }

    // Entries CHK-01 and CHK-13: closed forms, so that the outside reference itself is seen to be right.
    [Fact]
    public void Table_OfConstantFlux_IsTheClosedForm()
    {
        Dictionary<string, double> table = SpiceCases.Table["constant-flux"].ToDictionary(row => row.Figure, row => row.Value);

        Assert.Equal(0.2001, table["cutout_1_seconds"], 1e-4);
        Assert.Equal(0.3002, table["cutout_2_seconds"], 1e-4);
        Assert.Equal(0.3502, table["cutout_3_seconds"], 1e-4);
        Assert.Equal(700, table["peak_after_1_amps"], 0.05);
        Assert.Equal(700, table["peak_after_2_amps"], 0.05);
        Assert.Equal(625, table["peak_after_3_amps"], 0.05);
        Assert.Equal(700, table["peak_amps"], 0.05);
    }
}
