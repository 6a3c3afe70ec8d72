using System;
using StarterCtl.Firmware;

namespace StarterCtl.Desk;

/// <summary>A serial line of a board on the desk.</summary>
public interface IDeskLine : ISerialLine
{
    /// <summary>Waits until bytes for the board are there.</summary>
    /// <param name="most">Longest time; a line that cannot tell waits so long.</param>
    void Wait(TimeSpan most);
}
