using System;
using System.Device.Gpio;
using Moq;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Board.Tests;

/// <summary>Edges at a pin, counted by its events and stamped by the board's counter.</summary>
public sealed class EdgeCounterTests : IDisposable
{
    private const int Track = 4;
    private const int SecondTrack = 7;

    private readonly SoftGpioDriver _driver = new();
    private readonly GpioController _gpio;
    private readonly Mock<IBoardPins> _clock = new(MockBehavior.Strict);
    private readonly EdgeMark _mark = new();
    private int _now;

    public EdgeCounterTests()
    {
        _gpio = new GpioController(_driver);
        _clock.Setup(pins => pins.MicrosecondCounter()).Returns(() => _now);
    }

    [Fact]
    public void RisingEdges_AreCountedAndTheLastIsStamped()
    {
        EdgeCounter counter = new(_gpio, Track, PinMap.NotFitted, _clock.Object);
        for (_now = 1000; _now <= 5000; _now += 1000) Pulse(400);

        counter.Read(_mark);

        Assert.Equal((5, 5000), (_mark.Edges, _mark.LastEdgeMicroseconds));
    }

    [Fact]
    public void SecondTrackHigh_CountsDown()
    {
        EdgeCounter counter = new(_gpio, Track, SecondTrack, _clock.Object);
        Pulse(10);
        _driver.Set(SecondTrack, true);
        for (int i = 0; i < 3; i++) Pulse(10);

        counter.Read(_mark);

        Assert.Equal(-2, _mark.Edges);
    }

    [Fact]
    public void EightEdgesATurn_At25TurnsASecond_Are157RadPerSec()
    {
        PinMap map = Wiring.Build();
        EdgeSpeed speed = new(new EdgeCounter(_gpio, Track, PinMap.NotFitted, _clock.Object), map.Pulses, map.Standstill, new EdgeDoubt(map.Pulses));
        // 8 edges x 25 turns/s: one in 5 ms; 2 pi x 25 = 157.08 rad/s.
        for (int i = 0; i < 200; i++)
        {
            _now = i * 1000;
            if (i % 5 == 0) Pulse(0);
            speed.Update(_now, 1000, 0f);
        }

        Assert.True(speed.IsValid);
        Assert.Equal(157.08, speed.RadPerSec, 0.01);
    }

    public void Dispose()
    {
        _gpio.Dispose();
        _driver.Dispose();
    }

    private void Pulse(int widthMicroseconds)
    {
        int rise = _now;
        _driver.Set(Track, true);
        _now += widthMicroseconds;
        _driver.Set(Track, false);
        _now = rise;
    }
}
