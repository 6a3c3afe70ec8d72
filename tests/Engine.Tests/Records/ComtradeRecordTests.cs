using System;
using System.IO;
using System.Linq;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>COMTRADE as an independent reader sees it. Source: IEEE C37.111-2013, second-hand and in part from memory.</summary>
public sealed class ComtradeRecordTests : IDisposable
{
    private readonly Folder _folder = new();

    [Theory]
    [InlineData(RecordFormat.Comtrade, "BINARY32")]
    [InlineData(RecordFormat.ComtradeAscii, "ASCII")]
    public void Configuration_OfAStart_SaysChannelsRateAndTimes(RecordFormat format, string fileType)
    {
        ComtradeFile file = Write(FullRateRecord.BenchRig, format);

        Assert.Equal((2013, fileType, 1000.0, 6002L, 1000.0, 0.0), (file.RevisionYear, file.FileType, file.Hertz, file.SampleCount, file.MicrosecondsPerTick, file.LineHertz));

        // The first sample is the power-up, one period before the case begins; its beginning is the trigger.
        Assert.Equal(TimeSpan.FromMilliseconds(1), file.Trigger - file.First);
        Assert.Equal("V", file.Analog.Single(channel => channel.Name == "supplyVolts").Unit);
        Assert.Equal(["closeStages.1", "closeStages.2"], file.Status.Select(channel => channel.Name).Where(name => name.StartsWith("closeStages", StringComparison.Ordinal)));
        int amps = Index(file, "armatureAmps");
        Assert.Equal(file.Rows.Max(row => row.Analog[amps]), file.Analog[amps].Value(file.Analog[amps].Highest));
        Assert.Equal(file.Rows.Min(row => row.Analog[amps]), file.Analog[amps].Value(file.Analog[amps].Lowest));
    }

    [Theory]
    [InlineData(RecordFormat.Comtrade)]
    [InlineData(RecordFormat.ComtradeAscii)]
    public void Data_OfAStart_IsEverySampleWithinHalfAStep(RecordFormat format)
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        ComtradeFile file = Write(start, format);

        Assert.Equal(start.Samples.Count, file.Rows.Count);
        for (int i = 0; i < file.Rows.Count; i++)
        {
            ComtradeFile.Row row = file.Rows[i];
            Sample sample = start.Samples[i];
            Assert.Equal((i + 1, 1000.0 * i), (row.Number, row.Microseconds));
            for (int channel = 0; channel < file.Analog.Count; channel++)
            {
                double wanted = SignalTable.All.Single(signal => signal.Name == file.Analog[channel].Name).Number(sample);
                if (double.IsNaN(wanted)) Assert.Equal(double.NaN, row.Analog[channel]);
                else Assert.InRange(row.Analog[channel] - wanted, -file.Analog[channel].Factor / 2, file.Analog[channel].Factor / 2);
            }
        }
    }

    [Theory]
    [InlineData(RecordFormat.Comtrade)]
    [InlineData(RecordFormat.ComtradeAscii)]
    public void Data_OfAStart_HasEverySwitch(RecordFormat format)
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        ComtradeFile file = Write(start, format);

        for (int channel = 0; channel < file.Status.Count; channel++)
        {
            string[] name = file.Status[channel].Name.Split('.');
            Signal signal = SignalTable.All.Single(known => known.Name == name[0]);
            int bit = name.Length == 1 ? 0 : int.Parse(name[1], System.Globalization.CultureInfo.InvariantCulture) - 1;
            Assert.All(file.Rows, row => Assert.Equal(((int)signal.Number(start.Samples[row.Number - 1]) >> bit & 1) != 0, row.Status[channel]));
        }
    }

    // The step is a power of two, so that a reader's own sum brings back exactly what was written.
    [Fact]
    public void Configuration_StepOfEveryChannel_IsAPowerOfTwoFineEnoughForItsLimit()
    {
        ComtradeFile file = Write(FullRateRecord.BenchRig, RecordFormat.Comtrade);

        Assert.All(file.Analog, channel => Assert.Equal(Math.Round(Math.Log2(channel.Factor)), Math.Log2(channel.Factor)));

        // 48 V are read to better than 2 uV, 32 A to better than 1 uA.
        Assert.True(file.Analog[Index(file, "supplyVolts")].Factor < 2e-6);
        Assert.True(file.Analog[Index(file, "armatureAmps")].Factor < 1e-6);
    }

    // Samples that do not come at one rate, as the power-up before a thin record, go by their time stamps.
    [Fact]
    public void Configuration_OfAThinRecord_HasNoRateAndTimeStampsThatTell()
    {
        FullRateRecord start = FullRateRecord.BenchRig;
        FullRateRecord thin = new(start.Header with { RecordPeriodMicroseconds = 7000 }, [start.Samples[0], start.Samples[1], start.Samples[8], start.Samples[15]]);
        ComtradeFile file = Write(thin, RecordFormat.Comtrade);

        Assert.Equal((0.0, 4L), (file.Hertz, file.SampleCount));
        Assert.Equal([0.0, 1000, 8000, 15_000], file.Rows.Select(row => row.Microseconds));
    }

    [Theory]
    [InlineData(RecordFormat.Comtrade)]
    [InlineData(RecordFormat.ComtradeAscii)]
    public void Configuration_OfARunThatWasKilled_CountsWhatItsDataFileHas(RecordFormat format)
    {
        FullRateRecord start = FullRateRecord.BenchRig.Times(4);
        start.Write(format, _folder["killed.record.cfg"], isComplete: false);

        ComtradeFile file = ComtradeFile.Read(_folder["killed.record.cfg"]);

        Assert.Equal(20_000, file.SampleCount);
        Assert.Equal(20_000, file.Rows[^1].Number);
    }

    [Fact]
    public void Files_LineEnds_AreCarriageReturnAndLineFeed()
    {
        Write(FullRateRecord.BenchRig, RecordFormat.ComtradeAscii);

        foreach (string name in (string[])["start.record.cfg", "start.record.dat"])
        {
            string text = File.ReadAllText(_folder[name]);
            Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        }
    }

    public void Dispose() => _folder.Dispose();

    private static int Index(ComtradeFile file, string name) => file.Analog.ToList().FindIndex(channel => channel.Name == name);

    private ComtradeFile Write(FullRateRecord record, RecordFormat format)
    {
        record.Write(format, _folder["start.record.cfg"]);
        return ComtradeFile.Read(_folder["start.record.cfg"]);
    }
}
