using System;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The rule of every cutout against the current that it promises, computed anew in double precision. Sources:
/// tests/published/SOURCES.md; what carries no trait is derived here, with figures of its own.
/// </summary>
public sealed class PeakLawTests
{
    // Single precision: as near as this to its limit a current may be judged either way.
    private const double Rounding = 2e-5;

    [Theory]
    [Trait("Source", "CHK-01")]
    [InlineData(1, 125f)]
    [InlineData(2, 187.5f)]
    [InlineData(3, 218.75f)]
    public void Threshold_ChapmanStarter_IsThePrintedOne(int stage, float volts)
    {
        (PeakLaw law, Estimate estimate) = New(Bench.Chk01(), 250f);

        Assert.Equal(volts, law.ThresholdVolts(stage), 0.05f);
        estimate.DecidingVolts = volts;
        Assert.True(law.IsKept(stage));
        estimate.DecidingVolts = MathF.BitDecrement(volts);
        Assert.False(law.IsKept(stage));
    }

    [Fact]
    public void IsKept_AnySettingsAndReadings_ExactlyWhileTheCurrentBehindTheCutoutIsWithinThePeak() =>
        Gen.Select(GenStarter, Gen.Int[1, 8], Gen.Double[0, 1.2], Gen.Double[-0.5, 2.5], Gen.Bool).Sample(
            (settings, number, supplyPart, backEmfPart, isValid) =>
            {
                int stage = 1 + number % settings.StageCount;
                float supply = (float)(supplyPart * 500), backEmf = (float)(backEmfPart * supplyPart * 500);
                (PeakLaw law, Estimate estimate) = New(settings, supply);
                estimate.DecidingVolts = backEmf;
                estimate.DecidingValid = isValid;
                bool isKept = law.IsKept(stage);

                double behind = Behind(settings, supply, backEmf, settings.StageOhms[stage]);
                // Where standing still would already keep the peak, the supply has gone: that proves nothing.
                double locked = (supply - settings.BrushDropVolts) / settings.StageOhms[stage];
                if (Math.Abs(Math.Abs(behind) / settings.PeakAmps - 1) < Rounding || Math.Abs(locked / settings.PeakAmps - 1) < Rounding) return true;
                return isKept == (isValid && locked > settings.PeakAmps && Math.Abs(behind) <= settings.PeakAmps);
            },
            iter: 20_000,
            threads: 2);

    [Fact]
    public void Limits_AnySupply_FollowItVoltForVolt() =>
        Gen.Select(GenStarter, Gen.Float[0f, 600f], Gen.Float[-50f, 50f]).Sample(
            (settings, supply, change) =>
            {
                double rounding = 1e-3 + 1e-6 * settings.PeakAmps * settings.StageOhms[0];
                PeakLaw before = New(settings, supply).Law, after = New(settings, supply + change).Law;
                for (int stage = 1; stage <= settings.StageCount; stage++)
                {
                    if (Math.Abs(after.ThresholdVolts(stage) - before.ThresholdVolts(stage) - change) > rounding) return false;
                    if (Math.Abs(after.CeilingVolts(stage) - before.CeilingVolts(stage) - change) > rounding) return false;
                }

                return Math.Abs(after.FirstCeilingVolts - before.FirstCeilingVolts - change) <= rounding;
            },
            threads: 2);

    [Fact]
    public void StagesToPreset_RisingSpeed_NeverFallsBelowTheSupplyAndNeverRisesAboveIt() =>
        Gen.Select(GenStarter, Gen.Float[50f, 600f], Gen.Double[0, 2].Array[2]).Sample(
            (settings, supply, parts) =>
            {
                (PeakLaw law, Estimate estimate) = New(settings, supply);
                estimate.DecidingVolts = (float)(Math.Min(parts[0], parts[1]) * supply);
                int slow = law.StagesToPreset();
                estimate.DecidingVolts = (float)(Math.Max(parts[0], parts[1]) * supply);
                int fast = law.StagesToPreset();
                if (parts[0] <= 1 && parts[1] <= 1) return slow <= fast;
                return parts[0] < 1 || parts[1] < 1 || slow >= fast;
            },
            threads: 2);

    [Fact]
    public void StagesToPreset_AnySpeed_ClosesTheLineWithinThePeakAndWithNoStageToSpare() =>
        Gen.Select(GenStarter, Gen.Float[50f, 600f], Gen.Double[0, 1.5]).Sample(
            (settings, supply, part) =>
            {
                (PeakLaw law, Estimate estimate) = New(settings, supply);
                estimate.DecidingVolts = (float)(part * supply);
                int stages = law.StagesToPreset();
                double most = settings.PeakAmps * (1 + Rounding);
                bool isWithin = stages == 0 || Math.Abs(Behind(settings, supply, estimate.DecidingVolts, settings.StageOhms[stages])) <= most;
                bool isOneMoreTooMuch = stages == settings.StageCount || law.ThresholdVolts(stages + 1) <= 0f
                    || Math.Abs(Behind(settings, supply, estimate.DecidingVolts, settings.StageOhms[stages + 1])) >= settings.PeakAmps * (1 - Rounding);
                return isWithin && isOneMoreTooMuch;
            },
            iter: 5_000,
            threads: 2);

    [Fact]
    public void IsKeptOnReturn_AnyDip_ExactlyWhileThePeakIsKeptNowAndAtTheNominalSupply() =>
        Gen.Select(GenStarter, Gen.Int[1, 8], Gen.Double[0, 1], Gen.Double[-0.2, 2]).Sample(
            (settings, number, dip, part) =>
            {
                int stage = 1 + number % settings.StageCount;
                settings.NominalSupplyVolts = 500f;
                float supply = (float)(dip * 500), backEmf = (float)(part * 500);
                (PeakLaw law, Estimate estimate) = New(settings, supply);
                estimate.DecidingVolts = backEmf;

                double now = Behind(settings, supply, backEmf, settings.StageOhms[stage]), then = Behind(settings, 500, backEmf, settings.StageOhms[stage]);
                if (Math.Abs(Math.Abs(now) / settings.PeakAmps - 1) < Rounding || Math.Abs(Math.Abs(then) / settings.PeakAmps - 1) < Rounding) return true;
                return law.IsKeptOnReturn(stage) == (Math.Abs(now) <= settings.PeakAmps && Math.Abs(then) <= settings.PeakAmps);
            },
            iter: 20_000,
            threads: 2);

    [Theory]
    [InlineData(float.NaN, 200f)]
    [InlineData(250f, float.NaN)]
    [InlineData(float.PositiveInfinity, 200f)]
    [InlineData(250f, float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity, 200f)]
    public void IsKept_NoNumber_Never(float supplyVolts, float backEmfVolts)
    {
        (PeakLaw law, Estimate estimate) = New(Bench.Chk01(), supplyVolts);
        estimate.DecidingVolts = backEmfVolts;

        Assert.False(law.IsKept(1));
        Assert.Equal(0, law.StagesToPreset());
    }

    private static readonly Gen<Settings> GenStarter =
        Gen.Select(Gen.Int[1, 8], Gen.Float[0.01f, 1f], Gen.Float[1.05f, 1.6f], Gen.Float[10f, 1000f], Gen.Float[0f, 3f]).Select(
            (stages, motorOhms, ratio, peakAmps, brushVolts) =>
            {
                Settings settings = Bench.Chk01();
                settings.StageCount = stages;
                settings.PeakAmps = peakAmps;
                settings.InstantTripAmps = 2f * peakAmps;
                settings.BrushDropVolts = brushVolts;
                settings.StageOhms[stages] = motorOhms;
                for (int i = stages - 1; i >= 0; i--) settings.StageOhms[i] = settings.StageOhms[i + 1] * ratio;
                for (int i = 0; i < stages; i++) settings.VoltsLeft[i] = peakAmps * settings.StageOhms[i + 1];
                Assert.Equal(SettingId.None, settings.FirstProblem());
                return settings;
            });

    private static (PeakLaw Law, Estimate Estimate) New(Settings settings, float supplyVolts)
    {
        Estimate estimate = new() { DecidingValid = true };
        PeakLaw law = new(settings, estimate);
        law.Update(new Readings { SupplyVolts = supplyVolts });
        return (law, estimate);
    }

    // The brushes' drop is against the current, whichever way it flows, and holds back what is smaller than it.
    private static double Behind(Settings settings, double supply, double backEmf, double ohms)
    {
        double volts = supply - backEmf;
        return Math.Abs(volts) <= settings.BrushDropVolts ? 0 : (volts - Math.CopySign(settings.BrushDropVolts, volts)) / ohms;
    }
}
