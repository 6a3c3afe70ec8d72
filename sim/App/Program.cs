using System;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Spectre.Console;
using StarterCtl.App.Output;
using StarterCtl.App.Verbs;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Link;
using StarterCtl.Sweeps.Results;

namespace StarterCtl.App;

/// <summary>The program starterctl.</summary>
public static class Program
{
    /// <summary>Runs the program on the process's own terminal.</summary>
    public static async Task<int> Main(string[] args)
    {
        // Before any verb begins: whoever sees what a verb writes may send the signal at once.
        using StopSignals signals = new();
        return await Run(args, Terminal.OfProcess(), signals.Token).ConfigureAwait(false);
    }

    /// <summary>Runs the program.</summary>
    /// <param name="args">Verb and options.</param>
    /// <param name="terminal">Where results and notes go.</param>
    /// <param name="cancellation">Ends the verb.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> Run(string[] args, Terminal terminal, CancellationToken cancellation = default)
    {
        ParseResult parsed = Root(terminal).Parse(args);
        if (parsed.Errors.Count > 0)
        {
            terminal.Fail(string.Join('\n', parsed.Errors.Select(error => error.Message)));
            terminal.Notes.WriteLine($"Try: starterctl {Path(parsed.CommandResult)}--help");
            return ExitCode.Input;
        }

        try
        {
            InvocationConfiguration configuration = new()
            {
                EnableDefaultExceptionHandler = false,
                // The library listens for signals only once a verb has begun.
                ProcessTerminationTimeout = null,
                Output = terminal.Data,
                Error = terminal.Notes.Profile.Out.Writer,
            };
            return await parsed.InvokeAsync(configuration, cancellation).ConfigureAwait(false);
        }
        catch (CaseException error)
        {
            terminal.Fail(error.Message);
            return ExitCode.Input;
        }
        catch (RecordException error)
        {
            terminal.Fail(error.Message);
            return ExitCode.Input;
        }
        catch (SweepException error)
        {
            terminal.Fail(error.Message);
            return ExitCode.Input;
        }
        catch (OutputException error)
        {
            terminal.Fail(error.Message);
            return error.IsWorthARetry ? ExitCode.Environment : ExitCode.Input;
        }
        catch (DeskException error)
        {
            terminal.Fail(error.Message);
            return error.IsWorthARetry ? ExitCode.Environment : ExitCode.Input;
        }
        catch (LinkException error)
        {
            terminal.Fail(error.Message);
            return error.IsRefusal ? ExitCode.Failed : ExitCode.Environment;
        }
        catch (OperationCanceledException)
        {
            terminal.Fail("cancelled; nothing is left half-written");
            return ExitCode.Cancelled;
        }
        catch (IOException error)
        {
            terminal.Fail($"standard output cannot be written: {error.Message}");
            return ExitCode.Environment;
        }
        catch (Exception error)
        {
            terminal.Fail($"defect in starterctl: {error}");
            return ExitCode.Internal;
        }
    }

    private static RootCommand Root(Terminal terminal)
    {
        VerbOptions options = new();
        RootCommand root = new("Design, simulate and explain the start of a DC motor. Without a verb: the demo, the shipped 220 V case designed, run and reported.\n\nExample:\n  starterctl\n  starterctl design sim/cases/line-shaft.toml")
        {
            options.Json, options.Out,
        };
        root.SetAction((parsed, cancellation) => Task.Run(() =>
            DemoVerb.Do(terminal, parsed.GetValue(options.Json), parsed.GetValue(options.Out), cancellation)));
        root.Subcommands.Add(DesignVerb.Build(terminal));
        root.Subcommands.Add(RunVerb.Build(terminal));
        root.Subcommands.Add(SweepVerb.Build(terminal));
        root.Subcommands.Add(ReplayVerb.Build(terminal));
        root.Subcommands.Add(ReportVerb.Build(terminal));
        root.Subcommands.Add(ExportVerb.Build(terminal));
        root.Subcommands.Add(TrialVerb.Build(terminal));
        root.Subcommands.Add(BoardVerb.Build(terminal));
        root.Subcommands.Add(LinkVerb.Build(terminal));
        return root;
    }

    // The verbs that lead to a command, each with a space behind it.
    private static string Path(CommandResult? result) =>
        result is null or { Command: RootCommand } ? "" : $"{Path(result.Parent as CommandResult)}{result.Command.Name} ";
}
