using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Files;

/// <summary>The keys of a trial's file beside those of events and of the case. A contract with the users' files: keys are added, never renamed.</summary>
public static class TrialKeys
{
    /// <summary>Name of the trial, for reports.</summary>
    public static readonly CaseKey Title =
        new("title", CaseValueKind.Text, "\"Field lost at speed\"", "Name of the trial, for reports; when left out, that of the file") { DefaultText = "" };

    /// <summary>The case that is run.</summary>
    public static readonly CaseKey Case =
        new("case", CaseValueKind.Text, "\"../cases/bench-rig.toml\"", "Case file that is run, from the folder of the trial's file");

    /// <summary>Whether the case's own events happen too.</summary>
    public static readonly CaseKey KeepEvents =
        new("keep-events", CaseValueKind.Choice, "\"yes\"", "Whether the case's own events happen beside those of the trial") { Choices = ["yes", "no"], DefaultText = "no" };

    /// <summary>Name of an expectation.</summary>
    public static readonly CaseKey ExpectName =
        new("expect.name", CaseValueKind.Text, "\"peak current\"", "Name of the expectation, once in a trial");

    /// <summary>The signal that is looked at.</summary>
    public static readonly CaseKey ExpectSignal =
        new("expect.signal", CaseValueKind.Choice, "\"armatureAmps\"", "Signal that is looked at")
        { Choices = [.. SignalTable.All.Select(signal => signal.Name)] };

    /// <summary>The fault that has to come first.</summary>
    public static readonly CaseKey ExpectFault =
        new("expect.fault", CaseValueKind.Choice, "\"field lost\"", "Fault that has to be raised, as the first of the trial and in the window; \"none\": no fault in the window")
        { Choices = ["none", .. FaultTable.Rows.Skip(1).Select(row => row.Name)] };

    /// <summary>Beginning of the window.</summary>
    public static readonly CaseKey ExpectFrom = Time("expect.from", "\"1 s\"", "Beginning of the window, since the beginning of the trial or since the event; when left out, 0");

    /// <summary>End of the window.</summary>
    public static readonly CaseKey ExpectTo = Time("expect.to", "\"3 s\"", "End of the window, since the beginning of the trial; when left out, the end of the run");

    /// <summary>The event from which the window counts.</summary>
    public static readonly CaseKey ExpectAfterEvent =
        new("expect.after-event", CaseValueKind.Count, "1", "Event of this file from which the window counts, 1 for the first") { Range = CaseRange.Counts(1, 1000) };

    /// <summary>End of the window since that event.</summary>
    public static readonly CaseKey ExpectWithin = Time("expect.within", "\"50 ms\"", "End of the window, since the event");

    /// <summary>How long a settled signal stays.</summary>
    public static readonly CaseKey ExpectFor = Time("expect.for", "\"0.5 s\"", "Time for which a signal that settles has to stay where it is, up to the end of the window");

    /// <summary>What is expected of a signal; the first two of a word too. In the order of the page of keys.</summary>
    public static readonly string[] Kinds = ["reaches", "never", "at-least", "at-most", "stays-within", "order", "settles"];

    /// <summary>Half the width of a settled signal's band.</summary>
    public const string Tolerance = "tolerance";

    private static CaseKey Time(string path, string example, string summary) =>
        new(path, CaseValueKind.Quantity, example, summary) { Range = CaseRange.From0(Dimension.Time, "3600 s") };
}
