using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using StarterCtl.Engine.Tests.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

public sealed class PlantSolverTests
{
    private static readonly Machine Shaft = new(1.69, 0.18, 0.003, 2, 2.5);

    [Fact]
    public void Advance_HeldShaft_StaysAtRestUntilTheLoadIsOvercome()
    {
        // Until k Ia = Tc the current rises as in a plain coil, (V - Vb)/R (1 - e^(-t R/L)).
        const double Ohms = 1.4, Torque = 120;
        double final = 218 / Ohms, tau = 0.003 / Ohms, breakAmps = Torque / 1.69;
        double breakSeconds = -tau * Math.Log(1 - breakAmps / final);
        PlantSolver plant = At(Shaft, new Load(Torque, 0, 0), 0, Ohms - 0.18);

        plant.Advance(breakSeconds * 0.999);
        Assert.Equal(0, plant.SpeedRadPerSec);
        Assert.Equal(final * (1 - Math.Exp(-breakSeconds * 0.999 / tau)), plant.ArmatureAmps, 1e-9);
        Assert.Equal(plant.TorqueNewtonMetres, plant.LoadTorqueNewtonMetres);

        // From the closed-form moment of breakaway the moving machine's closed form goes on.
        plant.Advance(breakSeconds * 0.001 + 0.004);
        (double amps, double speed) = new ClosedForm(Shaft, 0, Torque, 218, Ohms).At(0.004, breakAmps, 0);
        Assert.Equal(amps, plant.ArmatureAmps, 1e-7);
        Assert.Equal(speed, plant.SpeedRadPerSec, 1e-7);
    }

    [Fact]
    public void Advance_HeldShaftThroughBreakawayInOneStep_IsTheSameAsInMany()
    {
        PlantSolver whole = At(Shaft, new Load(120, 0, 0), 0, 1.2), many = At(Shaft, new Load(120, 0, 0), 0, 1.2);

        whole.Advance(0.05);
        for (int i = 0; i < 1000; i++) many.Advance(0.00005);

        Assert.Equal(many.ArmatureAmps, whole.ArmatureAmps, 1e-8);
        Assert.Equal(many.SpeedRadPerSec, whole.SpeedRadPerSec, 1e-8);
    }

    [Fact]
    public void Change_HeldShaftUnderPartOfItsTorque_StaysAtRest()
    {
        PlantSolver plant = At(Shaft, new Load(320, 0, 0), 0, 1.0, 0.2);
        plant.Advance(0.02);
        Assert.InRange(plant.TorqueNewtonMetres, 260, 270);

        // Shorting the small section is not enough, shorting both is.
        plant.Change(plant.Conditions with { StagesClosed = 2 });
        Assert.Equal(0, plant.Acceleration);
        plant.Advance(0.02);
        Assert.Equal(0, plant.SpeedRadPerSec);

        plant.Change(plant.Conditions with { StagesClosed = 3 });
        plant.Advance(0.02);
        Assert.True(plant.SpeedRadPerSec > 0);
    }

    [Fact]
    public void Advance_LoadAboveLockedTorque_NeverTurns()
    {
        PlantSolver plant = At(Shaft, new Load(400, 0, 0.1), 0, 1.2);

        for (int i = 0; i < 100; i++) plant.Advance(0.1);

        Assert.Equal(0, plant.SpeedRadPerSec);
        Assert.Equal(218 / 1.38, plant.ArmatureAmps, 1e-9);
        Assert.Equal(0, plant.Acceleration);
    }

    // The motor spins faster than it does without load: it feeds back until k w = V + Vb, passes no current until
    // k w = V - Vb, and then motors.
    [Theory]
    [InlineData(0)]
    [InlineData(0.003)]
    public void Advance_SpinningFasterThanNoLoad_GeneratesThenCoastsThenMotors(double henries)
    {
        const double Torque = 50, Ohms = 0.18;
        Machine machine = Shaft with { ArmatureHenries = henries };
        PlantSolver plant = At(machine, new Load(Torque, 0, 0), 150);
        if (henries == 0) Assert.Equal((220 + 2 - 1.69 * 150) / Ohms, plant.ArmatureAmps, 1e-9);
        plant.Advance(0.02);
        Assert.True(plant.ArmatureAmps < -20);

        double step = 1e-4, silentFrom = 0, silentTo = 0, seconds = 0.02;
        while (plant.ArmatureAmps <= 0)
        {
            plant.Advance(step);
            seconds += step;
            if (plant.ArmatureAmps != 0) continue;
            if (silentFrom == 0) silentFrom = seconds;
            silentTo = seconds;
            Assert.InRange(plant.BackEmfVolts, 218, 222);
            Assert.Equal(-Torque / 2.5, plant.Acceleration, 1e-12);
        }

        // Through the dead band only the load slows the shaft. Inductance keeps the current up into the band a little.
        double band = 2 * 2 / 1.69 * 2.5 / Torque;
        Assert.InRange(silentTo - silentFrom, band - (henries == 0 ? 2.5 * step : 0.02), band + 2 * step);
        plant.Advance(5);
        Assert.Equal(Torque / 1.69, plant.ArmatureAmps, 1e-6);
    }

    [Fact]
    public void Advance_GeneratingWithoutInductance_StopsAtTheClosedFormTime()
    {
        const double Torque = 50, Ohms = 0.18;
        Machine machine = Shaft with { ArmatureHenries = 0 };

        // Speed falls to (V + Vb)/k on the way to (V + Vb)/k - R Tc/k^2.
        double tau = 2.5 * Ohms / (1.69 * 1.69), target = 222 / 1.69, below = Ohms * Torque / (1.69 * 1.69);
        double seconds = tau * Math.Log((150 - target + below) / below);

        PlantSolver early = At(machine, new Load(Torque, 0, 0), 150), late = At(machine, new Load(Torque, 0, 0), 150);
        early.Advance(seconds - 1e-6);
        late.Advance(seconds + 1e-6);

        Assert.InRange(early.ArmatureAmps, -0.01, -1e-6);
        Assert.Equal(0, late.ArmatureAmps);
        late.CloseBooks();
        Assert.True(late.Energy.SupplyJoules < 0);
    }

    [Fact]
    public void Advance_CurrentDiesToRoundingAtTheDeadBandsEdge_GoesOn()
    {
        // Without inductance the current came to nothing at 0.1155 V and 3e-16 V more of driving voltage: taken up again
        // and again at one instant.
        Machine machine = new(0.03, 0.06660110743362153, 0, 0.11553594638337086, 5.120578930383938E-05);
        Load load = new(0, 0, 1.5825394338487188E-08);
        PlantSolver plant = new(new PlantConditions(machine, load, new Supply(12, 0), [12 / 13.523408051523244], true, 0), 27.0 / 23 * 12 / 0.03);

        for (int i = 0; i < 30; i++) plant.Advance(1.0 / 45);

        // Through the dead band and on to what the fan takes.
        Assert.InRange(plant.BackEmfVolts, 11, 12 - machine.BrushDropVolts);
        Assert.InRange(plant.ArmatureAmps, 0.07, 0.09);
    }

    [Fact]
    public void Advance_CoastDownOnConstantTorque_StopsAtTheClosedFormTime()
    {
        PlantSolver plant = At(Shaft, new Load(50, 0, 0), 100, lineClosed: false);

        // w = w0 - Tc t / J.
        plant.Advance(2.5 * 100 / 50 - 1e-6);
        Assert.Equal(50 / 2.5 * 1e-6, plant.SpeedRadPerSec, 1e-9);
        plant.Advance(2e-6);
        plant.CloseBooks();

        Assert.Equal(0, plant.SpeedRadPerSec);
        Assert.Equal(0.5 * 2.5 * 100 * 100, plant.Energy.LoadJoules, 1e-6);
        Assert.Equal(0, plant.Energy.SupplyJoules);
    }

    [Fact]
    public void Advance_CoastDownOnConstantAndViscousTorque_StopsAtTheClosedFormTime()
    {
        PlantSolver plant = At(Shaft, new Load(50, 0.4, 0), 100, lineClosed: false);
        double seconds = 2.5 / 0.4 * Math.Log(1 + 0.4 * 100 / 50);

        plant.Advance(seconds - 1e-6);
        Assert.InRange(plant.SpeedRadPerSec, 1e-6, 1e-4);
        plant.Advance(2e-6);

        Assert.Equal(0, plant.SpeedRadPerSec);
    }

    [Fact]
    public void Advance_CoastDownOnConstantAndFanTorque_StopsAtTheClosedFormTime()
    {
        PlantSolver plant = At(Shaft, new Load(50, 0, 0.01), 100, lineClosed: false);
        double seconds = 2.5 / Math.Sqrt(50 * 0.01) * Math.Atan(100 * Math.Sqrt(0.01 / 50));

        plant.Advance(seconds - 1e-5);
        Assert.InRange(plant.SpeedRadPerSec, 1e-5, 1e-3);
        plant.Advance(2e-5);

        Assert.Equal(0, plant.SpeedRadPerSec);
    }

    [Fact]
    public void Advance_AnyCoastDown_NeverReverses() =>
        Gen.Select(Rigs.Any, Gen.Double[-1, 1], Gen.Double[1e-4, 0.3]).Sample((rig, part, step) =>
        {
            double noLoadSpeed = rig.Supply.OpenCircuitVolts / rig.Machine.Constant, speed = part * noLoadSpeed;
            double noLoadJoules = 0.5 * rig.Machine.InertiaKgM2 * noLoadSpeed * noLoadSpeed;
            PlantSolver plant = new(new PlantConditions(rig.Machine, rig.Load, rig.Supply, [], false, 0), speed);
            double before = Math.Abs(speed);
            for (int i = 0; i < 40; i++)
            {
                plant.Advance(step);
                double now = plant.SpeedRadPerSec * Math.Sign(speed);
                // A load that bends is solved to the method's error; how far it falls below that says nothing.
                Assert.InRange(now, 0, before + 10 * PlantSolver.StepTolerance * noLoadSpeed);
                Assert.Equal(0, plant.ArmatureAmps);
                before = now;
            }

            plant.CloseBooks();
            double lost = plant.InitialKineticJoules - plant.KineticJoules;
            Assert.Equal(lost, plant.Energy.LoadJoules, 1e-7 * noLoadJoules);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(1e-6)]
    public void Advance_FanAllButGone_IsTheLinearMachine(double viscous)
    {
        PlantSolver linear = At(Shaft, new Load(20, viscous, 0), 0, 1.2), bent = At(Shaft, new Load(20, viscous, 1e-13), 0, 1.2);

        linear.Advance(1);
        bent.Advance(1);
        linear.CloseBooks();
        bent.CloseBooks();

        Assert.Equal(1, bent.ArmatureAmps / linear.ArmatureAmps, 1e-7);
        Assert.Equal(1, bent.SpeedRadPerSec / linear.SpeedRadPerSec, 1e-7);
        Assert.Equal(1, bent.PeakAmps / linear.PeakAmps, 1e-7);
        Assert.Equal(1, bent.Energy.SupplyJoules / linear.Energy.SupplyJoules, 1e-7);
        Assert.Equal(1, bent.Energy.ArmatureJoules / linear.Energy.ArmatureJoules, 1e-7);
        Assert.Equal(1, bent.Energy.LoadJoules / linear.Energy.LoadJoules, 1e-7);
    }

    [Theory]
    [InlineData(0, 0.03)]
    [InlineData(0.004, 0.03)]
    [InlineData(0, 0.5)]
    [InlineData(0.004, 0.5)]
    public void PeakAmps_PeakBetweenSamples_IsThatOfAHundredTimesFinerSamples(double fan, double step)
    {
        PlantSolver coarse = At(Shaft, new Load(20, 0, fan), 0, 1.2), fine = At(Shaft, new Load(20, 0, fan), 0, 1.2);

        double sampled = 0;
        coarse.Advance(step);
        for (int i = 0; i < 100; i++)
        {
            fine.Advance(step / 100);
            sampled = Math.Max(sampled, fine.ArmatureAmps);
        }

        Assert.True(coarse.PeakAmps > coarse.ArmatureAmps * 1.0001);
        Assert.Equal(1, fine.PeakAmps / coarse.PeakAmps, 1e-6);
        Assert.InRange(sampled, 0.98 * coarse.PeakAmps, coarse.PeakAmps * (1 + 1e-6));
    }

    [Fact]
    public void Change_NoInductance_LetsTheCurrentJump()
    {
        PlantSolver plant = At(Shaft with { ArmatureHenries = 0 }, Load.None, 50, 0.5, 0.2);
        double emf = 1.69 * 50;
        Assert.Equal((218 - emf) / 0.88, plant.ArmatureAmps, 1e-9);

        plant.Change(plant.Conditions with { StagesClosed = 1 });
        Assert.Equal((218 - emf) / 0.38, plant.ArmatureAmps, 1e-9);
        Assert.Equal(plant.ArmatureAmps, plant.PeakAmps);

        plant.Change(plant.Conditions with { LineClosed = false });
        Assert.Equal(0, plant.ArmatureAmps);
        Assert.Equal(50, plant.SpeedRadPerSec);
        Assert.Equal(0, plant.Energy.ArcJoules);
    }

    [Fact]
    public void Change_InductanceAndLineOpens_BooksTheArc()
    {
        PlantSolver plant = At(Shaft, Load.None, 0, 1.2);
        plant.Advance(0.01);
        double magnetic = plant.MagneticJoules;
        double amps = plant.ArmatureAmps;

        plant.Change(plant.Conditions with { StagesClosed = 1 });
        Assert.Equal(amps, plant.ArmatureAmps);
        plant.Change(plant.Conditions with { LineClosed = false });
        plant.Change(plant.Conditions with { StagesClosed = 0 });

        Assert.Equal(0.5 * 0.003 * amps * amps, magnetic, 1e-12);
        Assert.Equal(magnetic, plant.Energy.ArcJoules, 1e-12);
        Assert.Equal(0, plant.ArmatureAmps);
    }

    [Fact]
    public void RestartPeak_AfterThePeak_BeginsAtThePresentCurrent()
    {
        PlantSolver plant = At(Shaft, Load.None, 0, 1.2);
        plant.Advance(0.5);
        Assert.True(plant.PeakAmps > plant.ArmatureAmps);

        plant.RestartPeak();

        Assert.Equal(plant.ArmatureAmps, plant.PeakAmps);
    }

    // V Ia = Vb |Ia| + R Ia^2 + La Ia dIa/dt + k w Ia and k w Ia = J w dw/dt + TL w, at every instant.
    [Fact]
    public void Advance_AnyMachineAtAnyInstant_BalancesThePower() =>
        Gen.Select(Rigs.Any, Gen.Double[-0.3, 1.3], Gen.Double[1e-5, 0.1]).Sample((rig, part, step) =>
        {
            Machine machine = rig.Machine;
            double speed = part * rig.Supply.OpenCircuitVolts / machine.Constant;
            double section = rig.Supply.OpenCircuitVolts / rig.PeakAmps!.Value;
            PlantSolver plant = new(new PlantConditions(machine, rig.Load, rig.Supply, [section], true, 0), speed);
            double scale = rig.Supply.OpenCircuitVolts * rig.PeakAmps!.Value;
            for (int i = 0; i < 30; i++)
            {
                plant.Advance(step);
                double amps = plant.ArmatureAmps, ohms = machine.ArmatureOhms + section;
                double electrical = machine.BrushDropVolts * Math.Abs(amps) + ohms * amps * amps
                    + machine.ArmatureHenries * amps * plant.AmpsSlope + plant.BackEmfVolts * amps;
                double mechanical = machine.InertiaKgM2 * plant.SpeedRadPerSec * plant.Acceleration
                    + plant.LoadTorqueNewtonMetres * plant.SpeedRadPerSec;
                Assert.Equal(electrical / scale, plant.TerminalVolts * amps / scale, 1e-6);
                Assert.Equal(mechanical / scale, plant.TorqueNewtonMetres * plant.SpeedRadPerSec / scale, 1e-6);
            }
        });

    private static PlantSolver At(Machine machine, Load load, double speed, params double[] sectionOhms) =>
        new(new PlantConditions(machine, load, new Supply(220, 0), sectionOhms, true, 0), speed);

    private static PlantSolver At(Machine machine, Load load, double speed, bool lineClosed) =>
        new(new PlantConditions(machine, load, new Supply(220, 0), [], lineClosed, 0), speed);
}
