using System;
using System.Globalization;
using StarterCtl.Sweeps.Results;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>
/// Which shard is meant: as written, or by the index that a scheduler gave the task. Slurm sets the variables SLURM_ARRAY_TASK_ID, _MIN, _MAX
/// and _COUNT (page of sbatch, "output environment variables"), an indexed Job of Kubernetes JOB_COMPLETION_INDEX, from 0; both from memory.
/// </summary>
public static class ShardAddress
{
    private const string Option = "--shard";
    private const string SlurmTask = "SLURM_ARRAY_TASK_ID";
    private const string SlurmLeast = "SLURM_ARRAY_TASK_MIN";
    private const string SlurmMost = "SLURM_ARRAY_TASK_MAX";
    private const string SlurmCount = "SLURM_ARRAY_TASK_COUNT";
    private const string JobIndex = "JOB_COMPLETION_INDEX";
    private const string Auto = "auto";

    private static readonly string Written = FormattableString.Invariant($"I/N with I from 1 to N and N up to {Shard.MostShards}, auto, or auto/N");

    /// <summary>Finds the shard.</summary>
    /// <param name="written">
    /// "2/4", the second of four; "auto", by the scheduler's array alone; or "auto/4", by the scheduler's index, from 0, out of four.
    /// </param>
    /// <param name="variable">Value of a variable of the environment, or null.</param>
    /// <exception cref="SweepException">There is no such shard, or the environment does not say which.</exception>
    public static Shard Of(string written, Func<string, string?> variable)
    {
        string[] parts = written.Split('/');
        bool isAuto = parts[0] == Auto;
        if (isAuto && parts.Length == 1) return OfScheduler(null, variable);
        if (parts.Length != 2 || Whole(parts[1]) is not (>= 1 and <= Shard.MostShards) || Whole(parts[1]) is not int of) throw Refused(written);
        if (isAuto) return OfScheduler(of, variable);
        return Whole(parts[0]) is int number && number >= 1 && number <= of ? new Shard(number, of) : throw Refused(written);
    }

    private static Shard OfScheduler(int? of, Func<string, string?> variable)
    {
        bool isSlurm = variable(SlurmTask) != null, isJob = variable(JobIndex) != null;
        if (isSlurm && isJob) throw new SweepException($"{Option} {Auto}", $"both {SlurmTask} and {JobIndex} in the environment", "one of them, or --shard I/N");
        if (isSlurm) return OfSlurm(of, variable);
        if (!isJob) throw new SweepException($"{Option} {Auto}", $"neither {SlurmTask} nor {JobIndex} in the environment", "a task of an array, or --shard I/N");
        int index = Number(JobIndex, variable);
        if (of is not int completions) throw new SweepException($"{Option} {Auto}", $"{JobIndex}, which does not come with their number", "--shard auto/N with N completions");
        return At(JobIndex, index, completions);
    }

    private static Shard OfSlurm(int? of, Func<string, string?> variable)
    {
        int task = Number(SlurmTask, variable), least = Number(SlurmLeast, variable), most = Number(SlurmMost, variable), count = Number(SlurmCount, variable);
        if (task < least || task > most) throw new SweepException(SlurmTask, Text(task), $"{Text(least)} to {Text(most)}, which {SlurmLeast} and {SlurmMost} say");
        if (of is int given)
        {
            if (most >= given) throw new SweepException(SlurmMost, Text(most), $"an array of tasks from 0 to {Text(given - 1)} with {Option} {Auto}/{Text(given)}, or a part of it");
            return At(SlurmTask, task, given);
        }

        // A part of an array, sent off again, would look like a whole one that is cut otherwise.
        if (least > 1 || most - least + 1 != count)
        {
            throw new SweepException($"{Option} {Auto}", $"an array of {Text(count)} tasks from {Text(least)} to {Text(most)}", $"every task from 0 or 1 on, or {Option} {Auto}/N for a part of an array from 0");
        }

        return new Shard(task - least + 1, count);
    }

    private static Shard At(string name, int index, int of) =>
        index < of ? new Shard(index + 1, of) : throw new SweepException(name, Text(index), $"0 to {Text(of - 1)} with {Option} {Auto}/{Text(of)}");

    private static int Number(string name, Func<string, string?> variable)
    {
        string? written = variable(name);
        return Whole(written) is int number and < Shard.MostShards
            ? number
            : throw new SweepException(name, written == null ? "nothing" : $"\"{written}\"", $"a whole number from 0 to {Text(Shard.MostShards - 1)}");
    }

    private static SweepException Refused(string written) => new(Option, $"\"{written}\"", Written);

    private static int? Whole(string? written) => int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
