using System;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Memory;

/// <summary>The heat of motor and resistor over a power loss.</summary>
public sealed class HeatStoreTests
{
    private const int Minute = 60_000_000;

    private readonly MemoryChip _chip = new(256);

    [Fact]
    public void FirstPowerUp_IsCold() => Assert.Equal((0f, 0f), Restored());

    [Fact]
    public void Level_OfATrippedMotor_RefusesTheStartAfterAPowerLoss()
    {
        new HeatStore(_chip, 0).Step(1000, true, Heat(1.02f, 0.4f));
        Controller controller = new(FakeBoard.Chk01(settings => settings.OverloadAmps = 100f));
        new HeatStore(_chip, 0).Restore(controller.Heat);

        controller.Tick(1000, new Readings { SupplyVolts = 250f, SpeedValid = true }, new Outputs());

        Assert.Equal((1.02f, 0.4f), Restored());
        Assert.Equal(FaultId.Overload, controller.Fault.Id);
    }

    [Theory]
    [InlineData(false, 0.5f, 0f)]
    [InlineData(true, 0.049f, 0f)]
    [InlineData(true, 0.051f, 0.051f)]
    public void Step_SavesAtRestAndFromAChangeOfATwentieth(bool isAtRest, float level, float kept)
    {
        new HeatStore(_chip, 0).Step(1000, isAtRest, Heat(level, 0f));

        Assert.Equal((kept, 0f), Restored());
    }

    [Fact]
    public void Step_SavesOnceAMinuteAtMost()
    {
        HeatStore store = new(_chip, 0);
        store.Step(1000, true, Heat(0.9f, 0f));
        store.Step(Minute - 1, true, Heat(0.8f, 0f));
        Assert.Equal(0.9f, Restored().Motor);

        store.Step(1, true, Heat(0.7f, 0f));

        Assert.Equal(0.7f, Restored().Motor);
    }

    [Fact]
    public void Restore_IntoAControllerBuiltAnew_IsTheLastLevelAndNotTheLastSaved()
    {
        HeatStore store = new(_chip, 0);
        store.Step(1000, true, Heat(0.9f, 0.1f));
        store.Step(1000, true, Heat(0.95f, 0.2f));
        HeatWatch heat = Heat(0f, 0f);
        store.Restore(heat);

        Assert.Equal((0.95f, 0.2f), (heat.Motor.Level, heat.Resistor.Level));
    }

    [Fact]
    public void Levels_ThatCannotBeReadBack_CountAsTheLimit()
    {
        Array.Clear(_chip.Bytes);

        Assert.Equal((1f, 1f), Restored());
    }

    private static HeatWatch Heat(float motor, float resistor)
    {
        HeatWatch heat = new(FakeBoard.Chk01(settings => settings.OverloadAmps = 100f));
        heat.Motor.Level = motor;
        heat.Resistor.Level = resistor;
        return heat;
    }

    private (float Motor, float Resistor) Restored()
    {
        HeatWatch heat = Heat(0f, 0f);
        new HeatStore(_chip, 0).Restore(heat);
        return (heat.Motor.Level, heat.Resistor.Level);
    }
}
