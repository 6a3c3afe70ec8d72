using System;
using System.Collections.Generic;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// Proof of closings by the current, on the starter of CHK-01 with a turning motor behind it: with and without auxiliary
/// contacts, with and without a speed sensor. The currents follow from Ohm's law; tolerances are common practice, no source.
/// </summary>
public sealed class CurrentProofTests
{
    private const float ZeroAmps = 10f;
    private const int SettleTicks = 20;
    private const int ContactTicks = 100;

    /// <summary>Speed sensor fitted, auxiliary contacts fitted.</summary>
    public static TheoryData<bool, bool> Fittings => new() { { true, true }, { true, false }, { false, true }, { false, false } };

    /// <summary>The same, for each stage.</summary>
    public static TheoryData<bool, bool, int> FittingsAndStages
    {
        get
        {
            TheoryData<bool, bool, int> rows = [];
            for (int i = 0; i < 12; i++) rows.Add((i & 1) == 0, (i & 2) == 0, 1 + i / 4);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Nominal_FastAndSlowLightAndHeavy_RunsUp(bool sensor, bool auxiliary)
    {
        // Fast: on the motor's own 0.05 ohm the current falls by half within the settle time.
        foreach ((double inertia, double torque) in new[] { (4.0, 0.0), (4, 250), (40, 250), (20, 600) })
        {
            BenchMotor motor = New(sensor, auxiliary);
            (motor.Inertia, motor.LoadTorque) = (inertia, torque);

            Assert.Equal(FaultId.None, motor.RunUp());
            Assert.Equal(Bench.AllStages, motor.Outputs.CloseStages);
        }
    }

    [Theory]
    [MemberData(nameof(FittingsAndStages))]
    public void Section_TenPercentOff_RunsUp(bool sensor, bool auxiliary, int stage)
    {
        foreach (double drift in new[] { 0.9, 1.1 })
        {
            BenchMotor motor = New(sensor, auxiliary);
            motor.SectionOhms[stage - 1] *= drift;

            Assert.Equal(FaultId.None, motor.RunUp());
        }
    }

    [Theory]
    [MemberData(nameof(FittingsAndStages))]
    public void Stage_MainContactStaysOpen_IsNamedAtItsTime(bool sensor, bool auxiliary, int stage)
    {
        BenchMotor motor = New(sensor, auxiliary);
        motor.OpenStages = 1 << (stage - 1);
        motor.Start().TickUntil(() => (motor.Outputs.CloseStages & motor.OpenStages) != 0);
        int ticks = 0;
        for (; !motor.Controller.Fault.IsLatched && ticks < 1000; ticks++) motor.Tick();

        motor.AssertFault(FaultId.ContactDidNotClose, stage);
        // Without an auxiliary contact at the end of the contact time, else as soon as the current has been looked at.
        Assert.Equal(auxiliary ? 40 + SettleTicks : ContactTicks, ticks);
    }

    [Theory]
    [MemberData(nameof(FittingsAndStages))]
    public void Stage_WeldedFromTheLastRun_IsNamedAtTheFirstCurrentThatShowsIt(bool sensor, bool auxiliary, int stage)
    {
        BenchMotor motor = New(sensor, auxiliary);
        motor.WeldedStages = 1 << (stage - 1);
        motor.RunUp();

        motor.AssertFault(FaultId.ContactDidNotOpen, stage);
        // 1400 A and 933 A instead of 700 A at once. The last section is 11 % of the whole, less than the tolerance of 20 %:
        // it shows at a cutout.
        Assert.Equal(stage == 3, motor.Controller.Fault.Snapshot.StagesCommanded != 0);
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Stage_OpensBehindItsProof_IsNamedAtTheNextClosing(bool sensor, bool auxiliary)
    {
        BenchMotor motor = New(sensor, auxiliary);
        motor.Start().TickUntil(() => motor.Controller.Stage == 2);
        motor.OpenStages = 1;
        motor.TickUntil(() => motor.Controller.Fault.IsLatched);

        motor.AssertFault(FaultId.ContactDidNotClose, 1);
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Line_MainContactStaysOpen_IsNamedAndNothingIsCutOut(bool sensor, bool auxiliary)
    {
        // Without a speed sensor no current at all looks like a machine at full speed.
        BenchMotor motor = New(sensor, auxiliary);
        motor.LineNeverConducts = true;
        motor.Start();
        while (!motor.Controller.Fault.IsLatched)
        {
            Assert.Equal(0, motor.Outputs.CloseStages);
            motor.Tick();
        }

        motor.AssertFault(FaultId.ContactDidNotClose, ContactNumber.Line);
    }

    [Theory]
    [InlineData(3, 0.5, 2)]
    [InlineData(2, 1.5, 1)]
    public void Section_HalfOff_DriftedWithTheAmpsSeenAndExpected(int section, double drift, int stage)
    {
        foreach (bool auxiliary in new[] { true, false })
        {
            BenchMotor motor = New(true, auxiliary, settings => settings.StepToleranceRatio = 0.15f);
            motor.SectionOhms[section - 1] *= drift;
            motor.RunUp();

            FaultLatch fault = motor.Controller.Fault;
            Assert.Equal((FaultId.SectionDrifted, stage), (fault.Id, fault.InStage));
            double volts = Bench.SupplyVolts - fault.Snapshot.BackEmfVolts;
            double ohms = motor.Settings.StageOhms[stage], more = (drift - 1) * (section == 3 ? 27.5 / 700 : 62.5 / 700);
            Assert.Equal(volts / (ohms + more), fault.Value, 0.01 * fault.Value);
            Assert.Equal(volts / ohms, fault.Limit, 0.01 * fault.Limit);
        }
    }

    [Theory]
    [InlineData(1, 0.5, 2)]
    [InlineData(2, 0.44, 3)]
    public void Section_LostByAsMuchAsALaterOneHas_IsTakenForThatOneWelded(int section, double drift, int named)
    {
        // What the current cannot tell apart: half of the first section is the second.
        BenchMotor motor = New(true, true);
        motor.SectionOhms[section - 1] *= drift;
        motor.RunUp();

        motor.AssertFault(FaultId.ContactDidNotOpen, named);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Stage_StepTooSmallToBeSeen_IsTrustedAfterTheContactTime(bool stuck)
    {
        // 20 ms of settling leave 15 A in stage 1; 30 A behind the step, and four times 10 A would have to be seen.
        Bench bench = Seen(settings => settings.StageContactsFitted = false);
        bench.BackEmf(244.7f).Readings.ArmatureAmps = 15f;
        bench.Tick().AssertCoils(true, 1);
        if (!stuck) bench.Readings.ArmatureAmps = 30f;

        bench.Ticks(ContactTicks - 1).AssertCoils(true, 1);
        bench.Tick().AssertCoils(true, 3);
        Assert.Equal(Phase.Accelerating, bench.Controller.Phase);
    }

    [Fact]
    public void Stage_NoStepAndTheCurrentFadesWithinTheContactTime_IsTrusted()
    {
        // The limit of the proof: an unloaded fast motor is up to speed before the contact time is over. What the section then
        // still drops under load, the comparison of the two back-EMFs finds.
        BenchMotor motor = New(true, false, settings => settings.ContactMicroseconds = 500 * Bench.Millisecond);
        (motor.Inertia, motor.LoadTorque, motor.OpenStages) = (4, 0, 4);

        Assert.Equal(FaultId.None, motor.RunUp());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Regenerating_DrivenAboveTheSupply_ProvesTheSameWay(bool auxiliary)
    {
        // 300 V of back-EMF permit two stages: the line meets 0.0893 ohm and -560 A.
        BenchMotor motor = New(true, auxiliary);
        (motor.SpeedRadPerSec, motor.LoadTorque) = (120, 0);
        motor.Start().TickUntil(() => motor.Amps != 0);
        Assert.Equal(-560, motor.Amps, 5.0);
        motor.TickUntil(() => motor.Controller.Phase == Phase.Running || motor.Controller.Fault.IsLatched);
        Assert.Equal(FaultId.None, motor.Controller.Fault.Id);

        BenchMotor welded = New(true, auxiliary);
        (welded.SpeedRadPerSec, welded.LoadTorque, welded.WeldedStages) = (120, 0, 4);
        welded.RunUp();
        welded.AssertFault(FaultId.ContactDidNotOpen, 3);
    }

    [Theory]
    [MemberData(nameof(FittingsAndStages))]
    public void Supply_SagsByATenthAroundTheStep_RunsUp(bool sensor, bool auxiliary, int stage)
    {
        // Just behind the command, on the tick of the contact, and while the current settles.
        foreach (int ticks in new[] { 1, 20, 38, 39, 40, 41, 50 })
        {
            BenchMotor motor = New(sensor, auxiliary);
            motor.Start().TickUntil(() => (motor.Outputs.CloseStages & (1 << (stage - 1))) != 0);
            for (int i = 0; i < ticks; i++) motor.Tick();
            motor.SupplyVolts *= 0.9;
            motor.TickUntil(() => motor.Controller.Phase == Phase.Running || motor.Controller.Fault.IsLatched);

            Assert.Equal(FaultId.None, motor.Controller.Fault.Id);
        }
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Inductance_SettleTimeOfFiveTimeConstants_RunsUp(bool sensor, bool auxiliary)
    {
        // 0.5 mH: 10 ms on the motor's own 0.05 ohm.
        BenchMotor motor = New(sensor, auxiliary, settings => settings.StepSettleMicroseconds = 50 * Bench.Millisecond);
        motor.ArmatureHenry = 0.0005;

        Assert.Equal(FaultId.None, motor.RunUp());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    public void Inductance_SettleTimeTooShort_IsTakenForADriftedSection(int settleMilliseconds)
    {
        // 2 mH: 6 ms at the line's closing, 22 ms at the second cutout.
        BenchMotor motor = New(true, true, settings => settings.StepSettleMicroseconds = settleMilliseconds * Bench.Millisecond);
        motor.ArmatureHenry = 0.002;
        motor.RunUp();

        Assert.Equal(FaultId.SectionDrifted, motor.Controller.Fault.Id);
        Assert.InRange(motor.Controller.Fault.Value, 0f, motor.Controller.Fault.Limit);
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void BrushDrop_InMotorAndSettings_RunsUpAndNamesTheSame(bool sensor, bool auxiliary)
    {
        BenchMotor motor = New(sensor, auxiliary, settings => settings.BrushDropVolts = 2f);
        motor.BrushVolts = 2;
        Assert.Equal(FaultId.None, motor.RunUp());

        BenchMotor welded = New(sensor, auxiliary, settings => settings.BrushDropVolts = 2f);
        (welded.BrushVolts, welded.WeldedStages) = (2, 2);
        welded.RunUp();
        welded.AssertFault(FaultId.ContactDidNotOpen, 2);
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Contact_ClosesWithinOneLongTick_RunsUp(bool sensor, bool auxiliary)
    {
        BenchMotor motor = New(sensor, auxiliary);

        Assert.Equal(FaultId.None, motor.RunUp(50 * Bench.Millisecond));
    }

    [Fact]
    public void Stop_WhileTheProofIsPending_ForgetsIt()
    {
        BenchMotor motor = New(true, false);
        motor.OpenStages = 1;
        motor.Start().TickUntil(() => motor.Outputs.CloseStages == 1);
        motor.Readings.StopPressed = true;
        motor.Tick();
        motor.Readings.StopPressed = false;
        motor.TickUntil(() => motor.Controller.Phase == Phase.Ready);

        for (int i = 0; i < 200; i++) motor.Tick();
        Assert.Equal(Phase.Ready, motor.Controller.Phase);
    }

    [Fact]
    public void Stage_PutBackWhileTheProofIsPending_ForgetsItAndProvesTheNextTime()
    {
        BenchMotor motor = New(true, false, settings =>
        {
            settings.SupplyLowVolts = 200f;
            settings.NominalSupplyVolts = 250f;
            settings.DipMicroseconds = 1000 * Bench.Millisecond;
            settings.DipAction = DipAction.PutResistanceBack;
        });
        // Braked while the dip lasts: stage 1 goes back in.
        motor.Start().TickUntil(() => motor.Outputs.CloseStages == 1);
        (motor.SupplyVolts, motor.LoadTorque) = (150, 5000);
        motor.TickUntil(() => motor.Outputs.CloseStages == 0, 30);
        for (int i = 0; i < 2 * ContactTicks; i++) motor.Tick();
        Assert.Equal(Phase.Accelerating, motor.Controller.Phase);

        (motor.SupplyVolts, motor.LoadTorque) = (250, 250);
        motor.TickUntil(() => motor.Controller.Phase == Phase.Running || motor.Controller.Fault.IsLatched);
        Assert.Equal(FaultId.None, motor.Controller.Fault.Id);
    }

    [Theory]
    [MemberData(nameof(Fittings))]
    public void Machines_AtRandomWithDriftAndNoise_NoFalseAlarmAndNoWrongName(bool sensor, bool auxiliary)
    {
        // Measured over 1000 machines of each fitting: no false alarm and no wrong name; of the single failures 98.6 to 99.2 %
        // named, the others too small to be seen at light load behind a dwell. With a zero error of 30 A: 92.1 to 96.7 %.
        const int Machines = 100;
        Random random = new(7);
        int named = 0;
        List<string> wrong = [];
        for (int number = 0; number < Machines; number++)
        {
            int seed = random.Next();
            BenchMotor sound = AtRandom(sensor, auxiliary, seed, true);
            if (sound.RunUp() != FaultId.None) wrong.Add($"{seed}: {sound.Controller.Fault.Id} {sound.Controller.Fault.Value}");

            int stage = 1 + random.Next(3);
            bool isWelded = random.Next(2) == 0;
            BenchMotor failed = AtRandom(sensor, auxiliary, seed, false);
            if (isWelded) failed.WeldedStages = 1 << (stage - 1);
            else failed.OpenStages = 1 << (stage - 1);
            FaultId fault = failed.RunUp();
            if (fault == FaultId.None) continue;
            bool isNamed = fault == (isWelded ? FaultId.ContactDidNotOpen : FaultId.ContactDidNotClose) && failed.Controller.Fault.Value == stage;
            if (isNamed) named++;
            else wrong.Add($"{seed}: {(isWelded ? "welded" : "open")} {stage} as {fault} {failed.Controller.Fault.Value}");
        }

        Assert.Empty(wrong);
        Assert.InRange(named, 0.95 * Machines, Machines);
    }

    private static BenchMotor AtRandom(bool sensor, bool auxiliary, int seed, bool drifts)
    {
        Random random = new(seed);
        BenchMotor motor = New(sensor, auxiliary, settings => settings.MinimumDwellMicroseconds = random.Next(3) == 0 ? random.Next(500_000) : 0);
        motor.Inertia = 4 * Math.Exp(3 * random.NextDouble());
        motor.LoadTorque = random.Next(4) == 0 ? 0 : 600 * random.NextDouble();
        motor.NoiseAmps = () => ZeroAmps * (2 * random.NextDouble() - 1);
        for (int i = 0; drifts && i < 3; i++) motor.SectionOhms[i] *= 0.9 + 0.2 * random.NextDouble();
        return motor;
    }

    private static BenchMotor New(bool sensor, bool auxiliary, Action<Settings>? change = null)
    {
        Settings settings = Bench.Chk01();
        Look(settings);
        settings.LineContactFitted = auxiliary;
        settings.StageContactsFitted = auxiliary;
        settings.SpeedSensorFitted = sensor;
        if (!sensor) settings.SpeedLoss = SpeedLossAction.FinishStart;
        settings.ResistiveConfirmMicroseconds = 0;
        change?.Invoke(settings);
        Assert.Equal(SettingId.None, settings.FirstProblem());
        return new BenchMotor(settings) { Inertia = 40, LoadTorque = 250 };
    }

    private static Bench Seen(Action<Settings> change)
    {
        Bench bench = new Bench(settings =>
        {
            Look(settings);
            change(settings);
            // Contacts without an auxiliary one count as closed until their time is over.
        }).Ticks(ContactTicks).PressStart();
        bench.Readings.ArmatureAmps = 700f;
        return bench.TickUntil(() => bench.Controller.Why.Reason == Reason.BackEmfBelowThreshold);
    }

    private static void Look(Settings settings)
    {
        settings.InstantTripAmps = 8000f;
        settings.StepToleranceRatio = 0.2f;
        settings.ZeroAmps = ZeroAmps;
        settings.StepSettleMicroseconds = SettleTicks * Bench.Millisecond;
    }
}
