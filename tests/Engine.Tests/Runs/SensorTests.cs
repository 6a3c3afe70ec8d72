using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>What sensors make of what is there: steps, noise, filter and pulses, alone and in a run.</summary>
public sealed class SensorTests
{
    // From memory: the first numbers that are known of splitmix64.
    [Fact]
    public void Next_KnownSeeds_GiveTheKnownNumbers()
    {
        Assert.Equal(0xE220A8397B1DCDAF, new RandomNumbers(0).Next());
        RandomNumbers numbers = new(1234567);
        Assert.Equal([6457827717110365317ul, 3203168211198807973ul, 9817491932198370423ul], Enumerable.Range(0, 3).Select(_ => numbers.Next()));
    }

    [Fact]
    public void Normal_ManyNumbers_HaveMeanSpreadAndTailsOfANormalOne()
    {
        RandomNumbers numbers = new(7);
        double[] drawn = [.. Enumerable.Range(0, 100_000).Select(_ => numbers.Normal())];

        Assert.Equal(0, drawn.Average(), 0.01);
        Assert.Equal(1, drawn.Average(number => number * number), 0.02);
        Assert.Equal(0.3173, drawn.Count(number => Math.Abs(number) > 1) / 1e5, 0.01);
        Assert.Equal(0, drawn.Zip(drawn.Skip(1), (one, next) => one * next).Average(), 0.01);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(30.2, 25)]
    [InlineData(38, 50)]
    [InlineData(-38, -50)]
    [InlineData(190, 175)]
    [InlineData(500, 175)]
    [InlineData(-500, -200)]
    public void Read_ConverterOf4Bits_GoesInStepsBetweenItsEnds(double value, double reading) =>
        Assert.Equal(reading, Sensor(new SensorChannel { Range = 200 }, new SensorModel { Bits = 4 }).Read(value), 1e-12);

    [Theory]
    [InlineData(100, 107)]
    [InlineData(300, 250)]
    [InlineData(-300, -250)]
    public void Read_GainOffsetAndRange_ActInThisOrder(double value, double reading) =>
        Assert.Equal(reading, Sensor(new SensorChannel { Gain = 1.1, Offset = -3, Range = 250 }, new SensorModel()).Read(value), 1e-12);

    [Fact]
    public void Read_Filter_FollowsAStepByItsTimeConstant()
    {
        AnalogSensor sensor = Sensor(new SensorChannel(), new SensorModel { FilterSeconds = 0.005 });
        sensor.Read(20);

        double reading = 0;
        for (int i = 0; i < 5; i++) reading = sensor.Read(120);

        Assert.Equal(120 - 100 * Math.Exp(-1), reading, 1e-9);
    }

    [Fact]
    public void Read_Noise_IsOneOfItsOwnForEachSensorAndSeed()
    {
        SensorChannel noisy = new() { Noise = 2 };
        double[] Draw(int seed, int stream)
        {
            AnalogSensor sensor = new(noisy, new SensorModel { Seed = seed }, stream, 0.001);
            return [.. Enumerable.Range(0, 20_000).Select(_ => sensor.Read(50))];
        }

        double[] drawn = Draw(1, 1);
        Assert.Equal(drawn, Draw(1, 1));
        Assert.NotEqual(drawn, Draw(2, 1));
        Assert.NotEqual(drawn, Draw(1, 2));
        Assert.Equal(50, drawn.Average(), 0.05);
        Assert.Equal(2, Math.Sqrt(drawn.Average(reading => (reading - 50) * (reading - 50))), 0.05);
    }

    [Fact]
    public void Look_SteadySpeed_IsExactOnceTwoEdgesHaveCome()
    {
        PulsePickup pickup = new(60, 0.1);
        double pitch = 2 * Math.PI / 60;
        for (int tick = 0; tick <= 200; tick++)
        {
            double now = tick * 0.001;
            pickup.Look(now, 30);

            // Two pitches behind the beginning the second edge has come.
            if (now * 30 < 1.99 * pitch) Assert.False(pickup.IsKnown);
            if (now * 30 < 2.4 * pitch) continue;
            Assert.True(pickup.IsKnown);
            Assert.Equal(30, pickup.SpeedRadPerSec, 1e-9);
        }
    }

    [Fact]
    public void Look_ShaftStopsDead_FallsWithTheSilenceThenIsUnknownThenStands()
    {
        PulsePickup pickup = Turning(30, 0.2);
        for (int tick = 1; tick <= 350; tick++)
        {
            // It creeps on for 0.2 s, too slow for an edge, and stands from then on.
            pickup.Look(0.2 + tick * 0.001, tick <= 200 ? 1e-4 : 0);
            if (tick is > 10 and < 95) Assert.InRange(pickup.SpeedRadPerSec, 1e-3, 2 * Math.PI / 60 / (tick * 0.001 - 0.001));
            if (tick is > 105 and < 300) Assert.False(pickup.IsKnown);
            if (tick > 302) Assert.True(pickup.IsKnown && pickup.SpeedRadPerSec == 0);
        }
    }

    [Fact]
    public void Look_StandingFromTheBeginning_IsKnownToStandUntilItTurns()
    {
        PulsePickup pickup = new(60, 0.1);
        pickup.Look(0, 0);
        Assert.True(pickup.IsKnown);

        pickup.Look(0.001, 0.01);

        Assert.False(pickup.IsKnown);
    }

    [Theory]
    [InlineData(0.1, 0, 27)]
    [InlineData(0, 0.2, 36)]
    [InlineData(0.1, 0.2, 33)]
    public void Look_MissingAndExtraPulses_ReadThatMuchWrongInTheMean(double missing, double extra, double reading)
    {
        PulsePickup pickup = Turning(30, 0.2);
        pickup.MissingRatio = missing;
        pickup.ExtraRatio = extra;
        double pulses = 0, last = double.NaN;
        for (int tick = 1; tick <= 10_000; tick++)
        {
            pickup.Look(0.2 + tick * 0.01, 30);
            if (!double.IsNaN(last)) pulses += pickup.SpeedRadPerSec;
            last = pickup.SpeedRadPerSec;
        }

        Assert.Equal(reading, pulses / 9999, 0.05 * reading);
    }

    [Fact]
    public void Look_EveryPulseMissing_IsUnknownAfterTheTimeout()
    {
        PulsePickup pickup = Turning(30, 0.2);
        pickup.MissingRatio = 1;
        for (int tick = 1; tick <= 110; tick++) pickup.Look(0.2 + tick * 0.001, 30);

        Assert.False(pickup.IsKnown);
    }

    [Fact]
    public void Look_TurningBackwards_ReadsAMagnitude()
    {
        PulsePickup pickup = Turning(-30, 0.2);

        Assert.True(pickup.IsKnown);
        Assert.Equal(30, pickup.SpeedRadPerSec, 1e-9);
    }

    [Fact]
    public void Run_SameSeedTwice_IsTheSameRun()
    {
        SensorModel model = new() { Current = new SensorChannel { Noise = 1.5 }, Speed = new SensorChannel { Noise = 0.3 }, Voltage = new SensorChannel { Noise = 0.5 } };
        PlayedRun one = Play(model), again = Play(model), other = Play(model with { Seed = 2 });

        Assert.Equal(one.Samples, again.Samples);
        Assert.NotEqual(one.Samples.Select(sample => sample.ArmatureAmps), other.Samples.Select(sample => sample.ArmatureAmps));
        Assert.Equal(3, one.Result.Cutouts.Count);
    }

    [Fact]
    public void Run_IdealModel_IsTheRunWithoutOne() => Assert.Equal(PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup()).Samples, Play(new SensorModel()).Samples);

    [Fact]
    public void Run_PulsePickup_StartsByItsSpeed()
    {
        PlayedRun ideal = PlayedRun.Of(PlayedRun.Patient, PlayedRun.Setup()), pulses = Play(new SensorModel { PulsesPerRevolution = 60 });

        // Unknown until the second edge, then right to the acceleration within the span of the edges.
        Sample[] known = [.. pulses.Samples.Where(sample => sample.SpeedValid && sample.SpeedRadPerSec > 0)];
        Assert.DoesNotContain(pulses.Between(0.03, 0.06), sample => sample.SpeedValid);
        Assert.All(pulses.Samples, sample => Assert.True(sample.SpeedRadPerSec > 0 || !sample.SpeedValid || sample.TimeSeconds < 0.025));
        Assert.All(pulses.Between(0.5, 1.3), sample => Assert.Equal(ideal.At(sample.TimeSeconds).SpeedRadPerSec, sample.SpeedRadPerSec, 0.5));
        Assert.Equal(3, pulses.Result.Cutouts.Count);
        Assert.True(known.Length > 3000);
    }

    [Fact]
    public void Prepare_EveryKey_ArrivesInTheModel()
    {
        SensorModel model = Model(
            ("sensors.current-noise", "1.5 A"), ("sensors.current-gain", "1.02"), ("sensors.current-offset", "-2 A"), ("sensors.current-range", "400 A"),
            ("sensors.voltage-noise", "0.8 V"), ("sensors.voltage-gain", "0.98"), ("sensors.voltage-offset", "1 V"), ("sensors.voltage-range", "300 V"),
            ("sensors.speed-noise", "2 rad/s"), ("sensors.speed-gain", "1.01"), ("sensors.speed-offset", "-1 rad/s"), ("sensors.speed-range", "200 rad/s"),
            ("sensors.bits", "12"), ("sensors.filter-time", "2 ms"), ("sensors.seed", "9"))!;

        Assert.Equal(
            new SensorModel
            {
                Current = new SensorChannel { Noise = 1.5, Gain = 1.02, Offset = -2, Range = 400 },
                Voltage = new SensorChannel { Noise = 0.8, Gain = 0.98, Offset = 1, Range = 300 },
                Speed = new SensorChannel { Noise = 2, Gain = 1.01, Offset = -1, Range = 200 },
                Bits = 12,
                FilterSeconds = 0.002,
                Seed = 9,
            },
            model);
        SensorModel pulses = Model(("sensors.pulses-per-revolution", "60"), ("sensors.pulse-timeout", "50 ms"))!;
        Assert.Equal((60, 0.05), (pulses.PulsesPerRevolution, pulses.PulseTimeoutSeconds));
        Assert.Null(Model(("sensors.seed", "9")));
    }

    [Theory]
    [InlineData("sensors.bits", "12", null, null, "it without a range", "a range of current, voltage or speed in the file")]
    [InlineData("sensors.pulse-timeout", "1 s", null, null, "it in a case without a pulse pick-up", "sensors.pulses-per-revolution in the file")]
    [InlineData("sensors.speed-noise", "1 rpm", "sensors.pulses-per-revolution", "60", "it beside sensors.pulses-per-revolution, which is no continuous reading", "one of the two")]
    [InlineData("sensors.speed-noise", "1 rpm", "sensors.speed", "no", "it in a case without a speed sensor", "sensors.speed = \"yes\"")]
    public void Prepare_KeysThatContradict_AreRefused(string key, string value, string? beside, string? besideValue, string found, string allowed)
    {
        (string, string?)[] keys = [(key, value), (beside ?? key, besideValue ?? value)];
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(keys)));

        Assert.Equal((key, found, allowed), (problem.Key, problem.Found, problem.Allowed));
    }

    [Fact]
    public void Run_PulsesGoMissingInACase_IsTold()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(
            ["at = \"5 s\"\nmissing-pulses = 0.05\nextra-pulses = 0.1"], ("sensors.pulses-per-revolution", "60"), ("sensors.speed-loss-time", "200 ms")));

        Assert.Contains(
            "event: 5 % of the pick-up's pulses are lost, 10 % more pulses come than the pick-up's own", study.Result.Timeline.Select(ReasonText.Sentence));
        Assert.Equal("pass", study.Verdict.Word);
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(["at = \"5 s\"\nmissing-pulses = 0.05"])));
        Assert.Equal(("event.missing-pulses", "it in a case without a pulse pick-up"), (problem.Key, problem.Found));
    }

    private static AnalogSensor Sensor(SensorChannel channel, SensorModel model) => new(channel, model, 1, 0.001);

    private static PulsePickup Turning(double speed, double seconds)
    {
        PulsePickup pickup = new(60, 0.1);
        for (int tick = 0; tick <= Math.Round(seconds / 0.001); tick++) pickup.Look(tick * 0.001, speed);
        return pickup;
    }

    private static PlayedRun Play(SensorModel model)
    {
        Core.Settings settings = PlayedRun.Patient;
        settings.SpeedLossMicroseconds = 200_000;
        return PlayedRun.Of(settings, PlayedRun.Setup() with { Sensors = model });
    }

    private static SensorModel? Model(params (string Key, string? Value)[] keys) => CaseRunner.Prepare(LineShaftCase.With(keys)).Setup.Sensors;
}
