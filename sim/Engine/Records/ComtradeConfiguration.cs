using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using StarterCtl.Core;

namespace StarterCtl.Engine.Records;

/// <summary>
/// The channels of a record and the configuration file that declares them, by the layout of IEEE C37.111-2013. The field list is
/// known second-hand and in part from memory; no copy of the standard was at hand.
/// </summary>
internal sealed class ComtradeConfiguration
{
    private const int BitsEach = 16;
    private const string LineEnd = "\r\n";
    private const string DateOfStart = "01/01/2000,00:00:00.000000";

    private readonly RecordHeader _header;
    private readonly bool _isAscii;
    private readonly int _stageCount;
    private readonly int[] _lowest;
    private readonly int[] _highest;

    /// <summary>Lays out the channels.</summary>
    /// <param name="header">The record's header.</param>
    /// <param name="isAscii">Whether the data file is ASCII, else BINARY32.</param>
    public ComtradeConfiguration(RecordHeader header, bool isAscii)
    {
        _header = header;
        _isAscii = isAscii;
        Settings settings = Runs.SettingsText.Read(header.Settings);
        _stageCount = settings.StageCount;
        Analog = [.. SignalTable.All.Where(IsAnalog).Select(signal => (signal, ComtradeScale.Of(signal, settings)))];
        Status = [.. SignalTable.All.SelectMany(StatusOf)];
        _lowest = [.. Analog.Select(_ => int.MaxValue)];
        _highest = [.. Analog.Select(_ => -int.MaxValue)];
    }

    /// <summary>Analogue channels with the size of their steps.</summary>
    public IReadOnlyList<(Signal Signal, double Step)> Analog { get; }

    /// <summary>Status channels: a switch, or one bit of several.</summary>
    public IReadOnlyList<(Signal Signal, int Bit)> Status { get; }

    /// <summary>Takes notice of what an analogue channel was.</summary>
    public void Saw(int channel, int steps)
    {
        if (steps == int.MinValue) return;
        _lowest[channel] = Math.Min(_lowest[channel], steps);
        _highest[channel] = Math.Max(_highest[channel], steps);
    }

    /// <summary>The file's text for a number of samples.</summary>
    public string Text(long samples)
    {
        // Samples of every control period come at one rate, the power-up included; else their time stamps tell.
        bool isEven = _header.RecordPeriodMicroseconds == _header.ControlPeriodMicroseconds;
        StringBuilder text = new();
        Line(text, $"starterctl,{Plain(_header.Case)},2013");
        Line(text, $"{Analog.Count + Status.Count},{Analog.Count}A,{Status.Count}D");
        for (int i = 0; i < Analog.Count; i++)
        {
            (Signal signal, double step) = Analog[i];
            (int lowest, int highest) = _lowest[i] <= _highest[i] ? (_lowest[i], _highest[i]) : (0, 0);
            Line(text, $"{i + 1},{signal.Name},,,{Unit(signal)},{step.ToString("R", CultureInfo.InvariantCulture)},0,0,{lowest},{highest},1,1,P");
        }

        for (int i = 0; i < Status.Count; i++) Line(text, $"{i + 1},{StatusName(Status[i])},,,0");
        Line(text, $"0");
        Line(text, isEven ? $"1" : (FormattableString)$"0");
        Line(text, isEven ? $"{1e6 / _header.RecordPeriodMicroseconds},{samples}" : (FormattableString)$"0,{samples}");
        Line(text, $"{DateOfStart}");
        Line(text, $"{DateOfStart[..^6]}{_header.ControlPeriodMicroseconds:D6}");
        Line(text, $"{(_isAscii ? "ASCII" : "BINARY32")}");
        Line(text, $"{_header.ControlPeriodMicroseconds}");
        Line(text, $"0,0");
        Line(text, $"0,0");
        return text.ToString();
    }

    private static bool IsAnalog(Signal signal) => signal.Role != SignalRole.Time && signal.Kind is not (SignalKind.Bits or SignalKind.Switch);

    private IEnumerable<(Signal Signal, int Bit)> StatusOf(Signal signal) => signal.Kind switch
    {
        SignalKind.Switch => [(signal, 0)],
        SignalKind.Bits => Enumerable.Range(0, signal.Name.Contains("tages", StringComparison.Ordinal) ? _stageCount : BitsEach).Select(bit => (signal, bit)),
        _ => [],
    };

    private static string StatusName((Signal Signal, int Bit) channel) =>
        channel.Signal.Kind == SignalKind.Bits ? $"{channel.Signal.Name}.{channel.Bit + 1}" : channel.Signal.Name;

    private static string Unit(Signal signal) => signal.Unit.Replace(" ", "", StringComparison.Ordinal);

    // The standard's fields end at commas, its lines are ASCII of up to 64 characters a name.
    private static string Plain(string name) => new([.. name.Select(letter => letter is > ' ' and <= '~' and not ',' ? letter : '_').Take(64)]);

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append(LineEnd);
}
