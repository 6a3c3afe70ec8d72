using StarterCtl.Engine.Ratings;
using Xunit;

namespace StarterCtl.Engine.Tests.Ratings;

/// <summary>Trip curves. Sources: tests/published/SOURCES.md, CHK-16 and CHK-17.</summary>
public sealed class TripClassTests
{
    // Currents as multiples of the one that just reaches the limit, which is 1.12 times the setting.
    [Theory]
    [Trait("Source", "CHK-16")]
    [InlineData(1.5, 0, 352.7, 0.05)]
    [InlineData(2, 0, 172.6, 0.05)]
    [InlineData(2, 0.9, 36.8, 0.05)]
    [InlineData(7.2, 0, 11.69, 0.005)]
    [InlineData(1, 0, double.PositiveInfinity, 0)]
    public void TripSeconds_TimeConstantOf600Seconds_IsThePublishedTime(double multiple, double before, double seconds, double tolerance)
    {
        double time = new TripClass("of 600 s", 600).TripSeconds(multiple * TripClass.UltimateRatio, before * TripClass.UltimateRatio);

        if (double.IsInfinity(seconds)) Assert.Equal(seconds, time);
        else Assert.Equal(seconds, time, tolerance);
    }

    [Theory]
    [Trait("Source", "CHK-17")]
    [InlineData("10A", 2, 10, 2)]
    [InlineData("10", 4, 10, 4)]
    [InlineData("20", 6, 20, 8)]
    [InlineData("30", 9, 30, 12)]
    public void TripSeconds_EveryClass_KeepsToItsLimits(string name, double above, double upTo, double minutesAt15)
    {
        TripClass one = TripClass.Named(name);

        Assert.InRange(one.TripSeconds(7.2, 0), above, upTo);
        Assert.True(double.IsInfinity(one.TripSeconds(1.05, 0)));
        Assert.InRange(one.TripSeconds(1.2, 1.05), 1, 7200);
        Assert.InRange(one.TripSeconds(1.5, 1), 1, 60 * minutesAt15);
    }

    [Fact]
    [Trait("Source", "CHK-17")]
    public void TripSeconds_Class10_IsTheWorkedExample()
    {
        TripClass ten = TripClass.Named("10");

        Assert.Equal(7.10, ten.TripSeconds(7.2, 0), 0.02);
        Assert.Equal(66.0, ten.TripSeconds(1.5, 1), 0.1);
        Assert.Equal(0, ten.TripSeconds(2, 1.2));
    }
}
