using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>From the keys of field, brake, sensors and protections to the controller's settings, and what is refused on the way.</summary>
public sealed class CaseControlTests
{
    private static readonly (string Key, string? Value)[] Field =
        [("field.supply-voltage", "110 V"), ("field.resistance", "100 ohm"), ("field.rated-current", "1.1 A")];

    [Fact]
    public void Settings_CaseWithoutAnyOfIt_LeavesEveryProtectionOff()
    {
        Settings settings = LineShaftCase.Run(LineShaftCase.With()).Settings;

        Assert.Equal((0f, 0f, 0f, 0f), (settings.SupplyLowVolts, settings.OverloadAmps, settings.ResistorJoules, settings.MinimumFieldAmps));
        Assert.Equal((Settings.Largest, Settings.Largest, Settings.Largest), (settings.SupplyHighVolts, settings.StallAmps, settings.OverspeedRadPerSec));
        Assert.Equal((Settings.Largest, Settings.Largest), (settings.ReverseRadPerSec, settings.DisagreementVolts));
        Assert.Equal((0, 0, false, FluxSource.Constant), (settings.StartsPerHour, settings.RequiredPermissives, settings.BrakeFitted, settings.FluxSource));
        // 1 % of 220 V over the plate's constant.
        Assert.Equal(2.2 / settings.MachineConstant, settings.StandstillRadPerSec, 1e-4);
    }

    [Fact]
    public void Settings_EveryKey_ArrivesInItsSetting()
    {
        Settings settings = LineShaftCase.Run(LineShaftCase.With(
            ["at = \"0 s\"\ncommand = \"stop\""],
            [
                .. Field, ("field.contactor", "yes"), ("field.minimum-current", "0.5 A"), ("field.build-time", "200 ms"), ("field.maximum-time", "3 s"),
                ("brake.resistance", "1.5 ohm"), ("brake.release-speed", "10 rad/s"), ("brake.delay", "30 ms"), ("brake.maximum-time", "4 s"),
                ("sensors.speed-loss", "finish start"), ("sensors.speed-loss-time", "20 ms"), ("sensors.resistive-confirm-time", "70 ms"),
                ("sensors.standstill-speed", "2 rad/s"), ("sensors.zero-current", "3 A"), ("sensors.line-contact", "no"), ("sensors.stage-contacts", "no"),
                ("sensors.brake-contact", "no"), ("sensors.step-settle-time", "8 ms"), ("sensors.step-tolerance", "1"),
                ("protection.trip-confirm-time", "6 ms"), ("protection.supply-low", "150 V"), ("protection.dip-time", "250 ms"),
                ("protection.dip-action", "put resistance back"), ("protection.supply-high", "260 V"), ("protection.supply-high-time", "1 s"),
                ("protection.overload-current", "100 %"), ("protection.overload-class", "\"20\""), ("protection.resistor-energy", "90 kJ"),
                ("protection.resistor-time-constant", "400 s"), ("protection.resistor-temperature", "300 degC"), ("protection.starts-per-hour", "7"),
                ("protection.maximum-start-time", "9 s"), ("protection.stall-current", "120 A"), ("protection.stall-time", "2 s"),
                ("protection.overspeed", "170 rad/s"), ("protection.reverse-speed", "5 rad/s"), ("protection.disagreement", "33 V"),
                ("protection.disagreement-time", "40 ms"), ("protection.maximum-tick", "3 ms"), ("protection.permissives", "3"), ("control.spinning-start", "no"),
            ])).Settings;

        Assert.True(settings.FieldContactorFitted && settings.FieldContactFitted && settings.FieldSensorFitted && settings.BrakeFitted);
        Assert.Equal((0.5f, 200_000, 3_000_000), (settings.MinimumFieldAmps, settings.FieldBuildMicroseconds, settings.MaximumFieldMicroseconds));
        Assert.Equal((FluxSource.FieldCurrent, 2, 1.1f), (settings.FluxSource, settings.CurvePoints, settings.CurveAmps[1]));
        Assert.Equal((1.67f, 10f, 30_000, 4_000_000), (settings.BrakeOhms, settings.BrakeReleaseRadPerSec, settings.BrakeDelayMicroseconds, settings.MaximumBrakeMicroseconds));
        Assert.Equal((SpeedLossAction.FinishStart, 20_000, 70_000), (settings.SpeedLoss, settings.SpeedLossMicroseconds, settings.ResistiveConfirmMicroseconds));
        Assert.False(settings.LineContactFitted || settings.StageContactsFitted || settings.BrakeContactFitted || settings.SpinningStart);
        Assert.Equal((2f, 3f, 8_000, 1f), (settings.StandstillRadPerSec, settings.ZeroAmps, settings.StepSettleMicroseconds, settings.StepToleranceRatio));
        Assert.Equal((6_000, 150f, 250_000, DipAction.PutResistanceBack), (settings.TripConfirmMicroseconds, settings.SupplyLowVolts, settings.DipMicroseconds, settings.DipAction));
        Assert.Equal((220f, 260f, 1_000_000), (settings.NominalSupplyVolts, settings.SupplyHighVolts, settings.SupplyHighMicroseconds));
        Assert.Equal((77f, 580f), (settings.OverloadAmps, settings.OverloadSeconds));
        Assert.Equal((90_000f, 400f, true, 300f), (settings.ResistorJoules, settings.ResistorSeconds, settings.ResistorSensorFitted, settings.ResistorCelsius));
        Assert.Equal((7, 9_000_000, 120f, 2_000_000), (settings.StartsPerHour, settings.MaximumStartMicroseconds, settings.StallAmps, settings.StallMicroseconds));
        Assert.Equal((170f, 5f, 33f, 40_000), (settings.OverspeedRadPerSec, settings.ReverseRadPerSec, settings.DisagreementVolts, settings.DisagreementMicroseconds));
        Assert.Equal((3_000, 0b111), (settings.MaximumTickMicroseconds, settings.RequiredPermissives));
    }

    [Theory]
    [InlineData("10A", 125)]
    [InlineData("\"10\"", 290)]
    [InlineData("\"20\"", 580)]
    [InlineData("\"30\"", 870)]
    public void Settings_OverloadClass_IsATimeConstant(string tripClass, float seconds) =>
        Assert.Equal(seconds, LineShaftCase.Run(LineShaftCase.With(("protection.overload-current", "77 A"), ("protection.overload-class", tripClass))).Settings.OverloadSeconds);

    [Theory]
    [InlineData("brake.release-speed = 60 rpm", "brake.resistance: found a brake without it; allowed: a resistance in ohm")]
    [InlineData("brake.resistance = 2 ohm", "brake.release-speed: found a brake without it; allowed: a speed in rpm")]
    [InlineData("brake.resistance = 2 ohm; brake.release-speed = 60 rpm; sensors.speed = no; sensors.speed-loss = finish start; sensors.step-tolerance = 1; sensors.zero-current = 2 A", "sensors.speed: found \"no\" with a brake; allowed: \"yes\": the brake is released by the speed")]
    [InlineData("sensors.speed = no; sensors.speed-loss = finish start; sensors.zero-current = 2 A", "sensors.speed: found \"no\" without sensors.step-tolerance; allowed: sensors.step-tolerance in the file")]
    [InlineData("sensors.speed-loss = finish start", "sensors.speed-loss: found \"finish start\" without sensors.zero-current; allowed: sensors.zero-current in the file")]
    [InlineData("sensors.speed = no; sensors.step-tolerance = 1; sensors.zero-current = 2 A", "sensors.speed: found \"no\" with sensors.speed-loss = \"trip\"; allowed: sensors.speed-loss = \"finish start\"")]
    [InlineData("field.minimum-current = 1 A", "field.supply-voltage: found nothing; allowed: a voltage")]
    [InlineData("field.supply-voltage = 110 V; field.resistance = 100 ohm; field.minimum-current = 0.5 A; sensors.field-current = no", "field.minimum-current: found \"0.5 A\" without a field current to watch; allowed: a field circuit, and sensors.field-current = \"yes\"")]
    [InlineData("field.supply-voltage = 110 V; field.resistance = 100 ohm; field.minimum-current = 1.1 A", "field.minimum-current: found 1.1 A; allowed: below the 1.1 A that 110 V drives through 100 ohm")]
    [InlineData("field.supply-voltage = 110 V; field.resistance = 100 ohm; sensors.field-contact = yes", "sensors.field-contact: found \"yes\" without a field contactor; allowed: field.contactor = \"yes\", or leave it out")]
    [InlineData("field.supply-voltage = 110 V; field.resistance = 100 ohm; field.build-time = 6 s", "field.maximum-time: found \"5 s\"; allowed: above field.build-time, 6 s")]
    [InlineData("motor.kind = permanent magnet; field.supply-voltage = 110 V; field.resistance = 100 ohm", "field.supply-voltage: found a field circuit on a permanent magnet motor")]
    [InlineData("sensors.line-contact = no", "sensors.line-contact: found \"no\" without sensors.zero-current; allowed: sensors.zero-current in the file, a current")]
    [InlineData("sensors.stage-contacts = no", "sensors.stage-contacts: found \"no\" without sensors.step-tolerance; allowed: sensors.step-tolerance in the file, a plain number above 0, up to 1")]
    [InlineData("sensors.step-tolerance = 1", "sensors.step-tolerance: found \"1\" without sensors.zero-current")]
    [InlineData("sensors.brake-contact = no", "sensors.brake-contact: found it in a case without a brake; allowed: brake.resistance in the file")]
    [InlineData("sensors.speed-loss = finish start; sensors.zero-current = 2 A; sensors.resistive-confirm-time = 1 ms", "sensors.resistive-confirm-time: found \"1 ms\"; allowed: at least control.confirm-time, 0.002 s")]
    [InlineData("protection.supply-low = 230 V", "protection.supply-low: found \"230 V\"; allowed: below supply.voltage, 220 V")]
    [InlineData("protection.supply-high = 210 V", "protection.supply-high: found \"210 V\"; allowed: above supply.voltage, 220 V")]
    [InlineData("protection.dip-time = 1 s", "protection.dip-time: found \"1 s\" without protection.supply-low")]
    [InlineData("control.instant-trip = 140 A", "control.instant-trip: found \"140 A\"; allowed: above the permitted peak of 155 A")]
    [InlineData("expect.by = 1 s", "expect.by: found \"1 s\" without expect.fault; allowed: expect.fault in the file, the name of a fault")]
    public void Run_Contradiction_IsRefusedAtItsKeyInASentence(string keys, string expected)
    {
        (string Key, string? Value)[] changes = [.. keys.Split("; ").Select(pair => (pair.Split(" = ")[0], (string?)pair.Split(" = ")[1]))];

        IReadOnlyList<CaseProblem> problems = LineShaftCase.Refused(LineShaftCase.With(changes));

        Assert.Contains(problems, problem => problem.ToString().Split(": ", 2)[1].StartsWith(expected, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("field = \"open\"", "event.field: found it in a case without a field circuit")]
    [InlineData("field-supply-voltage = \"50 V\"", "event.field-supply-voltage: found it in a case without a field circuit")]
    [InlineData("permissives = 1", "event.permissives: found it in a case without protection.permissives")]
    [InlineData("resistor-temperature = \"50 degC\"", "event.resistor-temperature: found it in a case without protection.resistor-temperature")]
    [InlineData("contact = \"brake\"\ncontact-fault = \"welded\"", "event.contact: found it in a case without a brake")]
    [InlineData("contact = \"field\"\ncontact-fault = \"welded\"", "event.contact: found it in a case without a field contactor")]
    [InlineData("contact = \"stage 5\"\ncontact-fault = \"welded\"", "event.contact: found \"stage 5\" of 4 stages; allowed: \"stage 1\" to \"stage 4\"")]
    public void Run_EventAboutWhatIsNotThere_IsRefused(string keys, string expected)
    {
        CaseProblem problem = Assert.Single(LineShaftCase.Refused(LineShaftCase.With(["at = \"1 s\"\n" + keys])));

        Assert.True(problem.Line > 0);
        Assert.StartsWith(expected, problem.ToString().Split(": ", 2)[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("contact = \"line\"", "event.contact-fault: found nothing beside event.contact; allowed: \"welded\", \"refuses to close\"")]
    [InlineData("contact-fault = \"welded\"", "event.contact: found nothing beside event.contact-fault; allowed: \"line\", \"field\"")]
    public void Parse_HalfAContactFault_IsRefused(string keys, string expected)
    {
        CaseException error = Assert.Throws<CaseException>(() => CaseFile.Parse("case.toml", "[[event]]\nat = \"1 s\"\n" + keys + "\n"));

        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_LineWithoutAuxiliaryContact_IsStartedOnceItCountsAsOpen()
    {
        RunResult result = LineShaftCase.Run(LineShaftCase.With(("sensors.line-contact", "no"), ("sensors.zero-current", "1 A"))).Result;

        Assert.Empty(result.Faults);
        Assert.Equal([Phase.Ready, Phase.Accelerating, Phase.Running], result.Phases.Select(entry => entry.Phase));
        // Twice the contactor's 40 ms, but at least 100 ms.
        Assert.InRange(result.Phases[1].Seconds, 0.1, 0.105);
        Assert.DoesNotContain(result.Timeline, entry => entry.Reason == Reason.StartRefused);
    }

    [Fact]
    public void Of_EverySetting_HasAKey() =>
        Assert.All(SettingTable.Rows, row => Assert.NotNull(SettingKeys.Of(row.Id)));

    [Fact]
    public void Design_BrakeThatPassesThePeak_IsWarnedOf()
    {
        StartStudy study = LineShaftCase.Run(LineShaftCase.With(("brake.resistance", "1 ohm"), ("brake.release-speed", "60 rpm")));

        // (220 - 4) V / 1.17 ohm; 155 A x 1.17 ohm + 2 V.
        string warning = Assert.Single(study.Warnings, text => text.Contains("brake", StringComparison.Ordinal));
        Assert.Contains("would take 184.6 A through 1.17 ohm", warning, StringComparison.Ordinal);
        Assert.Contains($" V and {Text.Number(183.35 / study.Setup.Machine.Constant * 30 / Math.PI)} r/min", warning, StringComparison.Ordinal);
        Assert.DoesNotContain(LineShaftCase.Run(LineShaftCase.With(("brake.resistance", "1.3 ohm"), ("brake.release-speed", "60 rpm"))).Warnings, text => text.Contains("brake", StringComparison.Ordinal));
    }
}
