using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Heat of motor and starting resistor through whole controllers: what trips, what no reset clears, what a start must wait for.
/// The resistor's energies follow from the heat of a start (tests/published/SOURCES.md, CHK-14).
/// </summary>
public sealed class HeatTests
{
    private const int Second = 1000 * Bench.Millisecond;
    private const float ResistorJoules = 300_000f;

    [Fact]
    public void Overload_Reset_IsRefusedUntilTheImageHasCooledDownAndClearsNoHeat()
    {
        Bench bench = Tripped();
        // From 1 to the reset level of 0.8: 290 ln(1 / 0.8) = 64.7 s; a little longer for what the last step overshot.
        float peak = bench.Controller.Heat.Motor.Level;
        Assert.InRange(peak, 1f, 1.02f);
        int ticks = 0;
        for (; bench.Controller.Phase == Phase.Tripped; ticks++)
        {
            Assert.InRange(bench.Controller.Heat.Motor.Level, 0.799f, 1.02f);
            bench.Tick(Second / 10).PressReset();
            Assert.True(ticks < 1000);
        }

        Assert.Equal(290 * Math.Log(peak / 0.8), ticks * 0.101, 0.21);
        Assert.Equal(0.8f, bench.Controller.Heat.Motor.Level, 1e-3f);
        bench.PressStart();
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Fact]
    public void Overload_ResetTooSoon_SaysThatItIsRefused() =>
        Tripped().Tick(Second).PressReset().AssertWhy(Reason.ResetRefused, (int)FaultId.Overload, 0f);

    [Fact]
    public void Motor_HotBehindAnotherFault_ResetClearsThatAndStartStaysRefused()
    {
        Bench bench = Overloaded().Run();
        bench.Controller.Heat.Motor.Level = 0.95f;
        bench.PressEmergencyStop().Ticks(200).PressReset();

        Assert.Equal((Phase.Ready, Refusal.MotorTooHot), (bench.Controller.Phase, bench.Controller.Refusals));
        Assert.False(bench.Outputs.ReadyLamp);
        bench.PressStart().AssertWhy(Reason.StartRefused, (int)Refusal.MotorTooHot, 0f);

        // 290 ln(0.95 / 0.8) = 49.8 s.
        bench.Tick(49 * Second);
        Assert.Equal(Refusal.MotorTooHot, bench.Controller.Refusals);
        bench.Tick(Second);
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
        bench.PressStart();
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Theory]
    [InlineData(0.5f, Refusal.None)]
    [InlineData(0.79f, Refusal.None)]
    [InlineData(0.8f, Refusal.MotorTooHot)]
    [InlineData(0.99f, Refusal.MotorTooHot)]
    public void Motor_LevelWrittenBackAfterPowerUp_CountsFromTheFirstTick(float level, Refusal refusal)
    {
        Bench bench = Overloaded();
        bench.Controller.Heat.Motor.Level = level;

        Assert.Equal(refusal, bench.Tick().Controller.Refusals);
        Assert.Equal(level, bench.Controller.Heat.Motor.Level);
    }

    [Fact]
    public void Motor_LevelAtTheLimitWrittenBackAfterPowerUp_TripsAtOnce()
    {
        Bench bench = Overloaded();
        bench.Controller.Heat.Motor.Level = 1f;

        bench.Tick().AssertTripped(FaultId.Overload, 0f, 100f);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(-0.01f)]
    [InlineData(-1e30f)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(float.PositiveInfinity)]
    public void Level_NoneAtAllWrittenBackAfterPowerUp_CountsAsTheLimitAndCoolsDownFromThere(float level)
    {
        // A spoilt memory must not switch the protection off for good.
        Bench bench = new(settings =>
        {
            settings.OverloadAmps = 100f;
            settings.ResistorJoules = ResistorJoules;
        });
        bench.Controller.Heat.Motor.Level = level;
        bench.Controller.Heat.Resistor.Level = level;

        bench.Tick().AssertTripped(FaultId.Overload, 0f, 100f);
        Assert.Equal((1f, 1f), (bench.Controller.Heat.Motor.Level, bench.Controller.Heat.Resistor.Level));

        for (int i = 0; i < 420; i++) bench.Tick(Second);
        bench.PressReset();
        Assert.Equal((Phase.Ready, Refusal.None), (bench.Controller.Phase, bench.Controller.Refusals));
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    public void Current_NoNumber_HeatsNothing(float amps)
    {
        Settings settings = Bench.Chk01();
        settings.OverloadAmps = 100f;
        settings.ResistorJoules = ResistorJoules;
        HeatWatch heat = new(settings);
        Readings readings = new() { ArmatureAmps = amps };

        for (int i = 0; i < 1000; i++) heat.Update(Second, readings, 0, true);

        Assert.Equal((0f, 0f), (heat.Motor.Level, heat.Resistor.Level));
        Assert.False(heat.IsMotorTripped || heat.IsResistorTripped);
    }

    [Fact]
    public void Current_LargestOfAll_TripsWithinAStepAndCoolsAgain()
    {
        Settings settings = Bench.Chk01();
        settings.OverloadAmps = 100f;
        HeatWatch heat = new(settings);
        Readings readings = new() { ArmatureAmps = Settings.Largest };

        heat.Update(Second / 10, readings, 0, true);
        Assert.True(heat.IsMotorTripped);
        for (int i = 0; i < 1000; i++) heat.Update(1000 * Second, readings, 0, true);
        Assert.InRange(heat.Motor.Level, 1f, 1_000_001f);

        readings.ArmatureAmps = 0f;
        for (int i = 0; i < 20; i++) heat.Update(1000 * Second, readings, 0, true);
        Assert.False(heat.IsMotorTripped);
    }

    [Fact]
    [Trait("Source", "CHK-14")]
    public void Resistor_UnloadedStart_LevelIsTheHeatInTheSections()
    {
        // J (w0^2 - w^2) / 2 of each stage, and of it the sections' part: 15000 x 0.86 + 3750 x 0.72 + 937.5 x 0.44 = 16012.5 J.
        const double Exact = 16_012.5;
        BenchMotor motor = new(Resistor()) { FollowMicroseconds = 100 };

        Assert.Equal(FaultId.None, motor.RunUp(100));
        for (int i = 0; i < 1000; i++) motor.Tick(100);

        // Each contact closes up to two ticks of 100 us behind its threshold; cooling takes 0.03 % meanwhile.
        Assert.Equal(Exact, motor.Controller.Heat.Resistor.Level * ResistorJoules, 0.005 * Exact);
        Assert.Equal(100, motor.BackEmfVolts / 2.5, 5.0);
    }

    [Fact]
    public void Resistor_ContactsThatTakeTheirTime_CountNoLessThanTheHeatInTheSections()
    {
        BenchMotor motor = new(Resistor()) { LoadTorque = 250 };
        double joules = 0;
        motor.Start();
        while (motor.Controller.Phase != Phase.Running)
        {
            motor.Tick();
            joules += motor.Amps * motor.Amps * (motor.CircuitOhms - motor.MotorOhms) * 0.001;
        }

        for (int i = 0; i < 200; i++) motor.Tick();

        // On the tick on which a contact closes the current is already the next stage's.
        Assert.InRange(motor.Controller.Heat.Resistor.Level * ResistorJoules, 0.99 * joules, 1.05 * joules);
    }

    [Fact]
    public void Resistor_LockedShaft_TripsAtTheEnergyAndRefusesUntilCool()
    {
        // 700 A in 0.307 ohm for 2.0 s: t = -tau ln(1 - W / (P tau)).
        double watts = 700.0 * 700 * (250.0 / 700 - 0.05);
        double exact = -600 * Math.Log(1 - ResistorJoules / (watts * 600));
        BenchMotor motor = new(Resistor()) { LoadTorque = 1e6 };
        motor.Start().TickUntil(() => motor.Amps > 0);
        int ticks = 1;
        for (; motor.Controller.Phase == Phase.Accelerating; ticks++) motor.Tick();

        Assert.InRange(ticks * 0.001, exact, exact + 0.11);
        Assert.Equal((FaultId.ResistorTooHot, ResistorJoules), (motor.Controller.Fault.Id, motor.Controller.Fault.Limit));
        Assert.InRange(motor.Controller.Fault.Value, ResistorJoules, 1.06f * ResistorJoules);

        Assert.Equal(Reason.ResetRefused, Reset(motor));
        motor.TickUntil(() => motor.Amps == 0);
        // The contact took its time to open. Half of the level after 600 ln 2 = 415.9 s, and a little for what that overshot.
        motor.Tick(Second / 10).Tick(Second / 10);
        double peak = motor.Controller.Heat.Resistor.Level;
        double cool = 600 * Math.Log(peak / 0.5);
        for (int i = 0; i < (int)(cool * 10) - 5; i++) motor.Tick(Second / 10);
        Assert.Equal(Reason.ResetRefused, Reset(motor));
        for (int i = 0; i < 10; i++) motor.Tick(Second / 10);
        Reset(motor);
        Assert.Equal((Phase.Ready, Refusal.None), (motor.Controller.Phase, motor.Controller.Refusals));
    }

    [Fact]
    public void Resistor_AboveItsStartLevel_RefusesUntilCool()
    {
        Bench bench = new Bench(settings => settings.ResistorJoules = ResistorJoules).Tick();
        bench.Controller.Heat.Resistor.Level = 0.6f;

        bench.PressStart().AssertWhy(Reason.StartRefused, (int)Refusal.ResistorTooHot, 0f);
        // 600 ln(0.6 / 0.5) = 109.4 s.
        bench.Tick(109 * Second);
        Assert.Equal(Refusal.ResistorTooHot, bench.Controller.Refusals);
        bench.Tick(Second);
        Assert.Equal(Refusal.None, bench.Controller.Refusals);
    }

    [Fact]
    public void Resistor_LineOpen_CurrentOfABrakeHeatsTheMotorAndNotTheResistor()
    {
        Settings settings = Resistor();
        settings.OverloadAmps = 100f;
        HeatWatch heat = new(settings);

        heat.Update(Second, new Readings { ArmatureAmps = 500f }, 0, false);

        Assert.Equal(0f, heat.Resistor.Level);
        Assert.InRange(heat.Motor.Level, 0.06f, 0.08f);
    }

    [Fact]
    public void Resistor_AllCutOut_CoolsWhateverTheCurrent()
    {
        Bench bench = new Bench(settings => settings.ResistorJoules = ResistorJoules).Run();
        bench.Controller.Heat.Resistor.Level = 0.9f;
        bench.Readings.ArmatureAmps = 900f;

        for (int i = 0; i < 600; i++) bench.Tick(Second);

        Assert.Equal(0.9 * Math.Exp(-1), bench.Controller.Heat.Resistor.Level, 1e-4);
    }

    private static Settings Resistor()
    {
        Settings settings = Bench.Chk01();
        settings.ResistorJoules = ResistorJoules;
        return settings;
    }

    private static Bench Overloaded() => new(settings => settings.OverloadAmps = 100f);

    private static Bench Tripped()
    {
        Bench bench = Overloaded().Run();
        bench.Readings.ArmatureAmps = 720f;
        bench.TickUntil(() => bench.Controller.Fault.IsLatched, 10_000);
        bench.AssertTripped(FaultId.Overload, 720f, 100f);
        bench.Readings.ArmatureAmps = 0f;
        return bench.Ticks(2);
    }

    private static Reason Reset(BenchMotor motor)
    {
        motor.Readings.ResetPressed = true;
        motor.Tick();
        motor.Readings.ResetPressed = false;
        Reason reason = motor.Controller.Why.Reason;
        motor.Tick();
        return reason;
    }
}
