using System;
using CsCheck;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// The two back-EMFs: from speed and flux, and from the voltage equation. Sources: tests/published/SOURCES.md, by the number in
/// each trait.
/// </summary>
public sealed class EstimatorTests
{
    private const double RadPerSecPerRpm = Math.PI / 30;

    /// <summary>What an example gives: its first point makes the flux, its second is held against the printed speed.</summary>
    public static TheoryData<string, double, double, double, double, double, double, double, double, double> Printed => new()
    {
        // entry, V, first ohm, A, r/min, second ohm, A, flux of the first, printed r/min, its tolerance
        { "CHK-08", 250, 0.15, 110, 600, 0.15, 50, 0.0155 / 0.024, 965, 0.5 },
        { "CHK-09", 250, 0.2, 7, 1000, 0.2, 49, 1, 966.2, 0.15 },
        { "CHK-12", 230, 0.4, 15, 650, 1.4, 15, 1, 606.5, 0.05 },
        { "CHK-12", 230, 0.4, 15, 650, 1.4, 7.5, 1, 636.9, 0.06 },
        { "CHK-29", 400, 0.25, 25, 1200, 3, 15, 0.7, 1545.6, 0.5 },
        { "CHK-29", 230, 0.2, 10, 1000, 2.2, 8, 0.8, 1164.5, 0.05 },
    };

    [Theory]
    [Trait("Source", "CHK-08")]
    [Trait("Source", "CHK-09")]
    [Trait("Source", "CHK-12")]
    [Trait("Source", "CHK-29")]
    [MemberData(nameof(Printed))]
    public void BackEmf_PrintedExample_FluxAndSpeedMakeWhatTheVoltageEquationLeaves(
        string entry, double volts, double ohms1, double amps1, double rpm1, double ohms2, double amps2, double flux2, double rpm2, double rpmTolerance)
    {
        double constant = (volts - amps1 * ohms1) / (rpm1 * RadPerSecPerRpm);
        Settings settings = Bench.Chk01();
        if (flux2 == 1) settings.MachineConstant = (float)constant;
        else MakeSeries(settings, [0f, (float)amps2, (float)amps1], [0.01f, (float)(flux2 * constant), (float)constant]);

        foreach ((double ohms, double amps, double rpm, double tolerance) in new[] { (ohms1, amps1, rpm1, 1e-3), (ohms2, amps2, rpm2, rpmTolerance) })
        {
            settings.StageOhms[0] = (float)ohms;
            Estimate estimate = Settled(settings, volts, amps, rpm * RadPerSecPerRpm);

            double exact = volts - amps * ohms;
            Assert.Equal(exact, estimate.ResistiveBackEmfVolts, 1e-3);
            Assert.True(Math.Abs(exact - estimate.BackEmfVolts) <= exact * tolerance / rpm + 1e-3, $"{entry}: {estimate.BackEmfVolts} V for {exact} V");
        }
    }

    [Fact]
    [Trait("Source", "CHK-12")]
    public void BackEmf_SalamWithAddedResistance_IsThatOf500Rpm()
    {
        Settings settings = Bench.Chk01();
        settings.MachineConstant = (float)((220 - 10 * 1.0) / (900 * RadPerSecPerRpm));
        // Printed: 9.3 ohm to add, to a tenth of an ohm; 10 A make half a volt of that.
        settings.StageOhms[0] = 1f + 9.3f;

        Estimate estimate = Settled(settings, 220, 10, 500 * RadPerSecPerRpm);

        Assert.Equal(estimate.ResistiveBackEmfVolts, estimate.BackEmfVolts, 0.5f);
    }

    [Fact]
    public void Estimates_SteadyStateOfAnyMachine_AreTheSame() =>
        Gen.Select(Gen.Double[20, 600], Gen.Double[0, 2], Gen.Double[0.02, 2], Gen.Double[-0.5, 0.9], Gen.Double[0.05, 5], Gen.Int[0, 2], Gen.Double[0.2, 1]).Sample(
            (volts, brushVolts, ohms, part, constant, source, bend) =>
            {
                double amps = part * (volts - brushVolts) / ohms;
                Settings settings = Bench.Chk01();
                settings.BrushDropVolts = (float)brushVolts;
                settings.StageOhms[0] = (float)ohms;
                settings.MachineConstant = (float)constant;
                double most = 2 * volts / ohms;
                float[] curveAmps = [0f, (float)(most * 0.5), (float)most];
                float[] curveConstants = [(float)(0.1 * constant), (float)(bend * constant), (float)constant];
                double flux = 1;
                if (source != 0)
                {
                    MakeSeries(settings, curveAmps, curveConstants);
                    double x = Math.Abs(amps) / most;
                    flux = x < 0.5 ? 0.1 + (bend - 0.1) * 2 * x : bend + (1 - bend) * (2 * x - 1);
                }

                if (source == 2)
                {
                    // The same excitation from a field: its current is the armature's magnitude.
                    settings.FluxSource = FluxSource.FieldCurrent;
                    settings.FieldSensorFitted = true;
                }

                double backEmf = volts - ((float)amps >= 0f ? brushVolts : -brushVolts) - amps * ohms;
                Estimate estimate = Settled(settings, volts, amps, backEmf / (flux * constant), Math.Abs(amps));
                return estimate.ResistiveValid && Math.Abs(estimate.BackEmfVolts - estimate.ResistiveBackEmfVolts) <= 2e-5 * volts * 2.5
                    && Math.Abs(estimate.BackEmfVolts - backEmf) <= 2e-5 * volts * 2.5;
            },
            threads: 2);

    [Theory]
    // 1000 A/s: 1 A in a tick of 1 ms, 10 A in one of 10 ms, none in one of no length.
    [InlineData(1_000, 0.99f, true)]
    [InlineData(1_000, -0.99f, true)]
    [InlineData(1_000, 1.01f, false)]
    [InlineData(1_000, -1.01f, false)]
    [InlineData(10_000, 9.9f, true)]
    [InlineData(10_000, 10.1f, false)]
    [InlineData(0, 0f, true)]
    [InlineData(0, 0.001f, false)]
    public void Resistive_CurrentThatChanges_IsValidUpToTheSlope(int microseconds, float changeAmps, bool isValid)
    {
        Settings settings = Bench.Chk01();
        settings.SteadyAmpsPerSec = 1000f;
        Estimator estimator = New(settings);
        Estimate estimate = new();
        Readings readings = new() { SupplyVolts = 250f, LineClosed = true, ArmatureAmps = 100f };
        estimator.Update(Elapsed.Ceiling, readings, 0, estimate);

        readings.ArmatureAmps += changeAmps;
        estimator.Update(microseconds, readings, 0, estimate);

        Assert.Equal(isValid, estimate.ResistiveValid);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    public void Resistive_CurrentThatIsNoNumber_IsNotValidAndRecoversBehindIt(float amps)
    {
        Settings settings = Bench.Chk01();
        settings.SteadyAmpsPerSec = 1000f;
        Estimator estimator = New(settings);
        Estimate estimate = new();
        Readings readings = new() { SupplyVolts = 250f, LineClosed = true, ArmatureAmps = amps };

        estimator.Update(1000, readings, 0, estimate);
        Assert.False(estimate.ResistiveValid);
        readings.ArmatureAmps = 100f;
        estimator.Update(1000, readings, 0, estimate);
        Assert.False(estimate.ResistiveValid);
        estimator.Update(1000, readings, 0, estimate);
        Assert.True(estimate.ResistiveValid);
    }

    [Fact]
    public void Resistive_LineOpen_IsNotValid()
    {
        Estimate estimate = new();
        New(Bench.Chk01()).Update(1000, new Readings { SupplyVolts = 250f }, 0, estimate);

        Assert.False(estimate.ResistiveValid);
    }

    [Theory]
    [InlineData(SpeedLossAction.Trip, false)]
    [InlineData(SpeedLossAction.KeepRunning, false)]
    [InlineData(SpeedLossAction.FinishStart, true)]
    public void Deciding_SpeedUnknown_TakesTheVoltageEquationOnlyWhereItMay(SpeedLossAction action, bool isValid)
    {
        Settings settings = Bench.Chk01();
        settings.SpeedLoss = action;
        settings.ZeroAmps = 10f;
        Readings readings = new() { SupplyVolts = 250f, LineClosed = true, ArmatureAmps = 350f, SpeedRadPerSec = 1e9f };
        Estimate estimate = new();

        New(settings).Update(Elapsed.Ceiling, readings, 0, estimate);

        Assert.Equal((isValid, isValid ? 125f : 0f), (estimate.DecidingValid, estimate.DecidingVolts));
    }

    [Theory]
    [InlineData(10f, false)]
    [InlineData(-10f, false)]
    [InlineData(10.01f, true)]
    [InlineData(-10.01f, true)]
    [InlineData(float.NaN, false)]
    public void Deciding_SpeedUnknown_OnlyWhileACurrentFlows(float amps, bool isValid)
    {
        Settings settings = Bench.Chk01();
        settings.SpeedLoss = SpeedLossAction.FinishStart;
        settings.ZeroAmps = 10f;
        Readings readings = new() { SupplyVolts = 250f, LineClosed = true, ArmatureAmps = amps };
        Estimate estimate = new();

        New(settings).Update(Elapsed.Ceiling, readings, 0, estimate);

        Assert.Equal(isValid, estimate.DecidingValid);
    }

    [Fact]
    public void Deciding_SeriesMachineWithoutSpeed_ScalesTheBackEmfByTheFluxOfThePeak()
    {
        // k(350 A) = 2 and k(700 A) = 2.5: 125 V now are 156.25 V at the peak's flux.
        Settings settings = Bench.Chk01();
        settings.SpeedLoss = SpeedLossAction.FinishStart;
        settings.ZeroAmps = 10f;
        settings.StepToleranceRatio = 0.3f;
        MakeSeries(settings, [0f, 350f, 700f], [0.05f, 2f, 2.5f]);

        Estimate known = Settled(settings, 250, 350, 62.5);
        settings.SpeedSensorFitted = false;
        Estimate unknown = Settled(settings, 250, 350, 0);

        Assert.Equal((true, true), (known.DecidingValid, unknown.DecidingValid));
        Assert.Equal(125f, unknown.ResistiveBackEmfVolts, 1e-3f);
        Assert.Equal(156.25f, known.DecidingVolts, 1e-3f);
        Assert.Equal(156.25f, unknown.DecidingVolts, 1e-3f);
    }

    private static Estimator New(Settings settings)
    {
        Assert.Equal(SettingId.None, settings.FirstProblem());
        return new Estimator(settings, new ContactProof(settings, new CurrentProof(settings)));
    }

    private static Estimate Settled(Settings settings, double volts, double amps, double speed, double fieldAmps = 0)
    {
        // The later stages only have to fall.
        for (int i = 1; i <= settings.StageCount; i++) settings.StageOhms[i] = settings.StageOhms[0] / (1 + i);
        Readings readings = new()
        {
            SupplyVolts = (float)volts,
            ArmatureAmps = (float)amps,
            FieldAmps = (float)fieldAmps,
            SpeedRadPerSec = (float)speed,
            SpeedValid = settings.SpeedSensorFitted,
            LineClosed = true,
        };
        Estimator estimator = New(settings);
        Estimate estimate = new();
        for (int i = 0; i < 2; i++) estimator.Update(1000, readings, 0, estimate);
        return estimate;
    }

    private static void MakeSeries(Settings settings, float[] amps, float[] constants)
    {
        settings.FluxSource = FluxSource.ArmatureCurrent;
        settings.CurvePoints = amps.Length;
        amps.CopyTo(settings.CurveAmps, 0);
        constants.CopyTo(settings.CurveConstants, 0);
    }
}
