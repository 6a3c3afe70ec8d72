namespace StarterCtl.Firmware;

/// <summary>
/// Stands in for a memory that keeps its bytes, on a board that has none: everything is lost with the power, and each power-up finds
/// it blank. Settings, calibration, heat and the row of watchdog resets then last until the next one.
/// </summary>
public sealed class VolatileMemory : INonVolatile
{
    private const int Erased = 255;

    private readonly byte[] _bytes;

    /// <summary>Builds a blank one.</summary>
    /// <param name="sizeBytes">Bytes, 0 or more.</param>
    public VolatileMemory(int sizeBytes)
    {
        _bytes = new byte[sizeBytes];
        for (int i = 0; i < sizeBytes; i++) _bytes[i] = Erased;
    }

    /// <inheritdoc/>
    public int SizeBytes => _bytes.Length;

    /// <inheritdoc/>
    public int PageBytes => 1;

    /// <inheritdoc/>
    public int Read(int address) => _bytes[address];

    /// <inheritdoc/>
    public void Write(int address, int number) => _bytes[address] = (byte)(number & Erased);

    /// <inheritdoc/>
    public void ErasePage(int pageAddress) => _bytes[pageAddress] = Erased;
}
