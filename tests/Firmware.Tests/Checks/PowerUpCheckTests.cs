using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Boards;
using Xunit;

namespace StarterCtl.Firmware.Tests.Checks;

/// <summary>What keeps the lock at power-up shut, one thing at a time.</summary>
public sealed class PowerUpCheckTests
{
    private const int Period = 1000;
    private const int ProvingPeriods = PowerUpCheck.ProvingMicroseconds / Period;

    private static readonly List<Obstacle> Obstacles =
    [
        new(PowerUpProblem.NotRead, 0f, (readings, _) => readings.Stale = true),
        new(PowerUpProblem.CoilOn, 14f, (_, pins) => pins.StuckOn.Add(PinRole.LineCoil)),
        new(PowerUpProblem.ReadingUnusable, (int)Channel.Supply, (readings, _) => readings.SupplyVolts = float.NaN),
        new(PowerUpProblem.ReadingUnusable, (int)Channel.ArmatureCurrent, (readings, _) => readings.ArmatureAmps = float.NaN),
        new(PowerUpProblem.ReadingUnusable, (int)Channel.FieldCurrent, (readings, _) => readings.FieldAmps = float.NaN),
        new(PowerUpProblem.ReadingUnusable, (int)Channel.ResistorTemperature, (readings, _) => readings.ResistorCelsius = float.NaN),
        new(PowerUpProblem.LineNotOpen, 0f, (readings, _) => readings.LineClosed = true),
        new(PowerUpProblem.StageNotOpen, 3f, (readings, _) => readings.StagesClosed = 4),
        new(PowerUpProblem.BrakeNotOpen, 0f, (readings, _) => readings.BrakeClosed = true),
        new(PowerUpProblem.FieldNotOpen, 0f, (readings, _) => readings.FieldClosed = true),
        new(PowerUpProblem.CurrentFlows, -6f, (readings, _) => readings.ArmatureAmps = -6f),
        new(PowerUpProblem.SpeedUnknown, 0f, (readings, _) => readings.SpeedValid = false),
        new(PowerUpProblem.ShaftTurns, -3f, (readings, _) => readings.SpeedRadPerSec = -3f),
    ];

    public static TheoryData<int> ObstacleNumbers => [.. Enumerable.Range(0, Obstacles.Count)];

    [Fact]
    public void AllSound_StandsForHalfASecond_OpensOnceAndForAll()
    {
        (PowerUpCheck check, SoftPins _) = Built();
        Readings readings = Sound();

        for (int i = 0; i < ProvingPeriods; i++) check.Update(Period, readings);
        Assert.Equal((PowerUpProblem.Proving, 0.001f), (check.Problem, check.Value));

        check.Update(Period, readings);
        Assert.True(check.IsOpen);

        readings.LineClosed = true;
        check.Update(Period, readings);
        Assert.True(check.IsOpen);
    }

    [Theory]
    [MemberData(nameof(ObstacleNumbers))]
    public void Obstacle_IsThere_StaysShutAndSaysWhyUntilHalfASecondAfterItIsGone(int number)
    {
        Obstacle obstacle = Obstacles[number];
        (PowerUpCheck check, SoftPins pins) = Built();
        Readings readings = Sound();
        for (int i = 0; i < ProvingPeriods; i++) check.Update(Period, readings);

        obstacle.Put(readings, pins);
        for (int i = 0; i < 3 * ProvingPeriods; i++) check.Update(Period, readings);
        Assert.Equal((obstacle.Problem, obstacle.Value), (check.Problem, check.Value));

        pins.StuckOn.Clear();
        for (int i = 0; i < ProvingPeriods; i++) check.Update(Period, Sound());
        Assert.Equal(PowerUpProblem.Proving, check.Problem);
        check.Update(Period, Sound());
        Assert.True(check.IsOpen);
    }

    [Fact]
    public void EveryObstacle_HasARow() =>
        Assert.Equal(
            Enum.GetValues<PowerUpProblem>().Where(problem => problem >= PowerUpProblem.NotRead), Obstacles.Select(obstacle => obstacle.Problem).Distinct());

    [Fact]
    public void ShaftTurns_WhereATurningShaftMayBeStarted_IsNoObstacle()
    {
        (PowerUpCheck check, SoftPins _) = Built(settings => settings.SpinningStart = true);
        Readings readings = Sound();
        readings.SpeedRadPerSec = 90f;

        for (int i = 0; i <= ProvingPeriods; i++) check.Update(Period, readings);

        Assert.True(check.IsOpen);
    }

    [Fact]
    public void Current_WithoutAZeroCurrent_IsNotLookedFor()
    {
        (PowerUpCheck check, SoftPins _) = Built(settings => settings.ZeroAmps = 0f);
        Readings readings = Sound();
        readings.ArmatureAmps = 6f;

        for (int i = 0; i <= ProvingPeriods; i++) check.Update(Period, readings);

        Assert.True(check.IsOpen);
    }

    [Theory]
    [InlineData(PowerUpProblem.BootCheckFailed)]
    [InlineData(PowerUpProblem.SettingsUnsound)]
    [InlineData(PowerUpProblem.ChecksumWrong)]
    [InlineData(PowerUpProblem.WiringRefused)]
    public void Refused_AtOnce_StaysShutForEver(PowerUpProblem problem)
    {
        Settings settings = Asked();
        PinMap map = SoftPins.Wired(settings);
        SoftPins pins = new SoftPins(map).AtRest();
        if (problem == PowerUpProblem.SettingsUnsound) settings.StageCount = 99;
        if (problem == PowerUpProblem.WiringRefused) map.Wire(PinRole.StopChain, PinMap.NotFitted, false);
        int checksum = SettingsChecksum.Of(settings) + (problem == PowerUpProblem.ChecksumWrong ? 1 : 0);
        int bootNumber = BootCheck.Expected ^ (problem == PowerUpProblem.BootCheckFailed ? 4 : 0);

        PowerUpCheck check = new(settings, checksum, new BoardCheck(map, settings), new OutputPanel(map, pins), bootNumber);
        for (int i = 0; i < 3 * ProvingPeriods; i++) check.Update(Period, Sound());

        Assert.Equal(problem, check.Problem);
        float value = problem switch
        {
            PowerUpProblem.BootCheckFailed => bootNumber,
            PowerUpProblem.SettingsUnsound => (int)SettingId.StageCount,
            PowerUpProblem.ChecksumWrong => SettingsChecksum.Of(settings),
            _ => (int)BoardProblem.PinMissing,
        };
        Assert.Equal(value, check.Value);
    }

    [Fact]
    public void BootCheck_OfThisRuntime_Passes()
    {
        Settings settings = FakeBoard.Chk01();
        PinMap map = SoftPins.Wired(settings);

        PowerUpCheck check = new(settings, SettingsChecksum.Of(settings), new BoardCheck(map, settings), new OutputPanel(map, new SoftPins(map)));

        Assert.Equal(PowerUpProblem.Proving, check.Problem);
    }

    [Fact]
    public void Flashes_OfAnyNumber_CanBeCounted()
    {
        FlashCode lamp = new();
        bool[] lit = [.. Enumerable.Range(0, 4000).Select(_ => lamp.IsLit(3, 10_000))];

        // Flashes of 0.25 s every 0.5 s; a row of 3 and its pause take 3 s.
        List<int> begins = [.. Enumerable.Range(1, lit.Length - 1).Where(i => lit[i] && !lit[i - 1])];
        Assert.Equal([50, 100, 300, 350, 400, 600], begins.Take(6));
        Assert.All(begins.SkipLast(1), begin => Assert.True(lit[begin + 24] && !lit[begin + 25]));
    }

    private static Settings Asked(Action<Settings>? change = null) => FakeBoard.Chk01(settings =>
    {
        settings.ZeroAmps = 5f;
        settings.SpinningStart = false;
        settings.StandstillRadPerSec = 2f;
        settings.FieldSensorFitted = true;
        settings.ResistorSensorFitted = true;
        change?.Invoke(settings);
    });

    private static (PowerUpCheck Check, SoftPins Pins) Built(Action<Settings>? change = null)
    {
        Settings settings = Asked(change);
        PinMap map = SoftPins.Wired(settings);
        map.Wire(PinRole.FieldAmps, (int)PinRole.FieldAmps, false);
        map.Wire(PinRole.ResistorCelsius, (int)PinRole.ResistorCelsius, false);
        SoftPins.Scale(map.Field, 0f, 10f);
        SoftPins.Scale(map.Resistor, 0f, 500f);
        SoftPins pins = new SoftPins(map).AtRest();
        BoardCheck wiring = new(map, settings);
        Assert.Equal(BoardProblem.None, wiring.Problem);
        return (new PowerUpCheck(settings, SettingsChecksum.Of(settings), wiring, new OutputPanel(map, pins), BootCheck.Expected), pins);
    }

    private static Readings Sound() => new() { SupplyVolts = 250f, SpeedValid = true, FieldAmps = 2f, ResistorCelsius = 20f };

    private sealed record Obstacle(PowerUpProblem Problem, float Value, Action<Readings, SoftPins> Put);
}
