using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Ratings;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>What contactors make and break. Source of the categories: tests/published/SOURCES.md, CHK-18; the rest by Ohm's law.</summary>
public sealed class ContactorDemandTests
{
    [Fact]
    [Trait("Source", "CHK-18")]
    public void Categories_MultiplesAndTimeConstants_AreTheStandards()
    {
        (double, double)[] figures = [.. new[] { UtilisationCategory.Dc1, UtilisationCategory.Dc3, UtilisationCategory.Dc5 }.Select(one => (one.Multiple, one.TimeConstantSeconds * 1000))];

        Assert.Equal([(1.5, 1), (4, 2.5), (4, 15)], figures);
        // A motor of 350 A in DC-3: 1400 A at 262.5 V on 250 V; the peaks of twice its current lie inside.
        Assert.Equal(350, UtilisationCategory.Dc3.RatedAmpsFor(1400));
        Assert.Equal(262.5, UtilisationCategory.VoltageRatio * 250);
        Assert.InRange(UtilisationCategory.Dc3.RatedAmpsFor(700), 0, 350);
    }

    [Theory]
    [InlineData(MachineKind.Shunt, "DC-3")]
    [InlineData(MachineKind.SeparatelyExcited, "DC-3")]
    [InlineData(MachineKind.PermanentMagnet, "DC-3")]
    [InlineData(MachineKind.Series, "DC-5")]
    [InlineData(MachineKind.LongShuntCompound, "DC-5")]
    public void Category_OfAKind_IsTheOneForItsMotor(MachineKind kind, string name) => Assert.Equal(name, UtilisationCategory.Of(kind).Name);

    // The test circuit at its own current and time constant stores what its rated current says.
    [Fact]
    public void RatedAmpsForEnergy_TestCircuitItself_IsItsRatedCurrent()
    {
        UtilisationCategory dc3 = UtilisationCategory.Dc3;
        double ohms = 1.05 * 220 / (4 * 77);

        Assert.Equal(77, dc3.RatedAmpsForEnergy(dc3.TimeConstantSeconds * ohms, 4 * 77, 220), 1e-9);
    }

    // Line shaft: R1 = 218 V/155 A = 1.40645 ohm, with 10 mohm of supply 1.41645 ohm; trip 1.5 x 155 A = 232.5 A through 0.18 ohm.
    [Fact]
    public void Line_MakesAndBreaks_WhatOhmsLawSays()
    {
        ContactorDemand line = Demands()[0];

        Assert.Equal(("line", 77.0, 220.0, 220.0), (line.Name, line.CarriedAmps, line.PeakVolts, line.RatedVolts));
        Assert.Equal([155, 155, 232.5], [line.Switchings[0].Amps, line.Switchings[2].Amps, line.Switchings[3].Amps]);
        Assert.Equal(220, line.Switchings[2].Volts);
        Assert.Equal(0.004 / 1.41645, line.Switchings[2].TimeConstantSeconds, 1e-7);
        Assert.Equal(0.004 / 0.18, line.Switchings[1].TimeConstantSeconds, 1e-7);
        Assert.Equal(232.5 * 0.18 + 2, line.Switchings[3].Volts, 1e-3);
        // A stop while running: back-EMF 208.8 V at 50.91 A, as the README has it, so 11.2 V of 220 V drive the current.
        Assert.Equal(50.91, line.Switchings[1].Amps, 0.02);
        Assert.Equal(220 - 208.8, line.Switchings[1].Volts, 0.05);
        // 4 mH at 232.5 A store 108 J; DC-3 of 77 A stores 2.5 ms x 231 V x 308 A / 2 = 89 J.
        Assert.Equal(77 * 108.11 / 88.94, line.RatedAmps, 0.05);
        Assert.Contains("magnetic energy", line.Decides, StringComparison.Ordinal);
    }

    [Fact]
    public void Stage_Breaks_IntoItsSectionWhichTakesTheCurrentOver()
    {
        IReadOnlyList<ContactorDemand> demands = Demands();
        IReadOnlyList<DesignedStage> stages = CaseDesign.Of(LineShaftCase.With()).Design.Stages;

        Assert.Equal(["line", "stage 1", "stage 2", "stage 3", "stage 4"], demands.Select(one => one.Name));
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(232.5 * stages[i].SectionOhms, demands[i + 1].PeakVolts, 1e-3);
            Assert.All(demands[i + 1].Switchings, one => Assert.Equal(0, one.TimeConstantSeconds));
            Assert.Equal(77, demands[i + 1].RatedAmps);
        }
    }

    // E = 208.8 V on 1.6 + 0.17 ohm, less 2 V of brushes: 116.8 A; released at 60 of 1274 r/min.
    [Fact]
    public void Brake_MakesAndBreaks_WhatTheBackEmfDrives()
    {
        ContactorDemand brake = Demands(("brake.resistance", "1.6 ohm"), ("brake.release-speed", "60 rpm"))[^1];

        Assert.Equal("brake", brake.Name);
        Assert.Equal((208.8 - 2) / 1.77, brake.Switchings[0].Amps, 0.05);
        Assert.Equal((208.8 * 60 / 1274 - 2) / 1.77, brake.Switchings[1].Amps, 0.05);
        Assert.Equal(0.004 / 1.77, brake.Switchings[0].TimeConstantSeconds, 1e-7);
        Assert.Equal(0, brake.CarriedAmps);
    }

    // A load of 60 N m that drives the shaft: 60 / 1.565 = 38 A flow back, against a back-EMF above the supply.
    [Fact]
    public void Line_LoadThatDrivesTheMachine_BreaksWhatItFeedsBack()
    {
        IReadOnlyList<ContactorDemand> demands = Demands(
            ("load.constant-torque", null), ("load.fan-torque", null), ("load.viscous-torque", null), ("load.hoist-torque", "-60 N m"),
            ("brake.resistance", "1.6 ohm"), ("brake.release-speed", "60 rpm"));

        double amps = 60 / 1.5654;
        Assert.Equal(amps, demands[0].Switchings[1].Amps, 0.05);
        Assert.Equal(amps * 0.18 + 2, demands[0].Switchings[1].Volts, 0.05);
        Assert.Equal(220 + amps * 0.18 + 2, demands[^1].Switchings[0].Volts, 0.05);
        Assert.Equal(220 + amps * 0.18 + 2, demands[0].PeakVolts, 0.05);
    }

    [Theory]
    [InlineData("[\"110 A\"]", 0)]
    [InlineData("[\"80 A\"]", 1)]
    [InlineData("[\"110 A\", \"70 A\", \"80 A\", \"80 A\", \"80 A\"]", 1)]
    [InlineData("[\"50 A\"]", 5)]
    public void AtHand_TooSmall_IsSaidOfEach(string given, int tooSmall)
    {
        CaseRatings ratings = Ratings(("contactors.rated-current", given));

        Assert.Equal(tooSmall, ratings.Contactors.Count(one => one.IsExceeded));
        Assert.Equal(tooSmall, ratings.Excesses.Count);
    }

    private static IReadOnlyList<ContactorDemand> Demands(params (string Key, string? Value)[] changes) =>
        Ratings([.. changes, ("contactors.rated-current", "[\"1000 A\"]")]).Contactors;

    private static CaseRatings Ratings(params (string Key, string? Value)[] changes) =>
        CaseRatings.Of(CaseDesign.Of(LineShaftCase.With(changes)), TestContext.Current.CancellationToken)!;
}
