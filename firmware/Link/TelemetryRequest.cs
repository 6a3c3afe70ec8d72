namespace StarterCtl.Firmware;

/// <summary>Sets how often samples come. Body of <see cref="MessageId.SetTelemetry"/>.</summary>
public sealed class TelemetryRequest
{
    /// <summary>Length of the body, bytes.</summary>
    public const int BodyBytes = 4;

    /// <summary>Offset of <see cref="PeriodMicroseconds"/>.</summary>
    public const int PeriodMicrosecondsAt = 0;

    /// <summary>Time between samples, microseconds: 0 for none, or <see cref="TelemetryClock.ShortestMicroseconds"/> to <see cref="TelemetryClock.LongestMicroseconds"/>.</summary>
    public int PeriodMicroseconds;

    /// <summary>Writes the message.</summary>
    public void Write(Frame frame)
    {
        frame.Begin(MessageId.SetTelemetry, BodyBytes);
        frame.PutInt(PeriodMicrosecondsAt, PeriodMicroseconds);
    }

    /// <summary>Reads the message from a frame of its id and length.</summary>
    public void Read(Frame frame)
    {
        PeriodMicroseconds = frame.GetInt(PeriodMicrosecondsAt);
    }
}
