using System;

namespace StarterCtl.Interpreter;

/// <summary>Fills the memory but for a reserve, so that a few objects more would make it collect. Never asks for what is not there.</summary>
public sealed class Ballast
{
    private const int PieceBytes = 4096;
    private const int MostPieces = 8192;
    private const int ReservePieces = 8;

    private byte[]?[] _pieces = new byte[]?[MostPieces];

    /// <summary>Fills it up to where the first collection gives the reserve back.</summary>
    public Ballast()
    {
        WeakReference witness = Witness();
        for (int i = 0; i < ReservePieces; i++) _pieces[i] = new byte[PieceBytes];
        for (int i = 0; i < ReservePieces; i++) _pieces[i] = null;
        for (int i = 0; i < MostPieces && witness.IsAlive; i++) _pieces[i] = new byte[PieceBytes];
    }

    /// <summary>Gives the memory free.</summary>
    public void Drop() => _pieces = new byte[]?[0];

    /// <summary>Something that nobody holds: alive until memory is collected, which happens when it is full and not before.</summary>
    public static WeakReference Witness() => new WeakReference(new object());
}
