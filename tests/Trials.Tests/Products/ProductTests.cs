using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Xml.Linq;
using AngleSharp.Dom;
using AngleSharp.Xml.Parser;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Products;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;
using Xunit;

namespace StarterCtl.Trials.Tests.Products;

/// <summary>JUnit XML and JSON lines of a made-up run with every verdict in it.</summary>
public sealed class ProductTests
{
    private static readonly Trial[] Trials = Texts.Read(Texts.Head + "title = \"<&> \\\"rig\\\"\"\n[[expect]]\nname = \"{n}\"\nsignal = \"stage\"\nreaches = 1\n"
        + string.Concat(new[] { "pass", "fail", "error", "left", "aborted" }.Select(name => $"[[parameters]]\nname = \"{name}\"\nn = \"peak of {name}\"\n")));

    private static readonly TrialResult[] Results =
    [
        new(Trials[0], [new TrialAttempt(TrialVerdict.Fail, [Seen(false, "157 A at 1 s")], 2), new TrialAttempt(TrialVerdict.Pass, [Seen(true, "151.2 A at 0.212 s")], 3)
        {
            Report = new TargetReport("0.1.0", "0x12345678") { Link = new LinkFigures(100, 1, 2, 0.001, 0.002, 0.003, 0.004) },
        }]),
        new(Trials[1], [new TrialAttempt(TrialVerdict.Fail, [Seen(false, "160 A at 0.5 s")], 4)]),
        new(Trials[2], [new TrialAttempt(TrialVerdict.Error, [], 0.5) { Trouble = "the port is gone \u0001" }]),
        new(Trials[3], []),
        new(Trials[4], [new TrialAttempt(TrialVerdict.Aborted, [], 0.25)]),
    ];

    private static readonly RunHeader Header = RunHeader.Of(new SimulatorTarget(), Trials);

    private static string Xml
    {
        get
        {
            using StringWriter writer = new();
            JUnitXml.Write(Header, Results, writer);
            return writer.ToString();
        }
    }

    [Fact]
    public void JUnit_Counters_EqualTheRows_ByOneParser()
    {
        XElement root = XDocument.Parse(Xml).Root!;

        foreach (XElement suite in root.Elements("testsuite").Append(root))
        {
            XElement[] cases = [.. suite.Descendants("testcase")];
            Assert.Equal(
                (cases.Length, cases.Count(row => row.Element("failure") != null), cases.Count(row => row.Element("error") != null), cases.Count(row => row.Element("skipped") != null)),
                ((int)suite.Attribute("tests")!, (int)suite.Attribute("failures")!, (int)suite.Attribute("errors")!, (int)suite.Attribute("skipped")!));
            Assert.Equal(cases.Sum(row => (double)row.Attribute("time")!), (double)suite.Attribute("time")!, 1e-9);
        }

        Assert.Equal(("5", "1", "2", "1", "9.750"), (root.Attribute("tests")!.Value, root.Attribute("failures")!.Value, root.Attribute("errors")!.Value, root.Attribute("skipped")!.Value, root.Attribute("time")!.Value));
        Assert.Equal("<&> \"rig\"", root.Element("testsuite")!.Attribute("name")!.Value);
    }

    // AngleSharp.Xml shares nothing with the platform's reader.
    [Fact]
    public void JUnit_Counters_EqualTheRows_ByAParserOfAnotherHouse()
    {
        IDocument document = new XmlParser().ParseDocument(Xml);
        int Rows(string name) => document.QuerySelectorAll(name).Length;
        int Said(string name) => int.Parse(document.DocumentElement.GetAttribute(name)!, CultureInfo.InvariantCulture);

        Assert.Equal((5, 1, 2, 1, 5), (Rows("testcase"), Rows("testcase > failure"), Rows("testcase > error"), Rows("testcase > skipped"), Rows("testcase > system-out")));
        Assert.Equal((5, 1, 2, 1), (Said("tests"), Said("failures"), Said("errors"), Said("skipped")));
        Assert.Equal("<&> \"rig\"", document.QuerySelector("testsuite")!.GetAttribute("name"));
        Assert.Equal("the port is gone ?", document.QuerySelectorAll("testcase")[2].QuerySelector("error")!.GetAttribute("message"));
    }

    [Fact]
    public void JUnit_SystemOut_HasLimitsAndValuesOfEveryAttempt()
    {
        XElement[] cases = [.. XDocument.Parse(Xml).Descendants("testcase")];

        string retried = cases[0].Element("system-out")!.Value;
        Assert.Contains("attempt 1 of 2: fail\n  FAIL  peak: 157 A at 1 s; expected at most 156 A", retried);
        Assert.Contains("attempt 2 of 2: pass\n  pass  peak: 151.2 A at 0.212 s; expected at most 156 A", retried);
        Assert.Contains("link: 100 exchanges, 1 missed deadlines, 2 lost frames, latency 0.001 / 0.002 / 0.003 / 0.004 s", retried);
        Assert.Contains($"sha256 {Trials[0].Case.Sha256}", retried);
        Assert.Equal("peak: 160 A at 0.5 s, expected at most 156 A", cases[1].Element("failure")!.Attribute("message")!.Value);
        Assert.Equal("the port is gone ?", cases[2].Element("error")!.Attribute("message")!.Value);
        Assert.Equal("not run", cases[3].Element("skipped")!.Attribute("message")!.Value);
        Assert.Equal("aborted", cases[4].Element("error")!.Attribute("type")!.Value);
    }

    [Fact]
    public void Lines_HaveTheHeaderFirstAndTheCountsLast()
    {
        using StringWriter writer = new();
        VerdictLines lines = new(writer);
        lines.Begin(Header);
        foreach (TrialResult result in Results) lines.Add(result);
        lines.End(VerdictCounts.Of(Results));

        JsonElement[] read = [.. writer.ToString().TrimEnd('\n').Split('\n').Select(line => JsonDocument.Parse(line).RootElement)];

        Assert.Equal(["header", "trial", "trial", "trial", "trial", "trial", "counts"], read.Select(line => line.GetProperty("kind").GetString()));
        JsonElement planned = read[0].GetProperty("header").GetProperty("trials")[0];
        Assert.Equal((Trials[0].Case.Sha256, Trials[0].FileSha256, 1), (planned.GetProperty("caseSha256").GetString(), planned.GetProperty("fileSha256").GetString(), planned.GetProperty("seed").GetInt32()));
        Assert.Equal(["pass", "fail", "error", "not run", "aborted"], read[1..6].Select(line => line.GetProperty("trial").GetProperty("verdict").GetString()));
        Assert.Equal("151.2 A at 0.212 s", read[1].GetProperty("trial").GetProperty("attempts")[1].GetProperty("expectations")[0].GetProperty("seen").GetString());
        JsonElement counts = read[6].GetProperty("counts");
        Assert.Equal(
            "trials 5, passed 1, failed 1, errors 1, notRun 1, aborted 1, retried 1",
            string.Join(", ", counts.EnumerateObject().Select(count => $"{count.Name} {count.Value}")));
    }

    private static Outcome Seen(bool passed, string seen) => new("peak", passed, seen, "at most 156 A");
}
