using System;
using System.IO;
using System.Linq;
using System.Text;
using StarterCtl.Engine.Cases;
using StarterCtl.House;
using StarterCtl.Trials.Files;
using Xunit;

namespace StarterCtl.Trials.Tests;

/// <summary>Trials as texts, on the shipped bench rig: 48 V, two stages, 6 s.</summary>
internal static class Texts
{
    internal const string File = "rig.trial.toml";

    internal const string Head = "case = \"bench-rig.toml\"\n";

    /// <summary>One expectation that any run of the rig meets.</summary>
    internal const string AnyExpectation = "[[expect]]\nname = \"any\"\nsignal = \"stage\"\nreaches = 1\n";

    /// <summary>Reads a trial that stands in no file; its case is a shipped one.</summary>
    internal static Trial[] Read(string text) =>
        [.. TrialFile.Read(File, Encoding.UTF8.GetBytes(text), path => System.IO.File.ReadAllBytes(Path.Combine(Repository.Root, "sim", "cases", path)))];

    internal static Trial ReadOne(string text) => Assert.Single(Read(text));

    /// <summary>The problems of a trial that is refused.</summary>
    internal static string[] Refused(string text) =>
        [.. Assert.Throws<CaseException>(() => Read(text)).Problems.Select(problem => problem.ToString())];

    /// <summary>The line on which a text first stands.</summary>
    internal static int LineOf(string text, string part) => 1 + text[..text.IndexOf(part, StringComparison.Ordinal)].Count(letter => letter == '\n');
}
