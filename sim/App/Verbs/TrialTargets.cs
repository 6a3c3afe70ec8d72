using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Verbs;

/// <summary>The targets by the names of the command line.</summary>
/// <param name="Name">simulator, desk, or the port of a board.</param>
/// <param name="Baud">Speed of a serial port, bits per second.</param>
/// <param name="Pace">Who keeps the time of a board.</param>
/// <param name="Timing">How long a board may take for what.</param>
/// <param name="RetriesConnect">True tries to connect again until the time for it is over.</param>
internal sealed record TrialTargets(string Name, int Baud, ExchangePace Pace, TargetTiming Timing, bool RetriesConnect)
{
    /// <summary>The simulator, which is the default.</summary>
    public const string Simulator = "simulator";

    private const string Desk = "desk";

    /// <summary>What is wrong with a name; null where nothing is.</summary>
    public static string? Problem(string? name) =>
        name is Simulator or Desk || (name != null && LinkCall.Problem(name) == null && IsPort(name)) ? null
        : $"--target: found \"{name}\"; allowed: {Simulator}, {Desk}, tcp:HOST:PORT or the path of a serial port";

    /// <summary>The target.</summary>
    public ITrialTarget Open() => Name switch
    {
        Simulator => new SimulatorTarget(),
        Desk => new DeskTarget(Pace, Timing),
        _ => new LinkTarget(Pace.IsRealTime ? $"board at {Name}, real time" : $"board at {Name}", OpenLineAsync, Pace, Timing, RetriesConnect),
    };

    // A misspelt name of a target is no port.
    private static bool IsPort(string name) => name.StartsWith("tcp:", StringComparison.Ordinal) || name.Contains('/', StringComparison.Ordinal) || name.StartsWith("COM", StringComparison.OrdinalIgnoreCase);

    private Task<Stream> OpenLineAsync(CancellationToken cancellation) => LinkCall.OpenAsync(Name, Baud, cancellation);
}
