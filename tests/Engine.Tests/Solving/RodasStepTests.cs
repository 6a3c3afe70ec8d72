using System;
using System.Runtime.Intrinsics;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Solving;
using Xunit;

namespace StarterCtl.Engine.Tests.Solving;

// Source: the orders that the method's authors state (Hairer and Wanner; tests/published/SOURCES.md, RODAS).
public sealed class RodasStepTests
{
    private const double Seconds = 0.08;
    private static readonly Machine Small = new(0.06, 1.5, 0.01, 0, 2e-4);
    private static readonly FluxLaw Series = new(new Magnetisation([0, 4, 8, 16], [0.005, 0.04, 0.06, 0.075])) { FieldShare = 0, ArmatureShare = 1 };

    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    [InlineData(0.06)]
    public void Step_FanOnTheShaft_IsOfOrderFour(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        Load load = new(0, 0, 4e-6);

        AssertOrderFour(Equations(machine, load), henries == 0 ? 16 : 0, Reference(machine, load));
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.06)]
    public void Step_LinearMachine_IsOfOrderFour(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries };
        (double amps, double speed) = new ClosedForm(machine, 1e-5, 0.02, 24, 1.5).At(Seconds, 0, 0);

        AssertOrderFour(Equations(machine, new Load(0.02, 1e-5, 0)), 0, (amps, speed));
    }

    // Within one piece of the curve: where pieces meet the curve bends, and no method keeps its order across.
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.06)]
    public void Step_FluxThatFollowsTheCurrent_IsOfOrderFour(double henries)
    {
        Machine machine = Small with { ArmatureHenries = henries, Flux = Series with { Curve = new Magnetisation([0, 40], [0.005, 0.2]) } };
        Load load = new(0.02, 1e-5, 0);

        AssertOrderFour(Equations(machine, load), 0, Reference(machine, load));
    }

    [Fact]
    public void At_InsideTheSteps_IsOfOrderThreeAtLeast()
    {
        Machine machine = Small with { Flux = Series with { Curve = new Magnetisation([0, 40], [0.005, 0.2]) } };
        Load load = new(0.02, 1e-5, 0);
        MachineEquations equations = Equations(machine, load);
        double[] errors = new double[4];
        for (int level = 0; level < errors.Length; level++)
        {
            int steps = 20 << level;
            double h = Seconds / steps;
            Vector256<double> state = Vector256<double>.Zero;
            CoupledReference reference = new(machine, load, 24, 1.5);
            for (int n = 0; n < steps; n++)
            {
                RodasStep step = new(equations, h, state);
                foreach (double part in new[] { 0.3, 0.7 })
                {
                    reference.Advance(0.4 * h - (part == 0.3 ? 0.1 * h : 0), 200);
                    Vector256<double> inside = step.At(part);
                    double error = Math.Abs(inside.GetElement(0) - reference.Amps) / 16 + Math.Abs(inside.GetElement(1) - reference.Speed) / 400;
                    errors[level] = Math.Max(errors[level], error);
                    Assert.Equal(inside.GetElement(0), step.Course(0).At(part), 1e-12);
                    Assert.Equal(inside.GetElement(1), step.Course(1).At(part), 1e-12);
                }

                reference.Advance(0.3 * h, 200);
                state = step.End;
            }
        }

        // Measured: 3.8 to 3.9.
        for (int level = 1; level < errors.Length; level++) Assert.InRange(Math.Log2(errors[level - 1] / errors[level]), 3, 5);
    }

    [Fact]
    public void Error_SmallStep_IsEstimatedFromAbove()
    {
        Load load = new(0, 0, 4e-6);
        RodasStep step = new(Equations(Small, load), 0.002, Vector256.Create(5.0, 100, 0, 0));

        CoupledReference reference = new(Small, load, 24, 1.5) { Amps = 5, Speed = 100 };
        reference.Advance(0.002, 10_000);
        Assert.InRange(Math.Abs(step.End.GetElement(0) - reference.Amps), 0, Math.Abs(step.Error.GetElement(0)));
        Assert.InRange(Math.Abs(step.End.GetElement(1) - reference.Speed), 0, Math.Abs(step.Error.GetElement(1)));
        Assert.InRange(Math.Abs(step.Error.GetElement(0)), 1e-12, 1e-2);
    }

    [Fact]
    public void Step_FarBeyondTheArmatureTimeConstant_DoesNotBlowUp()
    {
        MachineEquations equations = Equations(Small with { ArmatureHenries = 1e-6 }, new Load(0, 0, 4e-6));
        Vector256<double> state = Vector256<double>.Zero;

        for (int i = 0; i < 1000; i++) state = new RodasStep(equations, 0.002, state).End;

        // Settled: k w + R T(w) / k = V.
        double amps = state.GetElement(0), speed = state.GetElement(1);
        Assert.Equal(24, 0.06 * speed + 1.5 * 4e-6 * speed * speed / 0.06, 1e-9);
        Assert.Equal(4e-6 * speed * speed / 0.06, amps, 1e-9);
    }

    private static MachineEquations Equations(Machine machine, Load load)
    {
        PlantConditions conditions = new(machine, load, new Supply(24, 0), [], true, 0);
        return new MachineEquations(conditions, new Network(conditions), 1, 1, machine.Flux == null ? machine.Constant : null);
    }

    private static (double Amps, double Speed) Reference(Machine machine, Load load)
    {
        CoupledReference reference = new(machine, load, 24, 1.5);
        reference.Advance(Seconds, 40_000);
        return (reference.Amps, reference.Speed);
    }

    private static void AssertOrderFour(MachineEquations equations, double amps, (double Amps, double Speed) exact)
    {
        double[] errors = new double[4];
        for (int level = 0; level < errors.Length; level++)
        {
            Vector256<double> state = Vector256.Create(amps, 0, 0, 0);
            int steps = 40 << level;
            for (int n = 0; n < steps; n++) state = new RodasStep(equations, Seconds / steps, state).End;
            errors[level] = Math.Abs(state.GetElement(0) - exact.Amps) / 16 + Math.Abs(state.GetElement(1) - exact.Speed) / 400;
        }

        for (int level = 1; level < errors.Length; level++)
        {
            Assert.InRange(Math.Log2(errors[level - 1] / errors[level]), 3.7, 5);
        }
    }
}
