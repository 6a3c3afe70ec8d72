using System.IO;

namespace StarterCtl.App;

/// <summary>The cases that travel inside the program.</summary>
public static class ShippedCases
{
    /// <summary>Text of a shipped case.</summary>
    /// <param name="name">File name, such as line-shaft.toml.</param>
    public static string Text(string name)
    {
        using Stream stream = typeof(ShippedCases).Assembly.GetManifestResourceStream("cases/" + name)
            ?? throw new FileNotFoundException("no such shipped case", name);
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
