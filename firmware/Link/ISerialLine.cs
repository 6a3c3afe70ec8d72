namespace StarterCtl.Firmware;

/// <summary>A byte line of the board. Nothing here may wait.</summary>
public interface ISerialLine
{
    /// <summary>Takes what has come in.</summary>
    /// <param name="target">Receives the bytes from index 0.</param>
    /// <param name="most">How many at most.</param>
    /// <returns>How many were there, 0 to <paramref name="most"/>.</returns>
    int Read(byte[] target, int most);

    /// <summary>How many bytes <see cref="Write"/> takes now without waiting.</summary>
    int Room();

    /// <summary>Sends bytes, no more than there is room for.</summary>
    void Write(byte[] source, int first, int count);
}
