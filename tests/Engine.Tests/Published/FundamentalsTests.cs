using System;
using System.Linq;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Published;

/// <summary>The machine against printed examples. Sources: tests/published/SOURCES.md, by the number in each trait.</summary>
public sealed class FundamentalsTests
{
    private const double RpmPerRadPerSec = 30 / Math.PI;

    // Long enough for any of these machines to settle.
    private const double SettlingSeconds = 60;

    [Fact]
    [Trait("Source", "CHK-07")]
    public void Machine_HughesWaveWinding_RunsAtThePrintedSpeed()
    {
        double k = MachineConstant.FromConstruction(4, 888, 2, 0.023);
        Assert.Equal(426, MachineConstant.FromPlate(440, 50, 1, 0.28, 0), 1e-9);

        PlantSolver plant = Settle(440, 0.28, k, 50);

        Assert.Equal(50, plant.ArmatureAmps, 1e-6);
        Assert.Equal(426, plant.BackEmfVolts, 1e-6);
        Assert.Equal(626, plant.SpeedRadPerSec * RpmPerRadPerSec, 0.5);
    }

    [Fact]
    [Trait("Source", "CHK-09")]
    public void Run_TherajaLoadStep_SettlesByItselfAtTheLowerSpeed()
    {
        // The field takes 1 A of the line current at both points.
        double k = 248.6 / (1000 / RpmPerRadPerSec);
        Rig rig = new()
        {
            Machine = new Machine(k, 0.2, 0.002, 0, 0.5),
            Supply = new Supply(250, 0),
            Load = new Load(k * 7, 0, 0),
            PeakAmps = 100,
            StageCount = 3,
            Control = Rigs.Panel,
            Contactors = new Contactors(0.04, 0.015),
            DurationSeconds = 16,
            Events = [new RunEvent(8, k * 49, null, null)],
        };
        Record record = new(1000);

        RunResult run = rig.Run(record);

        Sample before = record.Samples.Last(sample => sample.TimeSeconds < 8), after = record.Samples[^1];
        Assert.Equal(1000, before.SpeedRadPerSec * RpmPerRadPerSec, 0.15);
        Assert.Equal(7, before.ArmatureAmps, 0.01);
        Assert.Equal(966.2, run.FinalRpm, 0.15);
        Assert.Equal(49, run.FinalAmps, 0.01);
        Assert.Equal(3.38, 100 * (1 - run.FinalRpm / 1000), 0.02);

        // No stage goes back in, and the controller does nothing at all.
        Assert.Equal(3, run.Cutouts.Count);
        Assert.All(record.Samples.Where(sample => sample.TimeSeconds >= 8), sample =>
        {
            Assert.Equal(0b111, sample.CloseStages);
            Assert.Equal(0b111, sample.StagesClosed);
            Assert.True(sample.CloseLine && sample.LineClosed);
        });
        Assert.DoesNotContain(run.Timeline, entry => entry.Seconds >= 8 && entry.Event == null);
        Assert.Empty(run.Faults);
    }

    [Fact]
    [Trait("Source", "CHK-10")]
    public void Machine_TherajaSeriesPoint_MakesThePrintedTorque()
    {
        // One point of a series motor: at its one current the flux is a constant.
        PlantSolver plant = Settle(220, 0.6, MachineConstant.FromConstruction(4, 800, 2, 0.025), 45);
        double speed = plant.SpeedRadPerSec;

        Assert.Equal(286.5, plant.TorqueNewtonMetres, 0.5);
        Assert.Equal(193, plant.BackEmfVolts, 1e-6);
        Assert.Equal(289.5, speed * RpmPerRadPerSec, 0.1);
        Assert.Equal(1, plant.BackEmfVolts * plant.ArmatureAmps / speed / plant.TorqueNewtonMetres, 1e-12);
        Assert.Equal(270.5, 8200 / speed, 0.3);
    }

    [Fact]
    [Trait("Source", "CHK-11")]
    public void Machine_PluggedWithAResistor_BrakesWithThePrintedCurrents()
    {
        double fullLoad = MachineConstant.RatedAmps(37300, 400, 0.746);
        double speed = 750 / RpmPerRadPerSec, shaftTorque = 37300 / speed;
        double emf = MachineConstant.FromPlate(400, fullLoad, 1, 0.2, 0);
        double added = (400 + emf) / (2 * fullLoad) - 0.2;
        Assert.Equal(125, fullLoad, 0.05);
        Assert.Equal(375, emf, 0.05);
        Assert.Equal(2.9, added, 0.005);
        Assert.Equal(475, shaftTorque, 0.5);

        // A plugged machine is one that spins against its supply. Torques are by the ratio of currents, as printed.
        PlantSolver plant = Plug(400, 0.2, emf / speed, speed, added);
        Assert.Equal(2 * fullLoad, plant.ArmatureAmps, 0.05);
        Assert.Equal(950, shaftTorque * plant.ArmatureAmps / fullLoad, 1.0);

        AdvanceToStandstill(plant);
        Assert.Equal(129.0, plant.ArmatureAmps, 0.1);
        Assert.Equal(490.2, shaftTorque * plant.ArmatureAmps / fullLoad, 0.5);
    }

    [Fact]
    [Trait("Source", "CHK-11")]
    public void Machine_SecondSetPlugged_StillPullsAtStandstill()
    {
        double k = MachineConstant.FromPlate(220, 100, 970 / RpmPerRadPerSec, 0.05, 0), speed = 1000 / RpmPerRadPerSec;
        double added = (220 + k * speed) / 200 - 0.05;
        Assert.Equal(2.1166, k, 0.0001);
        Assert.Equal(2.158, added, 0.001);

        PlantSolver plant = Plug(220, 0.05, k, speed, added);
        Assert.Equal(423.3, plant.TorqueNewtonMetres, 0.1);

        AdvanceToStandstill(plant);
        Assert.Equal(210.9, plant.TorqueNewtonMetres, 0.1);
        Assert.True(plant.Acceleration > 0);
    }

    [Fact]
    [Trait("Source", "CHK-11")]
    public void Machine_PluggedOnAStarterForTheSupplyAlone_PassesTwiceTheLimit()
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput { SupplyVolts = 220, ArmatureOhms = 0.05, PeakAmps = 200, StageCount = 1 });

        PlantSolver plant = Plug(220, 0.05, 2.1166, 1000 / RpmPerRadPerSec, design.Stages[0].SectionOhms);

        Assert.Equal(2.01, plant.ArmatureAmps / design.PeakAmps, 0.005);
    }

    [Fact]
    [Trait("Source", "CHK-12")]
    public void Machine_SalamWantedSpeed_IsReachedWithThePrintedResistance()
    {
        double k = MachineConstant.FromPlate(220, 10, 900 / RpmPerRadPerSec, 1, 0);

        double emf = Settle(220, 1, k, 10, 9.3).BackEmfVolts;

        // The printed 9.3 ohm (+-0.05) is the exact one that gives 500 r/min, seen as a voltage at 10 A.
        Assert.Equal(k * 500 / RpmPerRadPerSec, emf, 0.05 * 10);
    }

    [Theory]
    [Trait("Source", "CHK-12")]
    [InlineData(15, 606.5, 0.05)]
    [InlineData(7.5, 636.9, 0.06)]
    public void Machine_SalamAddedResistance_RunsAtThePrintedSpeed(double amps, double rpm, double tolerance)
    {
        double k = MachineConstant.FromPlate(230, 15, 650 / RpmPerRadPerSec, 0.4, 0);

        Assert.Equal(rpm, Settle(230, 0.4, k, amps, 1.0).SpeedRadPerSec * RpmPerRadPerSec, tolerance);
    }

    [Fact]
    [Trait("Source", "CHK-30")]
    public void Machine_KothariStageLeftIn_RegulatesAsPrinted()
    {
        double k = MachineConstant.FromPlate(230, 5, 1250 / RpmPerRadPerSec, 2, 0);
        double SpeedAt(double amps, params double[] sections) => Settle(230, 2, k, amps, sections).SpeedRadPerSec * RpmPerRadPerSec;

        double light = SpeedAt(1, 15), full = SpeedAt(5, 15);
        Assert.Equal(1210.2, light, 0.1);
        Assert.Equal(823.9, full, 0.1);
        Assert.Equal(46.9, 100 * (light - full) / full, 0.05);
        Assert.Equal(3.64, 100 * (SpeedAt(1) - SpeedAt(5)) / SpeedAt(5), 0.005);
    }

    [Fact]
    [Trait("Source", "CHK-30")]
    public void Machine_KothariStageLeftIn_HeatsTheResistorAsPrinted()
    {
        double k = MachineConstant.FromPlate(230, 5, 1250 / RpmPerRadPerSec, 2, 0);
        PlantSolver plant = Settle(230, 2, k, 5, 15);
        plant.CloseBooks();
        double before = plant.Energy.SectionJoules[0];

        plant.Advance(1);
        plant.CloseBooks();

        Assert.Equal(375, plant.Energy.SectionJoules[0] - before, 0.001);
    }

    private static PlantSolver Settle(double volts, double armatureOhms, double k, double loadAmps, params double[] sectionOhms)
    {
        Rig rig = new() { Machine = new Machine(k, armatureOhms, 0, 0, 0.5), Supply = new Supply(volts, 0), Load = new Load(k * loadAmps, 0, 0) };
        PlantSolver plant = rig.Plant(sectionOhms);
        plant.Advance(SettlingSeconds);
        return plant;
    }

    private static PlantSolver Plug(double volts, double armatureOhms, double k, double speed, double addedOhms)
    {
        Rig rig = new() { Machine = new Machine(k, armatureOhms, 0, 0, 5), Supply = new Supply(volts, 0), InitialSpeedRadPerSec = -speed };
        return rig.Plant(addedOhms);
    }

    private static void AdvanceToStandstill(PlantSolver plant)
    {
        while (plant.SpeedRadPerSec < 0) plant.Advance(1e-5);
    }
}
