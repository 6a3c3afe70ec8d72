using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using StarterCtl.App.Output;
using StarterCtl.Trials.Running;

namespace StarterCtl.App.Verbs;

/// <summary>Arguments and options of the verb trial.</summary>
internal sealed class TrialVerbOptions
{
    private const int MostRetries = 10;

    private readonly Option<bool> _json = new VerbOptions().Json;
    private readonly Option<string?> _out = new("--out") { Description = "Folder for the verdicts. Without it: the folder 'out' here.", HelpName = "FOLDER" };
    private readonly TrialTargetOptions _target = new();
    private readonly Option<string[]> _tags = new("--tag") { Description = "Run trials that have this tag; may be given more than once.", HelpName = "TAG" };
    private readonly Option<string?> _filter = new("--filter") { Description = "Run trials whose name, row included, contains this text.", HelpName = "TEXT" };
    private readonly Option<bool> _failFast = new("--fail-fast") { Description = "Begin no other trial once one has failed or had trouble." };
    private readonly Option<bool> _bundle = new("--bundle") { Description = "Keep every attempt in one file that proves itself: trial, case, settings, record of every tick, verdict. starterctl replay --verify checks it." };
    private readonly Option<int> _retry = RetryOption();

    /// <summary>The trials.</summary>
    public Argument<string[]> Files { get; } = new("FILES")
    {
        Description = "Trials (TOML), or folders of *.trial.toml. Shipped ones are in sim/trials.",
        Arity = ArgumentArity.OneOrMore,
    };

    /// <summary>Every option.</summary>
    public IEnumerable<Option> All => [_json, _out, _tags, _filter, _failFast, _retry, _bundle, .. _target.All];

    /// <summary>What was asked for.</summary>
    public TrialCall Read(ParseResult parsed) => new(
        parsed.GetRequiredValue(Files),
        parsed.GetValue(_out) ?? OutputPlace.DefaultFolder,
        _target.Target(parsed),
        parsed.GetValue(_tags) ?? [],
        parsed.GetValue(_filter),
        new TrialOptions { FailsFast = parsed.GetValue(_failFast), Retries = parsed.GetValue(_retry), Link = _target.Limits(parsed) },
        parsed.GetValue(_bundle),
        parsed.GetValue(_json));

    private static Option<int> RetryOption()
    {
        Option<int> option = new("--retry") { Description = "Try a trial that does not pass again, so often at most; every attempt is shown.", HelpName = "N" };
        option.Validators.Add(result =>
        {
            string found = result.Tokens.Count > 0 ? result.Tokens[0].Value : "";
            if (result.Tokens.Count > 0 && (!int.TryParse(found, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count > MostRetries))
            {
                result.AddError($"--retry: found \"{found}\"; allowed: a whole number, 0 to {MostRetries}");
            }
        });
        return option;
    }
}
