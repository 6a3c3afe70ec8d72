using System;
using System.Threading;
using StarterCtl.Engine.Records;
using StarterCtl.Trials.Targets;

namespace StarterCtl.Trials.Tests.Running;

/// <summary>A target that does what a test tells it, one time after the other, after a second of samples.</summary>
internal sealed class StubTarget(bool isHardware, params Action<CancellationToken>[] goes) : ITrialTarget
{
    private int _go = -1;
    private int _running;

    public string Name => "stub";

    public bool IsHardware => isHardware;

    public bool IsByTheClock => false;

    /// <summary>Most goes at once.</summary>
    public int MostAtOnce { get; private set; }

    public int Goes => _go + 1;

    /// <summary>A go that ends well.</summary>
    public static void Fine(CancellationToken cancellation)
    {
    }

    /// <summary>A go in which the target is unplugged.</summary>
    public static void Unplugged(CancellationToken cancellation) => throw new TargetException("the port is gone");

    public TargetReport Run(TargetJob job, ISampleSink samples, IProgress<double>? progress, CancellationToken cancellation)
    {
        int go = Interlocked.Increment(ref _go);
        MostAtOnce = Math.Max(MostAtOnce, Interlocked.Increment(ref _running));
        try
        {
            Sample sample = Judging.Course.Plain with { ArmatureAmps = go + 1 };
            for (int i = 0; i <= 1000; i++) samples.Add(sample with { TimeSeconds = i * 0.001 });
            goes[Math.Min(go, goes.Length - 1)](cancellation);
            return new TargetReport("0.1.0", "0x00000000") { Link = new LinkFigures(100, 1, 2, 0.001, 0.002, 0.003, 0.004) };
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }
    }
}
