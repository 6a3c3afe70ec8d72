using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace StarterCtl.Engine.Records;

/// <summary>The words of an id, as records have them.</summary>
public sealed class SignalWords
{
    private readonly string[] _words;
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> _ids;

    private SignalWords(string[] words)
    {
        _words = words;
        _ids = words.Select((word, id) => (word, id)).ToDictionary(pair => pair.word, pair => pair.id).GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>Every word; its place is its id.</summary>
    public IReadOnlyList<string> All => _words;

    /// <summary>The names of an enumeration whose ids run from 0 on.</summary>
    public static SignalWords Of<T>()
        where T : struct, Enum => new(Enum.GetNames<T>());

    /// <summary>The word of an id; of one that is not known here, as from a newer board, its digits.</summary>
    public string Word(int id) => (uint)id < (uint)_words.Length ? _words[id] : id.ToString(CultureInfo.InvariantCulture);

    /// <summary>The id of a word or of an id's digits.</summary>
    /// <returns>False where it is neither.</returns>
    public bool TryRead(ReadOnlySpan<char> word, out int id) =>
        _ids.TryGetValue(word, out id) || int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out id);
}
