using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Sweeps.Results;
using StarterCtl.Sweeps.Sharding;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sharding;

/// <summary>Which shard is meant, as written and by what a scheduler says of a task.</summary>
public sealed class ShardAddressTests
{
    [Theory]
    [InlineData("1/1", 1, 1)]
    [InlineData("4/4", 4, 4)]
    [InlineData("7/1000000", 7, 1_000_000)]
    public void Of_AShardAsWritten_IsThatShard(string written, int number, int of) => Assert.Equal(new Shard(number, of), Find(written, ""));

    [Theory]
    [InlineData("auto", 0, 0, 3, 4, 1, 4)]
    [InlineData("auto", 3, 0, 3, 4, 4, 4)]
    [InlineData("auto", 1, 1, 4, 4, 1, 4)]
    [InlineData("auto", 4, 1, 4, 4, 4, 4)]
    [InlineData("auto/4", 3, 0, 3, 4, 4, 4)]
    // Some tasks of an array of 8 are sent off again.
    [InlineData("auto/8", 3, 3, 3, 1, 4, 8)]
    [InlineData("auto/8", 6, 2, 6, 2, 7, 8)]
    public void Of_ATaskOfASlurmArray_IsTheShardOfItsPlace(string written, int task, int least, int most, int count, int number, int of) =>
        Assert.Equal(new Shard(number, of), Find(written, Slurm(task, least, most, count)));

    [Theory]
    [InlineData(0, 1)]
    [InlineData(4, 5)]
    public void Of_APodOfAnIndexedJob_IsTheShardBehindItsIndex(int index, int number) => Assert.Equal(new Shard(number, 5), Find("auto/5", $"JOB_COMPLETION_INDEX={index}"));

    [Theory]
    [InlineData("0/4", "--shard: found \"0/4\"; allowed: I/N with I from 1 to N")]
    [InlineData("5/4", "found \"5/4\"")]
    [InlineData("1/0", "found \"1/0\"")]
    [InlineData("1/1000001", "found \"1/1000001\"")]
    [InlineData("2", "found \"2\"")]
    [InlineData("-1/4", "found \"-1/4\"")]
    [InlineData("1/4/2", "found \"1/4/2\"")]
    [InlineData("auto/0", "found \"auto/0\"")]
    [InlineData("auto/", "found \"auto/\"")]
    [InlineData("", "found \"\"")]
    public void Of_SomethingElse_SaysWhatIsAllowed(string written, string said) => Assert.Contains(said, Refused(written, ""), StringComparison.Ordinal);

    [Theory]
    [InlineData("auto", "", "found neither SLURM_ARRAY_TASK_ID nor JOB_COMPLETION_INDEX in the environment")]
    [InlineData("auto/4", "", "found neither SLURM_ARRAY_TASK_ID nor JOB_COMPLETION_INDEX in the environment")]
    [InlineData("auto", "JOB_COMPLETION_INDEX=2", "found JOB_COMPLETION_INDEX, which does not come with their number; allowed: --shard auto/N")]
    [InlineData("auto/4", "JOB_COMPLETION_INDEX=4", "JOB_COMPLETION_INDEX: found 4; allowed: 0 to 3 with --shard auto/4")]
    [InlineData("auto/4", "JOB_COMPLETION_INDEX=two", "JOB_COMPLETION_INDEX: found \"two\"; allowed: a whole number from 0")]
    [InlineData("auto/4", "JOB_COMPLETION_INDEX=1 SLURM_ARRAY_TASK_ID=1", "found both SLURM_ARRAY_TASK_ID and JOB_COMPLETION_INDEX")]
    [InlineData("auto", "SLURM_ARRAY_TASK_ID=1", "SLURM_ARRAY_TASK_MIN: found nothing; allowed: a whole number from 0")]
    public void Of_AnEnvironmentThatDoesNotSay_SaysWhatIsMissing(string written, string environment, string said) =>
        Assert.Contains(said, Refused(written, environment), StringComparison.Ordinal);

    [Theory]
    [InlineData("auto", 3, 3, 3, 1, "found an array of 1 tasks from 3 to 3; allowed: every task from 0 or 1 on, or --shard auto/N for a part of an array from 0")]
    [InlineData("auto", 2, 0, 6, 4, "found an array of 4 tasks from 0 to 6")]
    [InlineData("auto", 5, 0, 3, 4, "SLURM_ARRAY_TASK_ID: found 5; allowed: 0 to 3, which SLURM_ARRAY_TASK_MIN and SLURM_ARRAY_TASK_MAX say")]
    [InlineData("auto/4", 1, 1, 4, 4, "SLURM_ARRAY_TASK_MAX: found 4; allowed: an array of tasks from 0 to 3 with --shard auto/4")]
    public void Of_ASlurmArrayThatIsNotThatOfTheShards_IsRefused(string written, int task, int least, int most, int count, string said) =>
        Assert.Contains(said, Refused(written, Slurm(task, least, most, count)), StringComparison.Ordinal);

    private static string Slurm(int task, int least, int most, int count) =>
        $"SLURM_ARRAY_TASK_ID={task} SLURM_ARRAY_TASK_MIN={least} SLURM_ARRAY_TASK_MAX={most} SLURM_ARRAY_TASK_COUNT={count}";

    private static string Refused(string written, string environment) => Assert.Throws<SweepException>(() => Find(written, environment)).Message;

    private static Shard Find(string written, string environment)
    {
        Dictionary<string, string> variables = environment.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1]);
        return ShardAddress.Of(written, variables.GetValueOrDefault);
    }
}
