using System.Collections.Generic;
using System.Linq;
using Tomlyn.Syntax;

namespace StarterCtl.Engine.Cases;

/// <summary>Names of keys and tables as written in TOML, bare, quoted or dotted.</summary>
internal static class KeyPath
{
    /// <summary>The parts of a dotted key, without quotes.</summary>
    internal static string[] Segments(KeySyntax key) => [.. Parts(key).Select(Text)];

    /// <summary>One name for the path. Parts that TOML has to quote are quoted: no two paths look alike.</summary>
    internal static string Join(IEnumerable<string> segments) =>
        string.Join('.', segments.Select(part => BareKeySyntax.IsBareKey(part) ? part : Words.Quote(part)));

    private static IEnumerable<BareKeyOrStringValueSyntax?> Parts(KeySyntax key)
    {
        yield return key.Key;
        foreach (DottedKeyItemSyntax item in key.DotKeys) yield return item.Key;
    }

    private static string Text(BareKeyOrStringValueSyntax? part) => part switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };
}
