using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Threading.Tasks;
using StarterCtl.App.Json;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.App.Tests;

public sealed class DeterminismTests
{
    private static readonly string[] Names =
        [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "sim", "cases"), "*.toml").Select(path => Path.GetFileName(path)).Order()];

    [Fact]
    public async Task Run_EveryShippedCaseAtOnceOnFourThreads_GivesTheBytesOfOneAfterTheOther()
    {
        string[] alone = [.. Names.Select(Digest)], together = new string[Names.Length];

        await Parallel.ForAsync(0, Names.Length, new ParallelOptions { MaxDegreeOfParallelism = 4, CancellationToken = TestContext.Current.CancellationToken }, (i, _) =>
        {
            // The other way round, so that other cases meet.
            together[^(i + 1)] = Digest(Names[^(i + 1)]);
            return ValueTask.CompletedTask;
        });

        Assert.Equal(alone, together);
        Assert.Equal(Names.Length, alone.Distinct().Count());
    }

    // Noise comes from the seed alone, whichever runs draw theirs beside it.
    [Fact]
    public async Task Run_OneNoisyCaseOnFourThreads_GivesTheSameBytesFourTimes()
    {
        string text = ShippedCases.Text("bench-rig.toml") + "\n[sensors]\ncurrent-noise = \"0.3 A\"\nspeed-noise = \"5 rpm\"\nseed = 11\n";
        string[] records = new string[4];

        await Parallel.ForAsync(0, 4, TestContext.Current.CancellationToken, (i, _) =>
        {
            records[i] = RecordOf(text);
            return ValueTask.CompletedTask;
        });

        Assert.Single(records.Distinct());
        Assert.NotEqual(records[0], RecordOf(text.Replace("seed = 11", "seed = 12", System.StringComparison.Ordinal)));
    }

    // The result as JSON and every sample as the CSV has it.
    private static string Digest(string name)
    {
        StartStudy study = CaseRunner.Run(CaseFile.Parse(name, ShippedCases.Text(name)), null, TestContext.Current.CancellationToken);
        string text = JsonSerializer.Serialize(RunJson.Of(study)) + Csv(study);
        return System.Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    private static string RecordOf(string text) => Csv(CaseRunner.Run(CaseFile.Parse("noisy.toml", text), null, TestContext.Current.CancellationToken));

    private static string Csv(StartStudy study)
    {
        using StringWriter text = new();
        CsvRecord.Write(study.Record, text, TestContext.Current.CancellationToken);
        return text.ToString();
    }
}
