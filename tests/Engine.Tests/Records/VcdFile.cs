using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>A reader of value change dumps that shares nothing with the writer: IEEE 1364, from memory.</summary>
internal sealed class VcdFile
{
    private readonly Dictionary<string, List<(long Time, double Value)>> _changes = [];

    private VcdFile(string text)
    {
        Queue<string> words = new(text.Split((char[])[' ', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
        Dictionary<string, string> names = [];
        long time = 0;
        while (words.TryDequeue(out string? word))
        {
            switch (word)
            {
                case "$var":
                    string[] parts = [.. Until(words)];
                    names[parts[2]] = parts[3];
                    Types[parts[3]] = $"{parts[0]} {parts[1]}";
                    _changes[parts[3]] = [];
                    break;
                case "$timescale":
                    Timescale = string.Concat(Until(words));
                    break;
                case "$dumpvars" or "$end":
                    break;
                case string section when section[0] == '$':
                    Comments.Add(string.Join(' ', Until(words)));
                    break;
                case string at when at[0] == '#':
                    time = long.Parse(at[1..], CultureInfo.InvariantCulture);
                    LastTime = time;
                    break;
                case string real when real[0] == 'r':
                    _changes[names[words.Dequeue()]].Add((time, real == "rnan" ? double.NaN : double.Parse(real[1..], CultureInfo.InvariantCulture)));
                    break;
                case string bits when bits[0] == 'b':
                    _changes[names[words.Dequeue()]].Add((time, Convert.ToInt32(bits[1..], 2)));
                    break;
                default:
                    _changes[names[word[1..]]].Add((time, word[0] - '0'));
                    break;
            }
        }
    }

    public string Timescale { get; } = "";

    public long LastTime { get; }

    public List<string> Comments { get; } = [];

    public Dictionary<string, string> Types { get; } = [];

    public static VcdFile Read(string path) => new(File.ReadAllText(path));

    /// <summary>A variable's value at each of some times that rise.</summary>
    public IEnumerable<double> At(string name, IEnumerable<long> times)
    {
        List<(long Time, double Value)> changes = _changes[name];
        int next = 0;
        double value = double.NaN;
        foreach (long time in times)
        {
            for (; next < changes.Count && changes[next].Time <= time; next++) value = changes[next].Value;
            yield return value;
        }
    }

    private static IEnumerable<string> Until(Queue<string> words)
    {
        for (string word = words.Dequeue(); word != "$end"; word = words.Dequeue()) yield return word;
    }
}
