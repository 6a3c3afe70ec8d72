using System;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Sweeps.Running;

/// <summary>
/// Runs rows of a sweep on all cores. Rows are handed on block by block in their order, the last block while the next is run: memory does not
/// grow with their number, and their content does not depend on threads.
/// </summary>
public static class SweepRunner
{
    /// <summary>Rows that are run between two hand-overs.</summary>
    public const int BlockRows = 4096;

    /// <summary>Runs one row.</summary>
    /// <param name="plan">The sweep.</param>
    /// <param name="row">Number of the row.</param>
    public static SweepRow Run(SweepPlan plan, long row)
    {
        double[] values = new double[plan.Prepared.Variables.Count];
        plan.ValuesOf(row, values);
        int seed = plan.SeedOf(row);
        RunResult result = StartSimulation.Run(plan.Prepared.RealSetup(values, seed), plan.Prepared.Settings);
        return SweepRow.Of(row, seed, values, plan.Prepared.Judge(result), result);
    }

    /// <summary>Runs a span of rows.</summary>
    /// <param name="plan">The sweep.</param>
    /// <param name="first">First row.</param>
    /// <param name="count">How many.</param>
    /// <param name="take">Takes each block of rows, in the order of the rows, one at a time; the block is not kept.</param>
    /// <param name="cores">Cores to use; null: all.</param>
    /// <param name="progress">Told which part is done, 0 to 1.</param>
    /// <param name="blockRows">Rows between two hand-overs; a file's bytes depend on it, its rows do not.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/> within a start's time.</param>
    public static void Run(SweepPlan plan, long first, long count, Action<ReadOnlyMemory<SweepRow>> take, int? cores = null, IProgress<double>? progress = null, int blockRows = BlockRows, CancellationToken cancellation = default)
    {
        ParallelOptions options = new() { MaxDegreeOfParallelism = cores ?? Environment.ProcessorCount, CancellationToken = cancellation };
        SweepRow[] running = new SweepRow[Math.Min(blockRows, count)], taken = new SweepRow[running.Length];
        Task handedOver = Task.CompletedTask;
        long done = 0;
        try
        {
            for (long begin = first; begin < first + count; begin += blockRows)
            {
                int rows = (int)Math.Min(blockRows, first + count - begin);
                SweepRow[] block = running;
                long blockBegin = begin;
                Parallel.For(0, rows, options, i =>
                {
                    block[i] = Run(plan, blockBegin + i);
                    long now = Interlocked.Increment(ref done);
                    if (now % 64 == 0 || now == count) progress?.Report((double)now / count);
                });
                handedOver.GetAwaiter().GetResult();
                handedOver = Task.Run(() => take(block.AsMemory(0, rows)), CancellationToken.None);
                (running, taken) = (taken, running);
            }
        }
        catch
        {
            // Whoever takes rows must be through with them before their file is closed; what went wrong first is what counts.
            Task.WaitAny([handedOver], CancellationToken.None);
            throw;
        }

        handedOver.GetAwaiter().GetResult();
    }
}
