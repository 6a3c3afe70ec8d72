using System;
using System.Linq;
using CsCheck;
using Xunit;

namespace StarterCtl.Firmware.Tests.Inputs;

/// <summary>Median, first-order filter and debouncing: what passes, and how much later. Expected values are arithmetic.</summary>
public sealed class FilterTests
{
    [Theory]
    [InlineData(1, 0)]
    [InlineData(3, 1)]
    [InlineData(5, 2)]
    public void Median_OfARamp_IsLateByHalfItsSamples(int samples, int lateSamples)
    {
        Median median = new(samples);
        for (int i = 0; i < 10; i++) median.Next(10 * i);

        Assert.Equal(10 * (10 - lateSamples), median.Next(100));
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(5, 2)]
    public void Median_AsManyWrongSamplesAsItBears_DoNotShow(int samples, int wrong)
    {
        Median median = new(samples);
        for (int i = 0; i < 10; i++) median.Next(2000);

        for (int i = 0; i < wrong; i++) Assert.Equal(2000, median.Next(4095));
        for (int i = 0; i < 10; i++) Assert.Equal(2000, median.Next(2000));
    }

    [Fact]
    public void Median_RandomCounts_IsTheMiddleOne() =>
        Gen.Int[0, 4095].Array[5, 30].Sample(
            counts =>
            {
                Median median = new(5);
                int shown = Array.ConvertAll(counts, median.Next)[^1];
                Assert.Equal(counts.TakeLast(5).Order().ElementAt(2), shown);
            },
            iter: 500, threads: 1);

    [Fact]
    public void Median_Restarted_TakesTheNextForAll()
    {
        Median median = new(5);
        for (int i = 0; i < 10; i++) median.Next(2000);

        median.Restart();

        Assert.Equal(7, median.Next(7));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(1000)]
    [InlineData(7000)]
    public void FirstOrder_OfARamp_IsLateByTheTimeConstantAtAnyPeriod(int periodMicroseconds)
    {
        FirstOrder filter = new(5000);
        float shown = 0;
        int microseconds = 0;
        for (; microseconds < 200_000; microseconds += periodMicroseconds) shown = filter.Next(microseconds * 0.001f, periodMicroseconds);

        Assert.Equal((microseconds - periodMicroseconds - 5000) * 0.001f, shown, 1e-3f);
    }

    [Fact]
    public void FirstOrder_Step_IsThereTo63PercentAfterTheTimeConstant()
    {
        FirstOrder filter = new(5000);
        filter.Next(0f, 0);
        float shown = 0;
        for (int i = 0; i < 500; i++) shown = filter.Next(1f, 10);

        // 1 - 1/e
        Assert.Equal(0.632f, shown, 1e-3f);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void FirstOrder_NoTimeConstant_PassesEverything(int timeConstantMicroseconds)
    {
        FirstOrder filter = new(timeConstantMicroseconds);
        filter.Next(1f, 0);

        Assert.Equal(9f, filter.Next(9f, 0));
    }

    [Fact]
    public void FirstOrder_TimeRunsBackwards_HoldsItsOutput()
    {
        FirstOrder filter = new(5000);
        filter.Next(1f, 0);

        Assert.Equal(1f, filter.Next(9f, -4999));
    }

    [Fact]
    public void Debounce_ContactBounces_CountsOnceItHasStoodForItsTime()
    {
        Debounce contact = new(false, 3000, 3000);
        bool[] read = [true, false, true, true, false, true, true, true, true, true];

        bool[] shown = [.. read.Select(isClosed => { contact.Update(isClosed, 1000); return contact.IsClosed; })];

        // It closes for good at the sixth reading; three milliseconds later it counts.
        Assert.Equal([false, false, false, false, false, false, false, false, true, true], shown);
    }

    [Fact]
    public void Debounce_BouncesBackRightAfterItCounted_NeedsTheWholeTimeAgain()
    {
        Debounce contact = new(false, 2000, 2000);
        foreach (bool isClosed in new[] { true, true, true, false }) contact.Update(isClosed, 1000);
        Assert.True(contact.IsClosed);

        contact.Update(false, 1999);
        Assert.True(contact.IsClosed);

        contact.Update(false, 1);
        Assert.False(contact.IsClosed);
    }

    [Fact]
    public void Debounce_NoTimeToOpen_OpensOnTheSameReading()
    {
        Debounce contact = new(true, 20_000, 0);

        contact.Update(false, 0);

        Assert.False(contact.IsClosed);
    }

    [Fact]
    public void Debounce_RandomReadings_NeverCountsAStateThatDidNotStand() =>
        Gen.Bool.Array[1, 200].Sample(
            read =>
            {
                Debounce contact = new(false, 4000, 2000);
                for (int i = 0; i < read.Length; i++)
                {
                    bool before = contact.IsClosed;
                    contact.Update(read[i], 1000);
                    if (contact.IsClosed == before) continue;
                    int needed = contact.IsClosed ? 5 : 3;
                    Assert.True(i + 1 >= needed && read[(i + 1 - needed)..(i + 1)].All(isClosed => isClosed == contact.IsClosed));
                }
            },
            iter: 500, threads: 1);
}
