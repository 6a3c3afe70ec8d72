namespace StarterCtl.Firmware;

/// <summary>
/// Memory that keeps its bytes without power. Fits the board's own flash, where a page is what is erased together, and EEPROM or
/// FRAM, where the adapter takes a page of any size and erases it by writing FF hex. Flash that programs more than a byte at once
/// needs an adapter that gathers them. Nothing here may throw.
/// </summary>
public interface INonVolatile
{
    /// <summary>Bytes that there are: addresses 0 to this less one.</summary>
    int SizeBytes { get; }

    /// <summary>Bytes that are erased together, 1 or more; pages begin at its multiples.</summary>
    int PageBytes { get; }

    /// <summary>Reads a byte.</summary>
    /// <returns>0 to 255; FF hex where erased.</returns>
    int Read(int address);

    /// <summary>Writes a byte that was erased and not written since.</summary>
    void Write(int address, int number);

    /// <summary>Erases the page that begins at an address: all its bytes become FF hex. May take as long as the memory needs.</summary>
    void ErasePage(int pageAddress);
}
