namespace System.IO.Ports;

/// <summary>Parity.</summary>
public enum Parity
{
    /// <summary>None.</summary>
    None = 0,
}
