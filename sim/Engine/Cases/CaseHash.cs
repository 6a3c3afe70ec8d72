using System;
using System.Globalization;

namespace StarterCtl.Engine.Cases;

/// <summary>The case's fingerprint as a board carries it: the first four bytes of the file's SHA-256.</summary>
public static class CaseHash
{
    private const int Digits = 8;

    /// <summary>The number for a file's SHA-256.</summary>
    /// <param name="sha256">SHA-256 in hexadecimal digits.</param>
    /// <returns>Its first eight digits as one number.</returns>
    public static int Of(string sha256) => int.Parse(sha256.AsSpan(0, Digits), NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    /// <summary>As texts show it: the beginning of the file's SHA-256.</summary>
    public static string Shown(int hash) => hash.ToString("x8", CultureInfo.InvariantCulture);
}
