using System;
using System.Runtime.InteropServices;
using System.Text;
using System.Threading;
using Microsoft.Win32.SafeHandles;

namespace StarterCtl.Desk;

/// <summary>
/// A board's serial line behind a pseudo-terminal, which any program that speaks with serial ports opens by its path. Linux only. Once a
/// desk has closed it, what the board sends is gone until the next one opens it.
/// </summary>
public sealed partial class TerminalLine : IDeskLine, IDisposable
{
    private const int RoomBytes = 256;

    // As Linux numbers them.
    private const int ReadWrite = 0x2;
    private const int NoControllingTerminal = 0x100;
    private const int NonBlocking = 0x800;
    private const int Now = 0;
    private const short CanGive = 0x1;
    private const short CanTake = 0x4;
    private const short HungUp = 0x10;

    // More than a termios needs.
    private const int SettingsBytes = 256;

    private readonly SafeFileHandle _board;

    // What the system did not take at once.
    private byte[] _waiting = [];

    /// <summary>Opens a pseudo-terminal that passes every byte on as it is.</summary>
    /// <exception cref="DeskException">The system has none, or has none left.</exception>
    public TerminalLine()
    {
        if (!OperatingSystem.IsLinux()) throw new DeskException("pseudo-terminal: found another system than Linux; allowed: Linux; elsewhere --listen puts the line behind a port");
        _board = Open(ReadWrite | NoControllingTerminal | NonBlocking);
        byte[] path = new byte[64];
        byte[] settings = new byte[SettingsBytes];
        if (_board.IsInvalid || Grant(_board) != 0 || Unlock(_board) != 0 || Name(_board, path, path.Length) != 0 || GetSettings(_board, settings) != 0)
        {
            throw Refused();
        }

        // Otherwise it would give the board's own bytes back to it, and turn line ends around.
        MakeRaw(settings);
        if (SetSettings(_board, Now, settings) != 0) throw Refused();
        Path = Encoding.UTF8.GetString(path.AsSpan(0, Array.IndexOf(path, (byte)0)));
    }

    /// <summary>The path by which a desk opens it.</summary>
    public string Path { get; }

    /// <inheritdoc/>
    /// <remarks>Nothing to read and nobody there are the same.</remarks>
    public int Read(byte[] target, int most) => (int)Math.Max(0, Read(_board, target, most));

    /// <inheritdoc/>
    public int Room()
    {
        short state = State();
        if ((state & HungUp) != 0) _waiting = [];
        else if (_waiting.Length > 0 && (state & CanTake) != 0) Send(_waiting);
        return _waiting.Length == 0 && (state & (CanTake | HungUp)) != 0 ? RoomBytes : 0;
    }

    /// <inheritdoc/>
    public void Write(byte[] source, int first, int count)
    {
        if ((State() & HungUp) == 0) Send([.. _waiting, .. source.AsSpan(first, count)]);
    }

    /// <inheritdoc/>
    public void Wait(TimeSpan most)
    {
        PollEntry entry = new() { Handle = (int)_board.DangerousGetHandle(), Asked = CanGive };
        // Nobody there: that would come back at once.
        if (Poll(ref entry, 1, (int)most.TotalMilliseconds) > 0 && (entry.Found & HungUp) != 0) Thread.Sleep(most);
    }

    /// <summary>Takes the pseudo-terminal away.</summary>
    public void Dispose() => _board.Dispose();

    private void Send(byte[] bytes)
    {
        int sent = (int)Math.Max(0, Write(_board, bytes, bytes.Length));
        _waiting = sent < bytes.Length ? bytes[sent..] : [];
    }

    private short State()
    {
        PollEntry entry = new() { Handle = (int)_board.DangerousGetHandle(), Asked = CanTake };
        return Poll(ref entry, 1, 0) < 0 ? HungUp : entry.Found;
    }

    private DeskException Refused()
    {
        string why = Marshal.GetLastPInvokeErrorMessage();
        _board.Dispose();
        return new DeskException($"pseudo-terminal: the system gives none: {why}", new InvalidOperationException(why));
    }

    [LibraryImport("libc", EntryPoint = "posix_openpt", SetLastError = true)]
    private static partial SafeFileHandle Open(int flags);

    [LibraryImport("libc", EntryPoint = "grantpt", SetLastError = true)]
    private static partial int Grant(SafeFileHandle board);

    [LibraryImport("libc", EntryPoint = "unlockpt", SetLastError = true)]
    private static partial int Unlock(SafeFileHandle board);

    [LibraryImport("libc", EntryPoint = "ptsname_r", SetLastError = true)]
    private static partial int Name(SafeFileHandle board, [Out] byte[] path, nint length);

    [LibraryImport("libc", EntryPoint = "tcgetattr", SetLastError = true)]
    private static partial int GetSettings(SafeFileHandle board, [Out] byte[] settings);

    [LibraryImport("libc", EntryPoint = "cfmakeraw")]
    private static partial void MakeRaw([In, Out] byte[] settings);

    [LibraryImport("libc", EntryPoint = "tcsetattr", SetLastError = true)]
    private static partial int SetSettings(SafeFileHandle board, int when, byte[] settings);

    [LibraryImport("libc", EntryPoint = "read")]
    private static partial nint Read(SafeFileHandle board, [Out] byte[] target, nint most);

    [LibraryImport("libc", EntryPoint = "write")]
    private static partial nint Write(SafeFileHandle board, ReadOnlySpan<byte> source, nint count);

    [LibraryImport("libc", EntryPoint = "poll")]
    private static partial int Poll(ref PollEntry entry, nint count, int milliseconds);

    [StructLayout(LayoutKind.Sequential)]
    private struct PollEntry
    {
        public int Handle;
        public short Asked;
        public short Found;
    }
}
