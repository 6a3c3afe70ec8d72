using System;
using System.Device.Gpio;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>The board's inputs and outputs on the desktop's own library of pins, with a driver in memory.</summary>
public sealed class GpioTests : IDisposable
{
    private readonly SoftGpioDriver _driver = new();
    private readonly GpioController _gpio;

    public GpioTests()
    {
        _gpio = new GpioController(_driver);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Output_IsAtItsLevelAtRestOnceOpened(bool isHigh)
    {
        GpioOutput output = new(_gpio, 5, isHigh);

        Assert.Equal([isHigh ? "5 High" : "5 Low"], _driver.Writes);
        Assert.Equal(isHigh, output.Read());
    }

    [Fact]
    public void Output_DrivesThePinAndReadsItBack()
    {
        GpioOutput output = new(_gpio, 5, false);

        output.Write(true);
        Assert.True(output.Read());
        output.Write(false);
        Assert.False(output.Read());

        Assert.Equal(["5 Low", "5 High", "5 Low"], _driver.Writes);
    }

    [Fact]
    public void Output_ShowsALevelThatIsForcedFromOutside()
    {
        GpioOutput output = new(_gpio, 5, false);

        _driver.Set(5, true);

        Assert.True(output.Read());
    }

    [Fact]
    public void Rest_DrivesTheLevelAtRest()
    {
        GpioOutput output = new(_gpio, 5, true);
        output.Write(false);

        output.Rest();

        Assert.Equal("5 High", _driver.Writes[^1]);
    }

    [Fact]
    public void Rest_OfAPinThatFails_DoesNotThrow()
    {
        GpioOutput output = new(_gpio, 5, false);
        output.Write(true);
        _driver.BrokenPin = 5;

        output.Rest();

        Assert.Equal("5 High", _driver.Writes[^1]);
        Assert.Throws<InvalidOperationException>(() => output.Write(true));
    }

    [Fact]
    public void Output_AtAPinForInputsOnly_IsRefusedByTheLibrary() =>
        Assert.Throws<InvalidOperationException>(() => new GpioOutput(_gpio, SoftGpioDriver.InputOnlyPin, false));

    [Fact]
    public void Input_ShowsTheLevel()
    {
        GpioInput input = new(_gpio, 6);
        Assert.False(input.Read());

        _driver.Set(6, true);

        Assert.True(input.Read());
    }

    public void Dispose()
    {
        _gpio.Dispose();
        _driver.Dispose();
    }
}
