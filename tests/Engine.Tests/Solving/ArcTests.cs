using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

/// <summary>
/// Contacts that part with current and draw an arc of constant voltage. Derived here, with a speed and a back-EMF E that stand still:
/// L di/dt = -(U + R i) with U = Varc + Vb + E - V. So i = (I0 + U/R) e^(-t R/L) - U/R, which is zero at t = L/R ln(1 + I0 R/U), and
/// integrating the equation itself gives the charge (L I0 - U t)/R, whose product with Varc is the arc's heat.
/// </summary>
public sealed class ArcTests
{
    private const double K = 1.69;
    private const double Ohms = 1.38;
    private const double Henries = 0.03;

    // So heavy that no current moves it.
    private static readonly Machine Still = new(K, 0.18, Henries, 2, 1e12);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(2, 0)]
    [InlineData(2, 1e-15)]
    public void Advance_LineParts_CurrentDiesAsTheClosedFormSays(double brushVolts, double fan)
    {
        PlantSolver plant = Settled(Still with { BrushDropVolts = brushVolts }, 40, 300, fan);
        double emf = K * 40, first = (220 - brushVolts - emf) / Ohms, opposing = 300 + brushVolts + emf - 220;
        double outSeconds = Henries / Ohms * Math.Log(1 + first * Ohms / opposing), half = outSeconds / 2;
        Assert.Equal(first, plant.ArmatureAmps, 1e-6 * first);

        plant.Change(plant.Conditions with { LineClosed = false });
        Assert.Equal(ArcPlace.Line, plant.Conditions.Arc);
        plant.Advance(half);
        Assert.Equal((first + opposing / Ohms) * Math.Exp(-half * Ohms / Henries) - opposing / Ohms, plant.ArmatureAmps, 1e-6 * first);
        Assert.Equal(plant.ArmatureAmps, plant.LineAmps);
        plant.Advance(half * 0.9999);
        Assert.InRange(plant.ArmatureAmps, 1e-4, 0.1);
        plant.Advance(half * 0.0002);

        Assert.Equal((0, ArcPlace.None), (plant.ArmatureAmps, plant.Conditions.Arc));
        Accounts.AssertBalanced(plant, 1e-7);
        Assert.Equal(300 * (Henries * first - opposing * outSeconds) / Ohms, plant.Energy.ArcJoules, 1e-4);
    }

    // 220 V less 67.6 V of back-EMF and 2 V of brushes are more than the arc's 60 V: the rest drives a current for ever.
    [Fact]
    public void Advance_SupplyAboveTheArc_ItStandsUntilTheContactClosesAgain()
    {
        PlantSolver plant = Settled(Still, 40, 60);

        plant.Change(plant.Conditions with { LineClosed = false });
        plant.Advance(10);

        Assert.Equal((220 - 2 - 60 - K * 40) / Ohms, plant.ArmatureAmps, 1e-6);
        Assert.Equal((false, ArcPlace.Line), (plant.Conditions.LineClosed, plant.Conditions.Arc));
        plant.Change(plant.Conditions with { LineClosed = true });
        plant.Advance(10);
        Assert.Equal((220 - 2 - K * 40) / Ohms, plant.ArmatureAmps, 1e-6);
        Assert.Equal(ArcPlace.None, plant.Conditions.Arc);
    }

    // A generator on the brake resistor: its current is negative, and E takes the place of the supply.
    [Fact]
    public void Advance_BrakeParts_CurrentDiesAsTheClosedFormSays()
    {
        PlantConditions conditions = new(Still, Load.None, new Supply(220, 0), [], false, 0) { BrakeOhms = 1.2, BrakeClosed = true, ArcVolts = 150 };
        PlantSolver plant = new(conditions, 40);
        plant.Advance(2);
        double first = (K * 40 - 2) / Ohms, opposing = 150 + 2 - K * 40, outSeconds = Henries / Ohms * Math.Log(1 + first * Ohms / opposing);
        Assert.Equal(-first, plant.ArmatureAmps, 1e-6);

        plant.Change(plant.Conditions with { BrakeClosed = false });
        plant.Advance(outSeconds * 0.9999);
        Assert.InRange(plant.ArmatureAmps, -0.1, -1e-4);
        plant.Advance(outSeconds * 0.0002);

        Assert.Equal(0, plant.ArmatureAmps);
        Accounts.AssertBalanced(plant, 1e-9);
        Assert.Equal(150 * (Henries * first - opposing * outSeconds) / Ohms, plant.Energy.ArcJoules, 1e-6);
    }

    [Theory]
    [InlineData(60, (220 - 2 - 60 - K * 40) / Ohms)]
    [InlineData(160, 0)]
    public void Change_NoInductance_TheArcTakesWhatTheSupplyLeavesOrIsOutAtOnce(double arcVolts, double amps)
    {
        PlantSolver plant = Settled(Still with { ArmatureHenries = 0 }, 40, arcVolts);

        plant.Change(plant.Conditions with { LineClosed = false });

        Assert.Equal(amps, plant.ArmatureAmps, 1e-9);
        Assert.Equal(amps > 0, plant.Conditions.Arc == ArcPlace.Line);
    }

    // A load that drives turns the shaft up through the arc until the back-EMF leaves the arc too little; from there it falls freely.
    [Theory]
    [InlineData(0)]
    [InlineData(0.003)]
    public void Advance_LoadDrivesTheShaftUp_TheArcGoesOutOnceTheBackEmfIsHigh(double henries)
    {
        PlantSolver plant = Settled(new Machine(K, 0.18, henries, 2, 0.5), 0, 60, seconds: 0.01);
        plant.Change(plant.Conditions with { LineClosed = false, Load = new Load(0, 0, 0) { HoistNewtonMetres = -20 } });

        while (plant.ArmatureAmps > 0) plant.Advance(0.001);
        Assert.Equal(ArcPlace.None, plant.Conditions.Arc);
        Assert.Equal((220 - 2 - 60) / K, plant.SpeedRadPerSec, 0.3);
        double speed = plant.SpeedRadPerSec;
        plant.Advance(1);

        Assert.Equal(0, plant.ArmatureAmps);
        Assert.Equal(speed + 20 / 0.5, plant.SpeedRadPerSec, 1e-9);
        Accounts.AssertBalanced(plant, 1e-9);
    }

    [Fact]
    public void Change_BrakeClosesBesideTheArc_TakesTheCurrentOver()
    {
        PlantSolver plant = new(new PlantConditions(Still, Load.None, new Supply(220, 0), [1.2], true, 0) { BrakeOhms = 1.2, ArcVolts = 60 }, 40);
        plant.Advance(1);
        plant.Change(plant.Conditions with { LineClosed = false });
        plant.Advance(1);

        plant.Change(plant.Conditions with { BrakeClosed = true });
        plant.Advance(1);

        Assert.Equal(ArcPlace.None, plant.Conditions.Arc);
        Assert.Equal(-(K * 40 - 2) / Ohms, plant.ArmatureAmps, 1e-9);
        Assert.Equal(0, plant.LineAmps);
    }

    // A series machine's flux dies with its current: no closed form, but the account holds and the arc ends.
    [Theory]
    [InlineData(0.004)]
    [InlineData(0)]
    public void Advance_SeriesMachine_BalancesItsEnergyThroughTheArc(double henries)
    {
        FluxLaw law = new(new Magnetisation([0, 30, 60, 100], [0.06, 0.7, 1.1, 1.4])) { FieldShare = 0, ArmatureShare = 1 };
        PlantSolver plant = Settled(new Machine(1.1, 0.3, henries, 2, 1.5) { Flux = law }, 0, 300, seconds: 0.5);
        Assert.True(plant.ArmatureAmps > 20);

        plant.Change(plant.Conditions with { LineClosed = false });
        plant.Advance(0.2);

        Assert.Equal((0, ArcPlace.None), (plant.ArmatureAmps, plant.Conditions.Arc));
        Assert.Equal(henries > 0, plant.Energy.ArcJoules > 0);
        Accounts.AssertBalanced(plant, 1e-6);
    }

    [Fact]
    public void Advance_AnyMachineAndArc_BalancesItsEnergyAndIsTheSameInManySteps() =>
        Gen.Select(Rigs.Any, Gen.Double[0.05, 1.5], Gen.Double[0.001, 0.4]).Sample((rig, part, seconds) =>
        {
            double volts = rig.Supply.OpenCircuitVolts, ohms = volts / rig.PeakAmps!.Value, noLoad = volts / rig.Machine.Constant;
            PlantSolver whole = rig.Plant(ohms), many = rig.Plant(ohms);
            foreach (PlantSolver plant in new[] { whole, many })
            {
                plant.Change(plant.Conditions with { ArcVolts = part * volts });
                plant.Advance(seconds);
                plant.Change(plant.Conditions with { LineClosed = false });
            }

            whole.Advance(0.3);
            for (int i = 0; i < 300; i++) many.Advance(0.001);

            Assert.Equal(many.SpeedRadPerSec / noLoad, whole.SpeedRadPerSec / noLoad, 1e-6);
            Assert.Equal(many.ArmatureAmps / rig.PeakAmps.Value, whole.ArmatureAmps / rig.PeakAmps.Value, 1e-6);
            Accounts.AssertBalanced(whole, 1e-6);
            Accounts.AssertBalanced(many, 1e-6);
            Assert.True(whole.Energy.ArcJoules >= 0);
        }, iter: 200);

    private static PlantSolver Settled(Machine machine, double speed, double arcVolts, double fan = 0, double seconds = 1)
    {
        PlantConditions conditions = new(machine, new Load(0, 0, fan), new Supply(220, 0), [Ohms - 0.18], true, 0) { ArcVolts = arcVolts };
        PlantSolver plant = new(conditions, speed);
        plant.Advance(seconds);
        return plant;
    }
}
