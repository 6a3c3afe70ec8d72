using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The trip classes of IEC 60947-4-1, by the image alone and through a whole controller: each class by the time constant that
/// the settings page names for it. Sources: tests/published/SOURCES.md, by the number in each trait.
/// </summary>
public sealed class OverloadClassTests
{
    private const float SettingAmps = 100f;
    private const int Tick = 10 * Bench.Millisecond;
    private const double TwoHours = 7200;

    /// <summary>Class, time constant, band at 7.2 times the setting from cold, longest at 1.5 times from balance; in seconds.</summary>
    public static TheoryData<string, float, double, double, double> Classes => new()
    {
        { "10A", 125f, 2, 10, 120 },
        { "10", 290f, 4, 10, 240 },
        { "20", 580f, 6, 20, 480 },
        { "30", 870f, 9, 30, 720 },
    };

    [Theory]
    [Trait("Source", "CHK-17")]
    [MemberData(nameof(Classes))]
    public void Image_EveryClass_TripsInsideItsBands(string tripClass, float tau, double over, double within72, double within15)
    {
        HeatWatch cold = Watch(tau);
        double at72 = SecondsToTrip(cold, 7.2f);
        Assert.True(at72 > over && at72 <= within72, $"class {tripClass}: {at72} s");
        Assert.Equal(ClosedForm(tau, 0, 7.2), at72, 0.11);

        HeatWatch balanced = Watch(tau);
        Assert.Equal(-1, SecondsToTrip(balanced, 1f, 20 * tau));
        double at15 = SecondsToTrip(balanced, 1.5f);
        Assert.InRange(at15, 0, within15);
        Assert.Equal(ClosedForm(tau, 1, 1.5), at15, 0.3);

        HeatWatch warm = Watch(tau);
        Assert.Equal(-1, SecondsToTrip(warm, 1.05f, TwoHours));
        Assert.InRange(SecondsToTrip(warm, 1.2f), 0, TwoHours);
    }

    [Theory]
    [Trait("Source", "CHK-17")]
    [MemberData(nameof(Classes))]
    public void Controller_EveryClass_TripsInsideItsBands(string tripClass, float tau, double over, double within72, double within15)
    {
        double at72 = SecondsToTrip(Running(tau), 7.2f);
        Assert.True(at72 > over && at72 <= within72, $"class {tripClass}: {at72} s");

        Bench balanced = Running(tau);
        Assert.Equal(-1, SecondsToTrip(balanced, 1f, 20 * tau));
        Assert.InRange(SecondsToTrip(balanced, 1.5f), 0, within15);

        Bench warm = Running(tau);
        Assert.Equal(-1, SecondsToTrip(warm, 1.05f, TwoHours));
        Assert.Equal(Phase.Running, warm.Controller.Phase);
        Assert.InRange(SecondsToTrip(warm, 1.2f), 0, TwoHours);
        warm.AssertTripped(FaultId.Overload, 1.2f * SettingAmps, SettingAmps);
    }

    [Fact]
    [Trait("Source", "CHK-17")]
    public void Image_Class10_TripsAtTheWorkedTimes()
    {
        Assert.Equal(7.10, SecondsToTrip(Watch(290f), 7.2f), 0.02 + 0.1);

        // Balance to the last: the level that running at 1.0 comes to.
        HeatWatch balanced = Watch(290f);
        balanced.Motor.Level = 1f / 1.2544f;
        Assert.Equal(66.0, SecondsToTrip(balanced, 1.5f), 0.1 + 0.1);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(1.05)]
    [InlineData(1.11)]
    public void Controller_UpTo112OfTheSetting_NeverTrips(float ratio) =>
        Assert.Equal(-1, SecondsToTrip(Running(125f), ratio, 40 * 125));

    [Fact]
    public void Controller_GeneratingCurrent_HeatsLikeADrivingOne() =>
        Assert.Equal(SecondsToTrip(Running(290f), 2f), SecondsToTrip(Running(290f), -2f), 1e-9);

    [Fact]
    public void Controller_OverloadOff_NeverTrips()
    {
        Bench bench = new Bench(settings => settings.OverloadAmps = 0f).Run();

        Assert.Equal(-1, SecondsToTrip(bench, 7.2f, 1000));
    }

    private static double ClosedForm(double tau, double before, double ratio)
    {
        const double Ultimate = 1.12 * 1.12;
        return tau * Math.Log((ratio * ratio - before * before) / (ratio * ratio - Ultimate));
    }

    private static HeatWatch Watch(float tau)
    {
        Settings settings = Bench.Chk01();
        settings.OverloadAmps = SettingAmps;
        settings.OverloadSeconds = tau;
        return new HeatWatch(settings);
    }

    private static Bench Running(float tau) => new Bench(settings =>
    {
        settings.OverloadAmps = SettingAmps;
        settings.OverloadSeconds = tau;
    }).Run();

    private static double SecondsToTrip(HeatWatch watch, float ratio, double mostSeconds = TwoHours)
    {
        Readings readings = new() { ArmatureAmps = ratio * SettingAmps };
        for (int i = 1; i * 0.01 <= mostSeconds; i++)
        {
            watch.Update(Tick, readings, 3, true);
            if (watch.IsMotorTripped) return i * 0.01;
        }

        return -1;
    }

    private static double SecondsToTrip(Bench bench, float ratio, double mostSeconds = TwoHours)
    {
        bench.Readings.ArmatureAmps = ratio * SettingAmps;
        for (int i = 1; i * 0.01 <= mostSeconds; i++)
        {
            bench.Tick(Tick);
            if (bench.Controller.Fault.IsLatched) return i * 0.01;
        }

        return -1;
    }
}
