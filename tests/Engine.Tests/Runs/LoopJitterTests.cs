using System;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>A control loop whose ticks come late.</summary>
public sealed class LoopJitterTests
{
    [Fact]
    public void Run_WithJitter_TicksComeLateByUpToItAndNeverDrift()
    {
        Sample[] samples = Samples(LineShaftCase.With(("control.jitter", "300 us")));
        double[] late = [.. samples.Select((sample, tick) => Math.Round(1e6 * sample.TimeSeconds - 1000.0 * (tick - 1), 3))];

        Assert.Equal(8002, samples.Length);
        Assert.All(late, microseconds => Assert.InRange(microseconds, 0, 300));
        // 301 equally likely values: mean 150, standard deviation sqrt((301^2 - 1) / 12) = 86.9; of 8000 the mean is within 4 standard errors.
        Assert.Equal(150, late.Average(), 4 * 86.9 / Math.Sqrt(8000));
        Assert.Contains(0, late);
        Assert.Contains(300, late);
        Assert.Equal(8, samples[^1].TimeSeconds);
    }

    [Fact]
    public void Run_WithJitter_TellsTheControllerTheTimeThatHasPassed()
    {
        Sample[] samples = Samples(LineShaftCase.With(("control.jitter", "300 us")));

        Assert.All(samples.Zip(samples.Skip(1)).Skip(1), pair =>
            Assert.Equal(1e6 * (pair.Second.TimeSeconds - pair.First.TimeSeconds), pair.Second.ElapsedMicroseconds, 1e-3));
    }

    [Fact]
    public void Run_WithJitter_FollowsFromTheSeed()
    {
        double[] First(int seed) => [.. Samples(LineShaftCase.With(("control.jitter", "300 us"), ("sensors.seed", $"{seed}"))).Take(50).Select(sample => sample.TimeSeconds)];

        Assert.Equal(First(1), First(1));
        Assert.NotEqual(First(1), First(2));
    }

    [Fact]
    public void Run_WithJitter_LosesNoEnergy()
    {
        RunResult run = LineShaftCase.Run(LineShaftCase.With(("control.jitter", "900 us"))).Result;

        Assert.Equal(run.SupplyJoules, run.SectionJoules.Sum() + run.ArmatureJoules + run.LoadJoules + run.KineticJoules + run.MagneticJoules + run.ArcJoules, 1e-6 * run.SupplyJoules);
    }

    [Fact]
    public void Prepare_JitterAsLongAsThePeriod_IsRefused()
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(("control.jitter", "1 ms"))));

        Assert.Equal(("control.jitter", "\"1 ms\"", "less than the control period of 1 ms"), (problem.Key, problem.Found, problem.Allowed));
    }

    private static Sample[] Samples(CaseFile file)
    {
        PreparedRun run = CaseRunner.Prepare(file);
        Engine.Records.Record record = new(run.Setup.PeriodMicroseconds);
        StartSimulation.Run(run.Setup, run.Settings, record, cancellation: TestContext.Current.CancellationToken);
        return [.. record.Samples];
    }
}
