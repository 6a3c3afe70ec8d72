namespace StarterCtl.Firmware;

/// <summary>What a message is. Numbers are published and never reused; 80 hex and above come from the board.</summary>
public enum MessageId
{
    /// <summary>No message.</summary>
    None = 0x00,

    /// <summary>Asks who is there, and begins a session. No body.</summary>
    AskHello = 0x01,

    /// <summary>Asks for an echo and for the board's counts of bad frames: <see cref="PingRequest"/>.</summary>
    Ping = 0x02,

    /// <summary>Sets how often samples come: <see cref="TelemetryRequest"/>.</summary>
    SetTelemetry = 0x03,

    /// <summary>Asks for one event of the log: <see cref="LogRequest"/>.</summary>
    ReadLog = 0x04,

    /// <summary>Asks why the board does not let the controller begin. No body.</summary>
    ReadLock = 0x05,

    /// <summary>Presses stop. No body.</summary>
    Stop = 0x10,

    /// <summary>Presses reset. No body.</summary>
    Reset = 0x11,

    /// <summary>Presses start, if the local permit is given. No body.</summary>
    Start = 0x12,

    /// <summary>Begins the upload of a whole set of settings: <see cref="UploadBegin"/>.</summary>
    BeginUpload = 0x20,

    /// <summary>The next value of the set: <see cref="UploadValue"/>.</summary>
    PutValue = 0x21,

    /// <summary>Ends the upload and asks for the set to be kept. No body.</summary>
    CommitUpload = 0x22,

    /// <summary>Asks for a value of the set that is kept: <see cref="SettingRequest"/>.</summary>
    ReadSetting = 0x23,

    /// <summary>Asks for a step of a calibration: <see cref="CalibrationRequest"/>.</summary>
    Calibrate = 0x30,

    /// <summary>Begins to record noise. No body.</summary>
    BeginNoise = 0x31,

    /// <summary>Ends the recording. No body.</summary>
    EndNoise = 0x32,

    /// <summary>Asks for what was recorded: <see cref="NoiseRequest"/>.</summary>
    ReadNoise = 0x33,

    /// <summary>Asks what the memory holds of the board. No body.</summary>
    ReadMemory = 0x34,

    /// <summary>Puts a simulated machine in the place of the board's inputs and outputs: <see cref="ExchangeBegin"/>.</summary>
    BeginExchange = 0x40,

    /// <summary>Shows what the simulated machine shows, and asks for what is commanded: <see cref="ExchangeRequest"/>.</summary>
    Exchange = 0x41,

    /// <summary>Gives the board its own inputs and outputs back. No body.</summary>
    EndExchange = 0x42,

    /// <summary>Says whether a request was carried out: <see cref="AckAnswer"/>.</summary>
    Ack = 0x80,

    /// <summary>Who is there: <see cref="HelloAnswer"/>.</summary>
    Hello = 0x81,

    /// <summary>The echo: <see cref="PongAnswer"/>.</summary>
    Pong = 0x82,

    /// <summary>One event: <see cref="LogAnswer"/>.</summary>
    LogEntry = 0x84,

    /// <summary>Why the controller may not begin: <see cref="LockAnswer"/>.</summary>
    Lock = 0x85,

    /// <summary>One sample, unasked: <see cref="TelemetryMessage"/>.</summary>
    Telemetry = 0x90,

    /// <summary>One value: <see cref="SettingAnswer"/>.</summary>
    Setting = 0xA3,

    /// <summary>How a channel stands: <see cref="CalibrationAnswer"/>.</summary>
    Calibration = 0xB0,

    /// <summary>What was recorded of a channel: <see cref="NoiseAnswer"/>.</summary>
    Noise = 0xB3,

    /// <summary>What the memory holds of the board: <see cref="MemoryAnswer"/>.</summary>
    Memory = 0xB4,

    /// <summary>What is commanded to the simulated machine: <see cref="ExchangeAnswer"/>.</summary>
    Exchanged = 0xC1,
}
