using System;
using System.IO;

namespace StarterCtl.App.Output;

/// <summary>Where the files of a verb go: one rule for every verb.</summary>
public sealed class OutputPlace
{
    /// <summary>Folder that is used without --out.</summary>
    public const string DefaultFolder = "out";

    private readonly string _place;
    private readonly string _caseName;

    /// <summary>Reads the option.</summary>
    /// <param name="place">Value of --out: a folder, or a file name; null for the default folder.</param>
    /// <param name="caseName">Name of the case file; its stem names the files.</param>
    public OutputPlace(string? place, string caseName)
    {
        _place = place ?? DefaultFolder;
        _caseName = Path.GetFileNameWithoutExtension(caseName);
    }

    /// <summary>Reads the option for products whose stem is known.</summary>
    /// <param name="place">Value of --out: a folder, or a file name; null for the default folder.</param>
    /// <param name="stem">What names the files; it may have points.</param>
    public static OutputPlace OfStem(string? place, string stem) => new(place, stem + ".");

    /// <summary>The path of one product.</summary>
    /// <param name="suffix">What the product is, with its extension: "report.html".</param>
    /// <returns>--out itself when it names a file of that extension, else CASE.SUFFIX in the folder.</returns>
    public string PathOf(string suffix)
    {
        string extension = Path.GetExtension(suffix);
        if (!NamesAFile) return Path.Combine(_place, $"{_caseName}.{suffix}");
        if (string.Equals(Path.GetExtension(_place), extension, StringComparison.OrdinalIgnoreCase)) return _place;
        return Path.Combine(Path.GetDirectoryName(_place) ?? "", $"{Path.GetFileNameWithoutExtension(_place)}.{suffix}");
    }

    private bool NamesAFile =>
        Path.GetExtension(_place).ToUpperInvariant() is ".HTML" or ".CSV" or ".JSON" or ".TXT" or ".CIR" or ".CS" or ".TOML" or ".PARQUET" or ".CFG" or ".VCD" && !Directory.Exists(_place);
}
