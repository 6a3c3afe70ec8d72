using System;
using System.Threading;
using StarterCtl.Engine.Records;

namespace StarterCtl.Trials.Targets;

/// <summary>
/// What a trial is run against: the simulator, a board on the desk, a board on a port. A trial knows nothing of it.
/// </summary>
/// <remarks>
/// Making the machine safe is the target's duty: however <see cref="Run"/> ends, by its end, by an exception or by a
/// cancellation, every coil is commanded off, the model's line is open and the port is free when it returns, and getting there
/// takes no longer than <see cref="TargetTiming.MakeSafe"/>. Samples up to the trouble have been handed out by then.
/// </remarks>
public interface ITrialTarget
{
    /// <summary>As verdicts name it: "simulator", "board on the desk", "serial port COM3".</summary>
    string Name { get; }

    /// <summary>True where there is one of it: trials run one at a time. Otherwise <see cref="Run"/> is called from several threads at once.</summary>
    bool IsHardware { get; }

    /// <summary>True where the machine and the board keep to clocks of their own: then no replay of the record can give every decision again.</summary>
    bool IsByTheClock { get; }

    /// <summary>Runs one trial from a fresh controller to the end of its case.</summary>
    /// <param name="job">What is run. Its settings are the board's when this returns.</param>
    /// <param name="samples">Receives a sample at every whole multiple of its period, the first before time 0, in the order of time and from one thread.</param>
    /// <param name="progress">Told now and then which part of the trial is done, 0 to 1.</param>
    /// <param name="cancellation">Ends the trial with an <see cref="OperationCanceledException"/>, the machine safe.</param>
    /// <returns>What the target was, and how its link did.</returns>
    /// <exception cref="TargetException">Trouble with the target, which says nothing about the starter under test.</exception>
    TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation);
}
