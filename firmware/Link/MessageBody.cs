namespace StarterCtl.Firmware;

/// <summary>How long the body of each message is.</summary>
public static class MessageBody
{
    /// <summary>Answer for an id that is no message.</summary>
    public const int Unknown = -1;

    /// <summary>Length of a message's body.</summary>
    /// <returns>Bytes, or <see cref="Unknown"/>.</returns>
    public static int Bytes(MessageId id)
    {
        switch (id)
        {
            case MessageId.AskHello:
            case MessageId.ReadLock:
            case MessageId.Stop:
            case MessageId.Reset:
            case MessageId.Start:
            case MessageId.CommitUpload:
            case MessageId.BeginNoise:
            case MessageId.EndNoise:
            case MessageId.EndExchange:
            case MessageId.ReadMemory: return 0;
            case MessageId.Ping: return PingRequest.BodyBytes;
            case MessageId.SetTelemetry: return TelemetryRequest.BodyBytes;
            case MessageId.ReadLog: return LogRequest.BodyBytes;
            case MessageId.BeginUpload: return UploadBegin.BodyBytes;
            case MessageId.PutValue: return UploadValue.BodyBytes;
            case MessageId.ReadSetting: return SettingRequest.BodyBytes;
            case MessageId.Ack: return AckAnswer.BodyBytes;
            case MessageId.Hello: return HelloAnswer.BodyBytes;
            case MessageId.Pong: return PongAnswer.BodyBytes;
            case MessageId.LogEntry: return LogAnswer.BodyBytes;
            case MessageId.Lock: return LockAnswer.BodyBytes;
            case MessageId.Telemetry: return TelemetryMessage.BodyBytes;
            case MessageId.Setting: return SettingAnswer.BodyBytes;
            case MessageId.Calibrate: return CalibrationRequest.BodyBytes;
            case MessageId.ReadNoise: return NoiseRequest.BodyBytes;
            case MessageId.Calibration: return CalibrationAnswer.BodyBytes;
            case MessageId.Noise: return NoiseAnswer.BodyBytes;
            case MessageId.Memory: return MemoryAnswer.BodyBytes;
            case MessageId.BeginExchange: return ExchangeBegin.BodyBytes;
            case MessageId.Exchange: return ExchangeRequest.BodyBytes;
            case MessageId.Exchanged: return ExchangeAnswer.BodyBytes;
            default: return Unknown;
        }
    }
}
