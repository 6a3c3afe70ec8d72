using System;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class CharacteristicTests
{
    private const double RadPerSec = Math.PI / 30;

    /// <summary>As in SeriesStaticsTests: supply, ohms, amps, r/min; then ohms, amps and flux ratio; r/min as printed.</summary>
    public static TheoryData<double[], double[], double, double> Pairs { get; } = new()
    {
        { [250, 0.15, 110, 600], [0.15, 50, 0.0155 / 0.024], 965, 0.5 },
        { [400, 0.25, 25, 1200], [3, 15, 0.7], 1545.6, 0.5 },
        { [230, 0.2, 10, 1000], [2.2, 8, 0.8], 1164.5, 0.05 },
    };

    [Fact]
    public void AtSpeed_ConstantFlux_IsTheClosedForm()
    {
        Characteristic straight = Characteristic.Of(Conditions(new Machine(1.5, 0.2, 0.01, 2, 1)));

        OperatingPoint point = straight.AtSpeed(100)!;

        // (220 - 2 - 1.5 x 100) / (0.2 + 0.05 + 0.3).
        Assert.Equal(68 / 0.55, point.ArmatureAmps, 1e-9);
        Assert.Equal(1.5 * 68 / 0.55, point.TorqueNewtonMetres, 1e-9);
        Assert.Equal(100, point.SpeedRadPerSec, 1e-9);
        Assert.Equal(218 / 0.55, straight.StandstillAmps, 1e-9);
        Assert.Null(straight.AtSpeed(150));
        Assert.Equal(60, straight.AtTorque(90)!.ArmatureAmps, 1e-9);
        Assert.Null(straight.AtTorque(1.5 * 218 / 0.55 + 1));
    }

    [Fact]
    public void Carrying_ConstantFluxAndViscousLoad_IsTheClosedForm()
    {
        Characteristic straight = Characteristic.Of(Conditions(new Machine(1.5, 0.2, 0.01, 2, 1)));

        OperatingPoint point = straight.Carrying(new Load(40, 0.1, 0))!;

        // k (218 - k w) / R = 40 + 0.1 w.
        Assert.Equal((1.5 * 218 / 0.55 - 40) / (0.1 + 1.5 * 1.5 / 0.55), point.SpeedRadPerSec, 1e-9);
        Assert.Equal(0, straight.Carrying(Load.None)!.ArmatureAmps);
        Assert.Null(straight.Carrying(new Load(1000, 0, 0)));
    }

    [Theory]
    [Trait("Source", "CHK-08")]
    [Trait("Source", "CHK-29")]
    [MemberData(nameof(Pairs))]
    public void AtAmps_SeriesMotor_MatchesThePrintedSpeeds(double[] first, double[] second, double rpm, double tolerance)
    {
        Machine machine = Series(first, second);
        Characteristic alone = Characteristic.Of(Alone(machine, first[0], 0)), onStage = Characteristic.Of(Alone(machine, first[0], second[0] - first[1]));

        Assert.Equal(first[3], alone.AtAmps(first[2]).Rpm, 1e-9);
        Assert.Equal(rpm, onStage.AtAmps(second[1]).Rpm, tolerance);
        Assert.Equal(1, onStage.AtSpeed(rpm * RadPerSec)!.ArmatureAmps / second[1], 2 * tolerance / rpm);
        Assert.Equal(second[1], onStage.AtTorque(onStage.AtAmps(second[1]).TorqueNewtonMetres)!.ArmatureAmps, 1e-9);
    }

    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Carrying_EveryKind_IsWhereTheSolverComesToRest(string name)
    {
        RunSetup setup = MachineCases.Prepare(MachineCases.Text(name)).Setup;
        setup = setup with { Supply = setup.Supply with { SourceOhms = 0.05 } };
        PlantConditions full = setup.OnFullSupply(setup.Load);

        OperatingPoint point = Characteristic.Of(full).Carrying(setup.Load)!;
        PlantSolver plant = new(full, point.SpeedRadPerSec);
        plant.Advance(200);

        Assert.Equal(1, point.SpeedRadPerSec / plant.SpeedRadPerSec, 1e-6);
        Assert.Equal(1, point.ArmatureAmps / plant.ArmatureAmps, 1e-6);
        Assert.Equal(1, point.BackEmfVolts / plant.BackEmfVolts, 1e-6);
        Assert.Equal(1, point.TorqueNewtonMetres / plant.TorqueNewtonMetres, 1e-6);
    }

    [Theory]
    [MemberData(nameof(MachineCases.Names), MemberType = typeof(MachineCases))]
    public void Of_DesignInput_HasTheDesignedPeaksAndCutouts(string name)
    {
        CaseDesign designed = MachineCases.Prepare(MachineCases.Text(name)).Designed;

        for (int i = 0; i < designed.Design.StageCount; i++)
        {
            DesignedStage stage = designed.Design.Stages[i];
            Characteristic curve = designed.Input.CharacteristicOn(stage.TotalOhms);
            double begins = i == 0 ? 0 : designed.Design.Stages[i - 1].CutoutRpm!.Value;
            Assert.Equal(begins, curve.AtAmps(stage.PeakAmps).Rpm, 1e-6);
            Assert.Equal(stage.CutoutRpm!.Value, curve.AtAmps(stage.SwitchingAmps).Rpm, 1e-6);
        }
    }

    private static PlantConditions Conditions(Machine machine) =>
        new(machine, Load.None, new Supply(220, 0.05), [0.3, 0.7], true, 2);

    private static PlantConditions Alone(Machine machine, double volts, double addedOhms) =>
        new(machine, Load.None, new Supply(volts, 0), [addedOhms], true, 0);

    private static Machine Series(double[] first, double[] second)
    {
        double constant = (first[0] - first[2] * first[1]) / (first[3] * RadPerSec);
        Magnetisation curve = new([0, second[1], first[2]], [0.03 * constant, second[2] * constant, constant]);
        return new Machine(constant, first[1], 0, 0, 1) { Flux = new FluxLaw(curve) { FieldShare = 0, ArmatureShare = 1 } };
    }
}
