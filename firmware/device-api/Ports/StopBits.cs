namespace System.IO.Ports;

/// <summary>Stop bits.</summary>
public enum StopBits
{
    /// <summary>One.</summary>
    One = 1,
}
