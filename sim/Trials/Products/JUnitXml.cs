using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Xml;
using StarterCtl.Engine;
using StarterCtl.Trials.Judging;
using StarterCtl.Trials.Running;

namespace StarterCtl.Trials.Products;

/// <summary>
/// Verdicts as JUnit XML, as build servers read it: a suite for each file, a case for each trial. There is no standard for
/// it; elements and attributes are those that are in common use (common practice, no source).
/// </summary>
public static class JUnitXml
{
    /// <summary>Writes a whole run.</summary>
    /// <param name="header">Header of the run.</param>
    /// <param name="results">Every trial.</param>
    /// <param name="writer">Receives the text; stays open.</param>
    /// <remarks>Times are those of the trials themselves, so the same run gives the same bytes. An aborted trial is an error, one that was not run is skipped.</remarks>
    public static void Write(RunHeader header, IReadOnlyList<TrialResult> results, TextWriter writer)
    {
        using XmlWriter xml = XmlWriter.Create(writer, new XmlWriterSettings { Indent = true, NewLineChars = "\n", CloseOutput = false, Encoding = new UTF8Encoding(false) });
        xml.WriteStartElement("testsuites");
        xml.WriteAttributeString("name", "starterctl trial");
        WriteCounts(xml, results);
        foreach (IGrouping<string, TrialResult> suite in results.GroupBy(result => result.Trial.FileName)) WriteSuite(xml, header, suite.Key, [.. suite]);
        xml.WriteEndElement();
    }

    private static void WriteSuite(XmlWriter xml, RunHeader header, string file, TrialResult[] results)
    {
        Trial first = results[0].Trial;
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", Clean(first.Title));
        WriteCounts(xml, results);
        xml.WriteStartElement("properties");
        WriteProperty(xml, "file", file);
        WriteProperty(xml, "file-sha256", first.FileSha256);
        WriteProperty(xml, "target", header.Target);
        WriteProperty(xml, "core-version", header.CoreVersion);
        if (first.Tags.Count > 0) WriteProperty(xml, "tags", string.Join(' ', first.Tags));
        xml.WriteEndElement();
        foreach (TrialResult result in results) WriteCase(xml, result);
        xml.WriteEndElement();
    }

    private static void WriteCase(XmlWriter xml, TrialResult result)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("name", Clean(result.Trial.Name));
        xml.WriteAttributeString("classname", Clean(Path.GetFileNameWithoutExtension(result.Trial.FileName)));
        xml.WriteAttributeString("time", Seconds([result]));
        string why = Clean(result.Last?.Why ?? "");
        switch (result.Verdict)
        {
            case TrialVerdict.Fail:
                WriteTrouble(xml, "failure", "expectation", why);
                break;
            case TrialVerdict.Error or TrialVerdict.Aborted:
                WriteTrouble(xml, "error", VerdictText.Word(result.Verdict), why);
                break;
            case TrialVerdict.NotRun:
                xml.WriteStartElement("skipped");
                xml.WriteAttributeString("message", VerdictText.Word(result.Verdict));
                xml.WriteEndElement();
                break;
            default:
                break;
        }

        xml.WriteElementString("system-out", Clean(Details(result)));
        xml.WriteEndElement();
    }

    // Limits and values of every attempt, and what made them.
    private static string Details(TrialResult result)
    {
        RunHeader.Planned planned = RunHeader.Plan(result.Trial);
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"case {planned.Case}, sha256 {planned.CaseSha256}, settings {planned.SettingsChecksum}, seed {planned.Seed}\n");
        for (int i = 0; i < result.Attempts.Count; i++)
        {
            TrialAttempt attempt = result.Attempts[i];
            text.Append(CultureInfo.InvariantCulture, $"attempt {i + 1} of {result.Attempts.Count}: {VerdictText.Word(attempt.Verdict)}\n");
            if (attempt.Trouble != null) text.Append(CultureInfo.InvariantCulture, $"  {attempt.Trouble}\n");
            foreach (Outcome outcome in attempt.Outcomes) text.Append(CultureInfo.InvariantCulture, $"  {(outcome.Passed ? "pass" : "FAIL")}  {outcome.Name}: {outcome.Seen}; expected {outcome.Limit}\n");
            if (attempt.Report?.Link is { } link)
            {
                text.Append(CultureInfo.InvariantCulture, $"  link: {link.Exchanges} exchanges, {link.MissedDeadlines} missed deadlines, {link.LostFrames} lost frames, latency {Text.Number(link.LeastLatencySeconds)} / {Text.Number(link.MedianLatencySeconds)} / {Text.Number(link.P99LatencySeconds)} / {Text.Number(link.LargestLatencySeconds)} s (least, median, 99 %, largest)\n");
            }
        }

        return text.ToString();
    }

    private static void WriteCounts(XmlWriter xml, IReadOnlyCollection<TrialResult> results)
    {
        xml.WriteAttributeString("tests", Count(results, _ => true));
        xml.WriteAttributeString("failures", Count(results, verdict => verdict == TrialVerdict.Fail));
        xml.WriteAttributeString("errors", Count(results, verdict => verdict is TrialVerdict.Error or TrialVerdict.Aborted));
        xml.WriteAttributeString("skipped", Count(results, verdict => verdict == TrialVerdict.NotRun));
        xml.WriteAttributeString("time", Seconds(results));
    }

    private static string Count(IEnumerable<TrialResult> results, System.Func<TrialVerdict, bool> isCounted) =>
        results.Count(result => isCounted(result.Verdict)).ToString(CultureInfo.InvariantCulture);

    private static string Seconds(IEnumerable<TrialResult> results) =>
        results.Sum(result => result.Attempts.Sum(attempt => attempt.Seconds)).ToString("F3", CultureInfo.InvariantCulture);

    private static void WriteTrouble(XmlWriter xml, string element, string type, string message)
    {
        xml.WriteStartElement(element);
        xml.WriteAttributeString("type", type);
        xml.WriteAttributeString("message", message);
        xml.WriteEndElement();
    }

    private static void WriteProperty(XmlWriter xml, string name, string value)
    {
        xml.WriteStartElement("property");
        xml.WriteAttributeString("name", name);
        xml.WriteAttributeString("value", Clean(value));
        xml.WriteEndElement();
    }

    // What a board's text or a file name may hold and XML may not.
    private static string Clean(string text) => string.Concat(text.Select(letter => XmlConvert.IsXmlChar(letter) ? letter : '?'));
}
