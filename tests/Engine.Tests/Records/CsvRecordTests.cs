using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Tests.Runs;
using Xunit;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Records;

public sealed class CsvRecordTests
{
    private static readonly Record Start = RecordStart();
    private static readonly string[] Lines = LinesOf(Start);

    [Fact]
    public void Write_Header_IsTheSignalTable() =>
        Assert.Equal(string.Join(',', SignalTable.All.Select(signal => signal.Name)), Lines[0]);

    [Fact]
    public void Write_EverySample_IsOneLine()
    {
        Assert.Equal(Start.Samples.Count + 1, Lines.Length);
        Assert.All(Lines, line => Assert.Equal(SignalTable.All.Count, line.Split(',').Length));
    }

    [Fact]
    public void Write_Readings_ComeBackExactly()
    {
        for (int row = 0; row < Start.Samples.Count; row++)
        {
            Sample sample = Start.Samples[row];
            Dictionary<string, string> fields = FieldsOf(row);
            Assert.Equal(sample.SupplyVolts, ReadSingle(fields["supplyVolts"]));
            Assert.Equal(sample.ArmatureAmps, ReadSingle(fields["armatureAmps"]));
            Assert.Equal(sample.SpeedRadPerSec, ReadSingle(fields["speedRadPerSec"]));
            Assert.Equal(sample.BackEmfVolts, ReadSingle(fields["backEmfVolts"]));
            Assert.Equal(sample.ResistiveBackEmfVolts, ReadSingle(fields["resistiveBackEmfVolts"]));
            Assert.Equal(sample.ReasonQuantity, ReadSingle(fields["reasonQuantity"]));
            Assert.Equal(sample.ReasonLimit, ReadSingle(fields["reasonLimit"]));
        }
    }

    [Fact]
    public void Write_TrueValues_ComeBackToNineDigits()
    {
        for (int row = 0; row < Start.Samples.Count; row++)
        {
            Sample sample = Start.Samples[row];
            Dictionary<string, string> fields = FieldsOf(row);
            Assert.Equal(sample.TimeSeconds, ReadDouble(fields["timeSeconds"]), 1e-8);
            Assert.Equal(sample.TorqueNewtonMetres, ReadDouble(fields["torqueNewtonMetres"]), 1e-6);
            Assert.Equal(sample.LoadTorqueNewtonMetres, ReadDouble(fields["loadTorqueNewtonMetres"]), 1e-6);
        }
    }

    [Fact]
    public void Write_WordsAndBits_ComeBack()
    {
        for (int row = 0; row < Start.Samples.Count; row++)
        {
            Sample sample = Start.Samples[row];
            Dictionary<string, string> fields = FieldsOf(row);
            Assert.Equal(sample.Phase, Enum.Parse<Phase>(fields["phase"]));
            Assert.Equal(sample.Reason, Enum.Parse<Reason>(fields["reason"]));
            Assert.Equal(sample.Fault, Enum.Parse<FaultId>(fields["fault"]));
            Assert.Equal(sample.Stage.ToString(CultureInfo.InvariantCulture), fields["stage"]);
            Assert.Equal(sample.CloseLine ? "1" : "0", fields["closeLine"]);
            Assert.Equal(sample.LineClosed ? "1" : "0", fields["lineClosed"]);
            Assert.Equal(sample.CloseStages.ToString(CultureInfo.InvariantCulture), fields["closeStages"]);
            Assert.Equal(sample.StagesClosed.ToString(CultureInfo.InvariantCulture), fields["stagesClosed"]);
        }

        // The record has something to tell in every one of these columns.
        Assert.True(Start.Samples.Select(sample => sample.Phase).Distinct().Count() >= 4);
        Assert.Contains(Start.Samples, sample => sample.Fault == FaultId.EmergencyStop);
        Assert.Contains(Start.Samples, sample => sample.StagesClosed == 0b111);
    }

    [Fact]
    public void Write_ResistiveEstimateNotValid_IsEmpty()
    {
        Assert.True(float.IsNaN(Start.Samples[0].ResistiveBackEmfVolts));
        Assert.Equal("", FieldsOf(0)["resistiveBackEmfVolts"]);
    }

    [Fact]
    public void All_Names_AreUniqueAndEndWithTheirUnit()
    {
        Assert.Equal(SignalTable.All.Count, SignalTable.All.Select(signal => signal.Name).Distinct().Count());
        Dictionary<string, string> endings = new() { ["s"] = "Seconds", ["V"] = "Volts", ["A"] = "Amps", ["rad/s"] = "RadPerSec", ["N m"] = "NewtonMetres", ["degC"] = "Celsius" };
        Assert.All(SignalTable.All.Where(signal => signal.Unit.Length > 0), signal => Assert.EndsWith(endings[signal.Unit], signal.Name, StringComparison.Ordinal));
        Assert.All(SignalTable.All, signal => Assert.EndsWith(".", signal.Description, StringComparison.Ordinal));
    }

    private static Record RecordStart()
    {
        Record record = new(5000);
        Rig rig = Rigs.LineShaft with
        {
            Control = Rigs.Panel,
            DurationSeconds = 3,
            Events = [new RunEvent(2.5, null, null, OperatorCommand.EmergencyStop)],
        };
        rig.Run(record);
        return record;
    }

    private static string[] LinesOf(Record record)
    {
        using StringWriter text = new();
        CsvRecord.Write(record, text);
        return text.ToString().ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
    }

    private static Dictionary<string, string> FieldsOf(int row) =>
        Lines[0].Split(',').Zip(Lines[row + 1].Split(',')).ToDictionary(pair => pair.First, pair => pair.Second);

    private static float ReadSingle(string field) =>
        field.Length == 0 ? float.NaN : float.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static double ReadDouble(string field) => double.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);
}
