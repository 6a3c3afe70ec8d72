using System;
using System.CommandLine;
using System.Threading.Tasks;
using StarterCtl.App.Output;

namespace StarterCtl.App.Verbs;

/// <summary>What every verb on a case has in common: its argument, its options, and work that Ctrl-C reaches.</summary>
internal static class CaseVerb
{
    /// <summary>Builds a verb.</summary>
    /// <param name="terminal">Where results and notes go.</param>
    /// <param name="name">The verb.</param>
    /// <param name="description">What it does, with an example.</param>
    /// <param name="act">Does it and gives an <see cref="ExitCode"/>.</param>
    public static Command Build(Terminal terminal, string name, string description, Func<VerbCall, int> act)
    {
        Argument<string> casePath = new("CASE")
        {
            Description = "Case file (TOML). Shipped ones are in sim/cases.",
        };
        VerbOptions options = new();
        Command command = new(name, description) { casePath, options.Json, options.Out };
        command.SetAction((parsed, cancellation) => Task.Run(() => act(new VerbCall(
            terminal, parsed.GetRequiredValue(casePath), parsed.GetValue(options.Json), parsed.GetValue(options.Out), cancellation))));
        return command;
    }
}
