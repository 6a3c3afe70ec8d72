using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Numerics;
using System.Text;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Trials.Files;

/// <summary>
/// Makes a trial of a record: what the operator did and what the inputs showed become events, the fault and the cutouts that were
/// seen become expectations. What a record cannot know, such as a load that changed, is said in a comment.
/// </summary>
public sealed class RecordedTrial
{
    // A machine of flesh and iron is not its model to the millisecond. Common practice, no source.
    private const double TimeTolerance = 0.1;
    private const double LeastToleranceSeconds = 0.05;

    private readonly List<(double Seconds, string What)> _events = [];
    private readonly List<(int Stage, double Seconds)> _stages = [];
    private Sample _last;
    private bool _hasBegun;
    private double _startedSeconds = double.NaN;
    private double _firstSpeedRadPerSec;
    private double _lostSeconds = double.NaN;
    private FaultId _fault;
    private double _faultSeconds;

    private RecordedTrial()
    {
    }

    /// <summary>Writes the trial.</summary>
    /// <param name="name">Name of the record, for title and comment.</param>
    /// <param name="header">Its header.</param>
    /// <param name="samples">Its samples, in the order of time.</param>
    /// <param name="casePath">The case, from the folder in which the trial will be.</param>
    /// <returns>TOML.</returns>
    /// <exception cref="RecordException">The record has no row, or nobody presses start in it.</exception>
    public static string Of(string name, RecordHeader header, IEnumerable<Sample> samples, string casePath)
    {
        RecordedTrial trial = new();
        foreach (Sample sample in samples) trial.Take(sample);
        if (double.IsNaN(trial._startedSeconds)) throw new RecordException(name, "no press of start in it", "a record of a start, from before it on");
        return trial.Text(name, header, casePath);
    }

    private void Take(in Sample sample)
    {
        if (_hasBegun) TakeInputs(sample);
        else _firstSpeedRadPerSec = sample.SpeedValid ? sample.SpeedRadPerSec : 0;
        bool isStarted = sample.Phase is Phase.Accelerating or Phase.Running;
        if (isStarted && (_stages.Count == 0 ? sample.Stage > 1 : sample.Stage > _stages[^1].Stage)) _stages.Add((sample.Stage, sample.TimeSeconds));
        if (_fault == FaultId.None && sample.Fault != FaultId.None) (_fault, _faultSeconds) = (sample.Fault, sample.TimeSeconds);
        if (sample.SpeedValid) _lostSeconds = double.NaN;
        else if (_hasBegun && _last is { SpeedValid: true, Phase: Phase.Accelerating or Phase.Running }) _lostSeconds = sample.TimeSeconds;
        _last = sample;
        _hasBegun = true;
    }

    private void TakeInputs(in Sample sample)
    {
        double at = sample.TimeSeconds;
        if (sample.StartPressed && !_last.StartPressed)
        {
            Event(at, "command = \"start\"");
            if (double.IsNaN(_startedSeconds)) _startedSeconds = at;
        }

        if (sample.StopPressed && !_last.StopPressed) Event(at, "command = \"stop\"");
        if (sample.ResetPressed && !_last.ResetPressed) Event(at, "command = \"reset\"");
        if (sample.EmergencyStop != _last.EmergencyStop) Event(at, sample.EmergencyStop ? "command = \"emergency stop\"" : "command = \"release emergency stop\"");
        if (sample.Permissives == _last.Permissives) return;
        int given = BitOperations.TrailingZeroCount(~(uint)sample.Permissives & 0xFFFF | 0x10000);
        Event(at, $"permissives = {given.ToString(CultureInfo.InvariantCulture)}");
    }

    private void Event(double seconds, string what) => _events.Add((Math.Max(seconds, 0), what));

    private string Text(string name, RecordHeader header, string casePath)
    {
        StringBuilder text = new();
        string checksum = SettingsText.Checksum(Replay.SettingsOf(header));
        text.Append(CultureInfo.InvariantCulture, $"# Made of the record {name}: core {header.CoreVersion}, settings {checksum}, case {header.Case}.\n");
        text.Append("# Events are what the inputs showed. What the machine did by itself is in no reading: a load that changed, a supply that sagged,\n# a contact that failed. Add it as an [[event]] where the trial needs it to go the same way.\n");
        text.Append(CultureInfo.InvariantCulture, $"title = {Quoted($"Recorded: {name}")}\ncase = {Quoted(casePath)}\ntags = [\"recorded\"]\n\n[set]\nrun.duration = \"{_last.TimeSeconds:0.######} s\"\n");
        if (Math.Abs(_firstSpeedRadPerSec) > 1) text.Append(CultureInfo.InvariantCulture, $"load.speed = \"{_firstSpeedRadPerSec * 30 / Math.PI:0.###} rpm\"\n");
        // That the speed never came back is known only at the end.
        if (!double.IsNaN(_lostSeconds)) Event(_lostSeconds, "speed-signal = \"lost\"");
        foreach ((double seconds, string what) in _events.OrderBy(happening => happening.Seconds)) text.Append(CultureInfo.InvariantCulture, $"\n[[event]]\nat = \"{seconds:0.######} s\"\n{what}\n");
        AppendExpectations(text);
        return text.ToString();
    }

    private void AppendExpectations(StringBuilder text)
    {
        foreach ((int stage, double seconds) in _stages)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[[expect]]\nname = \"stage {stage}\"\nsignal = \"stage\"\nreaches = {stage}\n{Around(seconds)}");
        }

        if (_fault == FaultId.None) text.Append("\n[[expect]]\nname = \"fault\"\nfault = \"none\"\n");
        else text.Append(CultureInfo.InvariantCulture, $"\n[[expect]]\nname = \"fault\"\nfault = \"{FaultTable.RowOf(_fault).Name}\"\n{Around(_faultSeconds)}");
    }

    private string Around(double seconds)
    {
        double tolerance = Math.Max(TimeTolerance * (seconds - _startedSeconds), LeastToleranceSeconds);
        double from = Math.Max(0, Math.Floor((seconds - tolerance) * 1000) / 1000), to = Math.Min(_last.TimeSeconds, Math.Ceiling((seconds + tolerance) * 1000) / 1000);
        return string.Create(CultureInfo.InvariantCulture, $"from = \"{from:0.######} s\"\nto = \"{to:0.######} s\"\n");
    }

    private static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
