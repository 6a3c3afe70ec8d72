using System;
using System.Collections.Generic;
using System.CommandLine;
using StarterCtl.Trials.Running;
using StarterCtl.Trials.Targets;

namespace StarterCtl.App.Verbs;

/// <summary>Options of the verb trial that are about what trials are run against.</summary>
internal sealed class TrialTargetOptions
{
    private readonly Option<string> _target = TargetOption();
    private readonly Option<int> _baud = LinkVerb.BaudOption();
    private readonly Option<bool> _realTime = new("--real-time") { Description = "Let the model keep to the computer's clock, and the board to its own. Without it each control period waits for its exchange." };
    private readonly Option<double> _exchange = LinkVerb.Bounded("--exchange", "In real time the time from one exchange to the next, ms.", 10, 1, 1000);
    private readonly Option<double> _connect = LinkVerb.Bounded("--connect-timeout", "Longest time from opening the port to a board with its settings, s.", 10, 0.1, 3600);
    private readonly Option<double> _step = LinkVerb.Bounded("--step-timeout", "Longest time for one exchange, s.", 1, 0.02, 60);
    private readonly Option<bool> _retryConnect = new("--retry-connect") { Description = "Try to connect again until the time for it is over." };
    private readonly Option<long?> _missed = new("--most-missed") { Description = "Fail a trial with more late steps and exchanges than this.", HelpName = "N" };
    private readonly Option<long?> _lost = new("--most-lost") { Description = "Fail a trial with more lost frames than this.", HelpName = "N" };
    private readonly Option<double?> _latency = new("--most-latency") { Description = "Fail a trial in which an exchange took longer than this, ms.", HelpName = "MS" };

    /// <summary>Every option.</summary>
    public IEnumerable<Option> All => [_target, _baud, _realTime, _exchange, _connect, _step, _retryConnect, _missed, _lost, _latency];

    /// <summary>What trials are to be run against.</summary>
    public TrialTargets Target(ParseResult parsed) => new(
        parsed.GetRequiredValue(_target),
        parsed.GetValue(_baud),
        parsed.GetValue(_realTime) ? new ExchangePace(true, parsed.GetValue(_exchange) / 1000) : ExchangePace.Lockstep,
        new TargetTiming { Connect = TimeSpan.FromSeconds(parsed.GetValue(_connect)), Step = TimeSpan.FromSeconds(parsed.GetValue(_step)) },
        parsed.GetValue(_retryConnect));

    /// <summary>What its link may do.</summary>
    public LinkLimits Limits(ParseResult parsed) => new()
    {
        MostMissedDeadlines = parsed.GetValue(_missed),
        MostLostFrames = parsed.GetValue(_lost),
        MostLatencySeconds = parsed.GetValue(_latency) / 1000,
    };

    private static Option<string> TargetOption()
    {
        Option<string> option = new("--target")
        {
            Description = "What the trials are run against: simulator, desk (the whole firmware on this computer), or a board behind tcp:HOST:PORT or a serial port. A board's own inputs and outputs stay out of it.",
            HelpName = "TARGET",
            DefaultValueFactory = _ => TrialTargets.Simulator,
        };
        option.Validators.Add(result =>
        {
            if (TrialTargets.Problem(result.GetValueOrDefault<string?>()) is string problem) result.AddError(problem);
        });
        return option;
    }
}
