namespace StarterCtl.Firmware;

/// <summary>Who keeps the time while a simulated machine stands in for the real one.</summary>
public enum ExchangeMode
{
    /// <summary>The desk: each exchange is one control period, however long it takes. The same readings give the same outputs, bit for bit.</summary>
    Lockstep = 0,

    /// <summary>The board: its loop runs at its own rate on the readings that came last, and an exchange that comes late counts.</summary>
    RealTime = 1,
}
