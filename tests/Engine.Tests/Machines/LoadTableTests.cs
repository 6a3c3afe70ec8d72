using System;
using CsCheck;
using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Machines;

public sealed class LoadTableTests
{
    private static readonly double[] Speeds = [0, 10, 30, 80, 120];
    private static readonly double[] Torques = [60, 20, 20, 90, 40];

    // Breaks away at 60 N m, falls to a floor of 20 N m, rises to a hump of 90 N m and falls again.
    [Fact]
    public void TorqueAt_RisingAndFalling_PassesThroughEveryPointAndNowhereBeyondItsNeighbours()
    {
        Load load = new(0, 0, 0) { Table = new LoadTable(Speeds, Torques) };

        for (int i = 0; i < Speeds.Length; i++) Assert.Equal(Torques[i], load.TorqueAt(Speeds[i]), 1e-12);
        for (int i = 1; i < Speeds.Length; i++)
        {
            double low = Math.Min(Torques[i - 1], Torques[i]), high = Math.Max(Torques[i - 1], Torques[i]), before = Torques[i - 1];
            for (int part = 1; part <= 50; part++)
            {
                double torque = load.TorqueAt(Speeds[i - 1] + (Speeds[i] - Speeds[i - 1]) * part / 50);
                Assert.InRange(torque, low - 1e-9, high + 1e-9);
                Assert.True((torque - before) * (Torques[i] - Torques[i - 1]) >= -1e-9);
                before = torque;
            }
        }
    }

    [Fact]
    public void TorqueAt_BesideTheOtherParts_AddsThemAndIsMirrored()
    {
        Load load = new(5, 0.1, 0.01) { Table = new LoadTable(Speeds, Torques), HoistNewtonMetres = 7 };

        Assert.Equal(65, load.HoldingNewtonMetres);
        Assert.Equal(65 + 7, load.TorqueAt(0));
        Assert.Equal(5 + 3 + 9 + 20 + 7, load.TorqueAt(30), 1e-12);
        Assert.Equal(-(5 + 3 + 9 + 20) + 7, load.TorqueAt(-30), 1e-12);
        Assert.Equal(5 + 20 + 400 + 40 + 7, load.TorqueAt(200), 1e-12);
    }

    // Slopes that jump would cost the adaptive method its order.
    [Fact]
    public void At_AnyTable_HasTheSlopeOfItsOwnDifferences() =>
        Gen.Select(Gen.Double[0, 100].Array[5], Gen.Double[0.001, 119.9]).Sample((torques, speed) =>
        {
            LoadTable table = new(Speeds, torques);
            const double Step = 1e-6;

            table.At(speed, out double slope);
            double difference = (table.At(speed + Step, out _) - table.At(speed - Step, out _)) / (2 * Step);

            Assert.Equal(difference, slope, 1e-4);
        }, iter: 200);

    [Theory]
    [InlineData(new double[] { 0 }, new double[] { 1 })]
    [InlineData(new double[] { 0, 10 }, new double[] { 1, 2, 3 })]
    [InlineData(new double[] { 1, 10 }, new double[] { 1, 2 })]
    [InlineData(new double[] { 0, 10, 10 }, new double[] { 1, 2, 3 })]
    [InlineData(new double[] { 0, 10 }, new double[] { 1, -2 })]
    [InlineData(new double[] { 0, 10 }, new double[] { 1, double.NaN })]
    public void Table_OfPointsThatAreNone_IsRefused(double[] speeds, double[] torques) =>
        Assert.Throws<ArgumentException>(() => new LoadTable(speeds, torques));
}
