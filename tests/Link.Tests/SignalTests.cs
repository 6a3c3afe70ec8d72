using System;
using System.Linq;
using StarterCtl.Engine.Records;
using StarterCtl.Firmware;
using Xunit;

namespace StarterCtl.Link.Tests;

/// <summary>Samples of a board are rows of the one table of signals.</summary>
public sealed class SignalTests
{
    // Readings and lamps that only a record of the simulator has: a replay needs them, and a board's samples are too few for one.
    private static readonly string[] NotSent =
    [
        "elapsedMicroseconds", "stale", "resistorCelsius", "permissives", "startPressed", "stopPressed", "resetPressed", "emergencyStop",
        "readyLamp", "runningLamp", "trippedLamp",
    ];

    [Fact]
    public void Signals_AllButTheSimulationsOwn_AreInASample()
    {
        string[] sent = [.. typeof(TelemetryMessage).GetFields().Select(field => field.Name), .. Enum.GetNames<TelemetrySwitches>()];
        string[] signals = [.. SignalTable.All.Where(signal => signal.Role != SignalRole.Plant).Select(signal => signal.Name).Except(NotSent)];

        Assert.Equal(22, signals.Length);
        Assert.All(signals.Where(signal => signal != "timeSeconds"), signal => Assert.Contains(signal, sent, StringComparer.OrdinalIgnoreCase));
    }

    [Fact]
    public void Take_EveryField_LandsInItsSignal()
    {
        TelemetryMessage message = new()
        {
            TimeMicroseconds = 1_500_000,
            Phase = Core.Phase.Running,
            Stage = 4,
            Reason = Core.Reason.AllStagesCutOut,
            Fault = Core.FaultId.Overload,
            CloseStages = 7,
            StagesClosed = 3,
            SupplyVolts = 250f,
            ArmatureAmps = 100f,
            SpeedRadPerSec = 96f,
            BackEmfVolts = 240f,
            ResistiveBackEmfVolts = 245f,
            ReasonQuantity = 1f,
            ReasonLimit = 2f,
            FieldAmps = 3f,
            Switches = TelemetrySwitches.ResistiveValid,
        };

        Sample sample = Taken(message);

        double[] numbers = [.. SignalTable.All.Where(signal => !NotSent.Contains(signal.Name)).Select(signal => signal.Number(sample))];
        Assert.Equal([1.5, 250, 100, 96, 240, 245, double.NaN, double.NaN, 3, 4, (int)message.Reason, 1, 2, 0, 0, 7, 3, (int)message.Fault, 3, 0, 0, 0, 0, 0, double.NaN, double.NaN, double.NaN], numbers);
        Assert.True(float.IsNaN(sample.ResistorCelsius));
    }

    [Theory]
    [InlineData(TelemetrySwitches.CloseLine, "closeLine")]
    [InlineData(TelemetrySwitches.LineClosed, "lineClosed")]
    [InlineData(TelemetrySwitches.CloseBrake, "closeBrake")]
    [InlineData(TelemetrySwitches.BrakeClosed, "brakeClosed")]
    [InlineData(TelemetrySwitches.CloseField, "closeField")]
    [InlineData(TelemetrySwitches.FieldClosed, "fieldClosed")]
    [InlineData(TelemetrySwitches.SpeedValid, "speedValid")]
    public void Take_ASwitch_IsThatSignalAlone(TelemetrySwitches bit, string name)
    {
        Sample sample = Taken(new TelemetryMessage { Switches = bit });

        Assert.Equal([name], SignalTable.All.Where(signal => signal.Number(sample) == 1).Select(signal => signal.Name));
    }

    [Fact]
    public void Take_CountersThatGoRound_RunOn()
    {
        TelemetryDecoder decoder = new();
        Take(decoder, new TelemetryMessage { TimeMicroseconds = int.MaxValue - 999, DroppedSamples = 65_530 });
        Sample second = Take(decoder, new TelemetryMessage { TimeMicroseconds = int.MinValue + 1000, DroppedSamples = 4 });
        Sample third = Take(decoder, new TelemetryMessage { TimeMicroseconds = 1000, DroppedSamples = 4 });

        // 2^31 - 1 + 1001 us, and half the counter's round later 2^32 + 1000 us.
        Assert.Equal((2147.484648, 4294.968296), (Math.Round(second.TimeSeconds, 6), Math.Round(third.TimeSeconds, 6)));
        Assert.Equal(10, decoder.Dropped);
    }

    private static Sample Taken(TelemetryMessage message) => Take(new TelemetryDecoder(), message);

    private static Sample Take(TelemetryDecoder decoder, TelemetryMessage message)
    {
        Frame frame = new();
        message.Write(frame);
        return decoder.Take(frame);
    }
}
