using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;
using StarterCtl.Core;
using StarterCtl.Engine.Records;

namespace StarterCtl.Engine.Runs;

/// <summary>
/// Feeds the recorded readings to the core, tick by tick, and compares every decision bit for bit. The machine does not take part:
/// it has already answered, to what was decided then. With other settings only the auxiliary contacts follow what is decided now.
/// </summary>
public sealed class Replay
{
    private const int RowsBefore = 3;
    private const int RowsBehind = 3;

    private static readonly Signal[] Decisions = [.. SignalTable.All.Where(signal => signal.Role == SignalRole.Decision)];

    private readonly RecordHeader _header;
    private readonly Controller _controller;
    private readonly Readings _readings = new();
    private readonly Outputs _outputs = new();
    private readonly Queue<ReplayRow> _before = new();
    private readonly List<ReplayRow> _around = [];
    private readonly ReplayCourse _recorded = new();
    private readonly ReplayCourse _replayed = new();
    private readonly PlayedContacts? _contacts;
    private ReplayDifference? _first;
    private long _ticks;
    private long _differentTicks;
    private double _lastSeconds;

    private Replay(RecordHeader header, Settings? with)
    {
        _header = header;
        _controller = new Controller(with ?? SettingsOf(header));
        if (with != null) _contacts = new PlayedContacts();
    }

    /// <summary>Replays a record.</summary>
    /// <param name="header">Its header.</param>
    /// <param name="samples">Its samples, one of every control period, the first of the controller's power-up.</param>
    /// <param name="with">Other settings than those of the header, to see what they would have decided; null: the record's own.</param>
    /// <param name="cancellation">Ends the replay with an <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="RecordException">The record leaves out control periods, does not begin with the power-up or was made by the clock, or its settings cannot be read.</exception>
    public static ReplayResult Of(RecordHeader header, IEnumerable<Sample> samples, Settings? with = null, CancellationToken cancellation = default)
    {
        if (header.RecordPeriodMicroseconds != header.ControlPeriodMicroseconds)
        {
            throw new RecordException(
                $"record of {header.Case}",
                $"a sample every {header.RecordPeriodMicroseconds} us while the controller decided every {header.ControlPeriodMicroseconds} us",
                $"a sample of every control period: starterctl run {header.Case} --every-period");
        }

        if (header.ByTheClock)
        {
            throw new RecordException($"record of {header.Case}", "rows of a machine by the clock, beside which the board ticked by its own", "a record of the controller's own ticks: of the simulator, or of a board in lockstep");
        }

        Replay replay = new(header, with);
        foreach (Sample sample in samples)
        {
            if (replay._ticks % RecordReader.RowsBetweenLooks == 0) cancellation.ThrowIfCancellationRequested();
            replay.Tick(sample);
        }

        return replay.Result();
    }

    /// <summary>The settings of a record.</summary>
    /// <param name="header">Its header.</param>
    /// <exception cref="RecordException">They cannot be read.</exception>
    public static Settings SettingsOf(RecordHeader header)
    {
        try
        {
            return SettingsText.Read(header.Settings);
        }
        catch (FormatException error)
        {
            throw new RecordException($"settings of the record of {header.Case}", error.Message, "the settings that the record was made with; others by --with");
        }
    }

    private void Tick(in Sample recorded)
    {
        CheckTime(recorded);
        _ticks++;
        ControllerTick.ReadInto(recorded, _readings);
        _contacts?.Show(recorded, _outputs, _readings);
        _controller.Tick(recorded.ElapsedMicroseconds, _readings, _outputs);
        Sample replayed = recorded;
        ControllerTick.PutDecisions(ref replayed, _controller, _outputs);
        _recorded.Take(recorded);
        _replayed.Take(replayed);
        if (FirstDifference(recorded, replayed) is Signal signal) Differ(signal, recorded, replayed);
        KeepAround(recorded, replayed);
    }

    // What was left out of a record cannot be made up: the controller's timers would be wrong from there on.
    private void CheckTime(in Sample sample)
    {
        if (_ticks == 0 && sample.ElapsedMicroseconds != 0)
        {
            throw new RecordException(
                $"record of {_header.Case}, row 1: elapsedMicroseconds",
                sample.ElapsedMicroseconds.ToString(CultureInfo.InvariantCulture),
                "0: a replay begins with the controller's power-up, where nothing is remembered");
        }

        double passed = (sample.TimeSeconds - _lastSeconds) * 1e6;
        bool isGap = _ticks > 0 && Math.Abs(passed - sample.ElapsedMicroseconds) > _header.ControlPeriodMicroseconds / 2.0;
        _lastSeconds = sample.TimeSeconds;
        if (!isGap) return;
        throw new RecordException(
            FormattableString.Invariant($"record of {_header.Case}, row {_ticks + 1} at {sample.TimeSeconds} s"),
            FormattableString.Invariant($"{passed:F0} us since the row before, where the controller was told {sample.ElapsedMicroseconds} us"),
            "a record without rows left out");
    }

    private static Signal? FirstDifference(in Sample recorded, in Sample replayed)
    {
        foreach (Signal signal in Decisions)
        {
            if (!IsSame(signal.Number(recorded), signal.Number(replayed))) return signal;
        }

        return null;
    }

    // Numbers that are equal have the same bits but for the sign of zero, which a board's link leaves out and no decision sees.
    private static bool IsSame(double one, double other) => one == other || (double.IsNaN(one) && double.IsNaN(other));

    private void Differ(Signal signal, in Sample recorded, in Sample replayed)
    {
        _differentTicks++;
        _first ??= new ReplayDifference(_ticks, recorded.TimeSeconds, signal, signal.Number(recorded), signal.Number(replayed));
    }

    private void KeepAround(in Sample recorded, in Sample replayed)
    {
        if (_first == null)
        {
            if (_before.Count == RowsBefore) _before.Dequeue();
            _before.Enqueue(new ReplayRow(_ticks, recorded, replayed));
        }
        else if (_ticks <= _first.Row + RowsBehind)
        {
            _around.Add(new ReplayRow(_ticks, recorded, replayed));
        }
    }

    private ReplayResult Result() => new()
    {
        Ticks = _ticks,
        DifferentTicks = _differentTicks,
        First = _first,
        Around = _first == null ? [] : [.. _before, .. _around],
        Recorded = _recorded,
        Replayed = _replayed,
        IsWithOtherSettings = _contacts != null,
        Warning = _header.CoreVersion == CoreIdentity.Version ? null
            : $"core {_header.CoreVersion} made this record; core {CoreIdentity.Version} replays it",
    };
}
