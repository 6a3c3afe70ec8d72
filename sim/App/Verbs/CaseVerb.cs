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
    /// <param name="hasJson">False for a verb whose only product is a file.</param>
    /// <param name="more">Options of its own.</param>
    public static Command Build(Terminal terminal, string name, string description, Func<VerbCall, int> act, bool hasJson = true, params Option[] more)
    {
        Argument<string> casePath = new("CASE")
        {
            Description = "Case file (TOML). Shipped ones are in sim/cases.",
        };
        VerbOptions options = new();
        Command command = new(name, description) { casePath, options.Out };
        if (hasJson) command.Options.Insert(0, options.Json);
        foreach (Option option in more) command.Add(option);
        command.SetAction((parsed, cancellation) => Task.Run(() => act(new VerbCall(
            terminal, parsed.GetRequiredValue(casePath), hasJson && parsed.GetValue(options.Json), parsed.GetValue(options.Out), parsed, cancellation))));
        return command;
    }
}
