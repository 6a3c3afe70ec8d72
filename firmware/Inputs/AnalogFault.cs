namespace StarterCtl.Firmware;

/// <summary>Why an analogue channel gives no number. Numbers are published and never reused.</summary>
public enum AnalogFault
{
    /// <summary>It gives one.</summary>
    None = 0,

    /// <summary>The converter could not be read.</summary>
    NotRead = 1,

    /// <summary>Fewer counts than a sound sensor gives: an open wire, or a short to 0 V.</summary>
    TooFewCounts = 2,

    /// <summary>More counts than a sound sensor gives: a short to the sensor's supply, or a clipped signal.</summary>
    TooManyCounts = 3,
}
