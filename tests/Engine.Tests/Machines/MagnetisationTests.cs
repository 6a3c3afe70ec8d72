using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Machines;

public sealed class MagnetisationTests
{
    private static readonly Magnetisation Bend = new([0, 0.8, 1.3, 2, 2.5], [0.05, 1.0, 1.4, 1.69, 1.75]);

    [Fact]
    public void ConstantAt_Points_AreMet()
    {
        for (int i = 0; i < Bend.Amps.Count; i++) Assert.Equal(Bend.Constants[i], Bend.ConstantAt(Bend.Amps[i]), 1e-15);
    }

    [Fact]
    public void ConstantAt_BehindTheLastPoint_StaysThere() => Assert.Equal((1.75, 1.75), (Bend.ConstantAt(2.5), Bend.ConstantAt(40)));

    [Fact]
    public void ConstantAt_BelowZero_IsTheCurveTurnedAboutItsFirstPoint()
    {
        Assert.Equal(2 * 0.05 - 1.4, Bend.ConstantAt(-1.3), 1e-15);
        Bend.At(-0.4, out double below);
        Bend.At(0.4, out double above);
        Assert.Equal(above, below, 1e-15);
    }

    [Fact]
    public void ConstantAt_AnyRisingPoints_NeverFallsAndNeverLeavesItsNeighbours() =>
        Gen.Select(Gen.Double[0.01, 3].Array[1, 11], Gen.Double[0, 1].Array[11]).Sample((spans, rises) =>
        {
            double[] amps = new double[spans.Length + 1], constants = new double[spans.Length + 1];
            constants[0] = 0.03;
            for (int i = 0; i < spans.Length; i++)
            {
                amps[i + 1] = amps[i] + spans[i];
                constants[i + 1] = constants[i] + rises[i];
            }

            Magnetisation curve = new(amps, constants);
            double before = 0;
            for (int i = 0; i <= 1000; i++)
            {
                double at = Math.Min(amps[^1] * i / 1000, amps[^1]), constant = curve.At(at, out double slope);
                if (constant < before - 1e-12 || slope < -1e-12) return false;
                int piece = Math.Max(1, Array.FindIndex(amps, amp => amp >= at));
                if (constant > constants[piece] + 1e-12 || constant < constants[piece - 1] - 1e-12) return false;
                before = constant;
            }

            return true;
        });

    [Fact]
    public void At_Slope_IsTheChangeOfTheConstant()
    {
        for (double amps = 0.05; amps < 2.5; amps += 0.1)
        {
            Bend.At(amps, out double slope);
            Assert.Equal((Bend.ConstantAt(amps + 1e-6) - Bend.ConstantAt(amps - 1e-6)) / 2e-6, slope, 1e-7);
        }
    }

    [Fact]
    public void Proportional_RatedPoint_IsTheLineFromTheResidualToIt()
    {
        Magnetisation line = Magnetisation.Proportional(2, 1.6, 0.05);

        Assert.Equal(0.08, line.ConstantAt(0), 1e-15);
        Assert.Equal(0.84, line.ConstantAt(1), 1e-15);
        Assert.Equal(1.6, line.ConstantAt(2));
        Assert.Equal(1.6, line.ConstantAt(2.5));
    }

    [Theory]
    [InlineData(new double[] { 0 }, new double[] { 1 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 1 })]
    [InlineData(new double[] { 0.1, 1 }, new double[] { 1, 2 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 0, 2 })]
    [InlineData(new double[] { 0, 1, 1 }, new double[] { 1, 2, 3 })]
    [InlineData(new double[] { 0, 1, 2 }, new double[] { 1, 2, 1.9 })]
    [InlineData(new double[] { 0, double.NaN }, new double[] { 1, 2 })]
    [InlineData(new double[] { 0, 1 }, new double[] { 1, double.NaN })]
    public void Points_NoCurve_AreRefused(double[] amps, double[] constants) =>
        Assert.Throws<ArgumentException>(() => new Magnetisation(amps, constants));
}
