using StarterCtl.Engine.Machines;
using Xunit;

namespace StarterCtl.Engine.Tests.Machines;

/// <summary>Resistance of copper over temperature. Sources: tests/published/SOURCES.md, by the number in each trait.</summary>
public sealed class CopperTemperatureTests
{
    // The second: 0.200 ohm at 20 degC and 0.210 ohm 7.75 K above a coolant of 25 degC.
    [Theory]
    [InlineData(20, 75, 1.2157, 1e-4)]
    [InlineData(20, 32.75, 1.05, 5e-6)]
    [InlineData(20, 125, 1.4118, 1e-4)]
    [InlineData(20, 21, 1.00393, 1e-5)]
    [Trait("Source", "CHK-24")]
    public void ResistanceRatio_FromColdToHot_IsThePublishedOne(double from, double to, double expected, double tolerance) =>
        Assert.Equal(expected, CopperTemperature.ResistanceRatio(from, to), tolerance);

    [Fact]
    public void ResistanceRatio_ThereAndBack_IsOne() =>
        Assert.Equal(1, CopperTemperature.ResistanceRatio(20, 110) * CopperTemperature.ResistanceRatio(110, 20), 1e-15);
}
