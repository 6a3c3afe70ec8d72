namespace StarterCtl.Firmware;

/// <summary>One analogue input of the board, in raw counts.</summary>
public interface IAnalogInput
{
    /// <summary>Largest count that the converter can show, 4095 for 12 bits; above 0.</summary>
    int FullScale { get; }

    /// <summary>Converts once.</summary>
    /// <returns>Counts, 0 to <see cref="FullScale"/>; any other number if it could not be read.</returns>
    int Read();
}
