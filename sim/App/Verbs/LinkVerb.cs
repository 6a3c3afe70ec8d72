using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using System.Threading.Tasks;
using Spectre.Console;
using StarterCtl.App.Json;
using StarterCtl.App.Output;
using StarterCtl.App.Tables;
using StarterCtl.Core;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.App.Verbs;

/// <summary>Speaks with a board over its serial link.</summary>
internal static class LinkVerb
{
    private const int DefaultBaud = 115_200;
    private const int LongestWatchSeconds = 3600;
    private const int BitsPerByte = 10;
    // The longest that a sample can become on the line: stuffing adds a byte, the end another.
    private const int SampleBits = (Frame.HeadBytes + TelemetryMessage.BodyBytes + Frame.CheckBytes + 2) * BitsPerByte;
    private static readonly TimeSpan StartWait = TimeSpan.FromSeconds(1);

    // A board proves for half a second behind the time in which a shaft shows that it stands, and begins anew with whatever moves.
    private static readonly TimeSpan LockWait = TimeSpan.FromSeconds(3);

    /// <summary>The verb with what it can ask.</summary>
    public static Command Build(Terminal terminal)
    {
        Argument<string> casePath = new("CASE") { Description = "Case file (TOML)." };
        Option<double> seconds = Bounded("--seconds", "Length of the record, s.", 5, 0.01, LongestWatchSeconds);
        Option<double> every = Bounded("--every", "Time between samples, ms.", 10, TelemetryClock.ShortestMicroseconds / 1000.0, TelemetryClock.LongestMicroseconds / 1000.0);
        return new("link", "Speak with a board over its serial link: a real one, or the one that starterctl board runs.\n\nExample:\n  starterctl link hello tcp:127.0.0.1:7000\n  starterctl link hello /dev/ttyUSB0")
        {
            Asking(terminal, "hello", "Greet the board: who it is, which settings it keeps, what it does.", "link hello tcp:127.0.0.1:7000", Greet),
            Asking(terminal, "upload", "Upload the settings of a case and compare what the board keeps.", "link upload sim/cases/bench-rig.toml tcp:127.0.0.1:7000", (call, parsed) => Upload(call, parsed.GetRequiredValue(casePath)), casePath),
            Asking(terminal, "start", "Press start, where the switch at the machine permits it.", "link start tcp:127.0.0.1:7000", Start),
            Asking(terminal, "stop", "Press stop. The hard-wired stop comes first: a line can break.", "link stop tcp:127.0.0.1:7000", (call, _) => Press(call, client => client.StopAsync(call.Cancellation))),
            Asking(terminal, "reset", "Press reset.", "link reset tcp:127.0.0.1:7000", (call, _) => Press(call, client => client.ResetAsync(call.Cancellation))),
            Asking(terminal, "log", "Download the board's log of events.", "link log tcp:127.0.0.1:7000", Log),
            Asking(terminal, "watch", "Record the board's samples as CSV on standard output, in the columns of a simulated record.", "link watch tcp:127.0.0.1:7000 --seconds 2 > board.csv", (call, parsed) => Watch(call, parsed.GetValue(seconds), parsed.GetValue(every)), seconds, every),
            CalibrateVerb.Build(terminal),
            NoiseVerb.Build(terminal),
        };
    }

    /// <summary>A verb that asks the board behind a port.</summary>
    /// <param name="terminal">Where results and notes go.</param>
    /// <param name="name">Its name.</param>
    /// <param name="description">What it does.</param>
    /// <param name="example">One call of it, without the program's name; several are parted by line breaks.</param>
    /// <param name="ask">Does it; gives one of <see cref="ExitCode"/>.</param>
    /// <param name="more">Its arguments in front of the port, and its options.</param>
    internal static Command Asking(
        Terminal terminal, string name, string description, string example, Func<LinkCall, ParseResult, Task<int>> ask, params Symbol[] more)
    {
        Argument<string> port = new("PORT") { Description = "Where the board is: tcp:HOST:PORT, or the name of a serial port." };
        port.Validators.Add(result =>
        {
            if (LinkCall.Problem(result.GetValueOrDefault<string?>()) is string problem) result.AddError(problem);
        });
        Option<int> baud = BaudOption();
        VerbOptions options = new();
        Command command = new(name, $"{description}\n\nExample:\n  starterctl {example.Replace("\n", "\n  starterctl ", StringComparison.Ordinal)}");
        foreach (Argument<string> argument in more.OfType<Argument<string>>()) command.Add(argument);
        command.Add(port);
        foreach (Option option in more.OfType<Option>()) command.Add(option);
        command.Add(baud);
        // A record is CSV and nothing else.
        if (name != "watch") command.Add(options.Json);
        command.SetAction((parsed, cancellation) => ask(
            new LinkCall(terminal, parsed.GetRequiredValue(port), parsed.GetValue(baud), name != "watch" && parsed.GetValue(options.Json), cancellation), parsed));
        return command;
    }

    private static async Task<int> Greet(LinkCall call, ParseResult parsed)
    {
        await using BoardClient client = await call.ConnectAsync();
        return await Show(call, client, client.Greeting);
    }

    private static async Task<int> Upload(LinkCall call, string casePath)
    {
        CaseFile file = CaseFile.Read(casePath);
        PreparedRun prepared = CaseRunner.Prepare(file);
        foreach (string warning in prepared.Designed.Warnings) call.Terminal.Warn(warning);
        await using BoardClient client = await call.ConnectAsync();
        int caseHash = CaseHash.Of(file.Sha256);
        await client.UploadAsync(prepared.Settings, caseHash, call.Cancellation);
        BoardGreeting greeting = await client.GreetAsync(call.Cancellation);
        if (greeting.CaseHash != caseHash) throw new LinkException($"upload: sent case {CaseHash.Shown(caseHash)}, the board keeps {CaseHash.Shown(greeting.CaseHash)}");
        call.Terminal.Notes.MarkupLineInterpolated($"uploaded: every value read back as it was sent");
        return await Show(call, client, greeting);
    }

    private static async Task<int> Start(LinkCall call, ParseResult parsed)
    {
        await using BoardClient client = await call.ConnectAsync();
        await WaitForLockAsync(call, client);
        Phase before = client.Greeting.Phase;
        await client.StartAsync(call.Cancellation);
        // A press that was passed on is not yet a start: the board may refuse it, or be locked.
        BoardGreeting greeting = await client.GreetAsync(call.Cancellation);
        for (DateTime end = DateTime.UtcNow + StartWait; greeting.Phase is Phase.Ready or Phase.NotSetUp && DateTime.UtcNow < end;)
        {
            await Task.Delay(20, call.Cancellation);
            greeting = await client.GreetAsync(call.Cancellation);
        }

        await Show(call, client, greeting);
        if (greeting.Phase is not (Phase.Ready or Phase.NotSetUp or Phase.Tripped)) return ExitCode.Ok;
        call.Terminal.Fail($"start: pressed, and the board is {PhaseText.Name(greeting.Phase)} as {(before == greeting.Phase ? "before" : "a result")}; starterctl link watch and starterctl link log say why");
        return ExitCode.Failed;
    }

    // Behind an upload or a power-up everything must stay in order for a while: a press within it would be lost.
    private static async Task WaitForLockAsync(LinkCall call, BoardClient client)
    {
        for (DateTime end = DateTime.UtcNow + LockWait; DateTime.UtcNow < end;)
        {
            if (await client.ReadLockAsync(call.Cancellation) is not { Problem: PowerUpProblem.Proving or PowerUpProblem.SpeedUnknown }) return;
            await Task.Delay(20, call.Cancellation);
        }
    }

    private static async Task<int> Press(LinkCall call, Func<BoardClient, Task> press)
    {
        await using BoardClient client = await call.ConnectAsync();
        await press(client);
        return await Show(call, client, await client.GreetAsync(call.Cancellation));
    }

    private static async Task<int> Log(LinkCall call, ParseResult parsed)
    {
        await using BoardClient client = await call.ConnectAsync();
        IReadOnlyList<LoggedEvent> events = await client.DownloadLogAsync(call.Cancellation);
        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(events));
        else BoardTable.Show(call.Terminal.Data, events);
        return ExitCode.Ok;
    }

    private static async Task<int> Watch(LinkCall call, double seconds, double everyMilliseconds)
    {
        double leastMilliseconds = call.IsSerial ? SampleBits * 1000.0 / call.Baud : 0;
        if (everyMilliseconds < leastMilliseconds)
        {
            call.Terminal.Fail(FormattableString.Invariant($"--every: found {everyMilliseconds} ms; allowed: {leastMilliseconds:0.0##} ms or more, which a sample takes at {call.Baud} baud; a faster line takes more (--baud)"));
            return ExitCode.Input;
        }

        await using BoardClient client = await call.ConnectAsync();
        int periodMicroseconds = (int)Math.Round(everyMilliseconds * 1000);
        int count = Math.Max(1, (int)Math.Round(seconds * 1e6 / periodMicroseconds));
        CsvRecord.Write(await client.RecordAsync(periodMicroseconds, count, call.Cancellation), call.Terminal.Data, call.Cancellation);
        return ExitCode.Ok;
    }

    private static async Task<int> Show(LinkCall call, BoardClient client, BoardGreeting greeting)
    {
        BoardLock? atPowerUp = await client.ReadLockAsync(call.Cancellation);
        if (call.AsJson) call.Terminal.Data.WriteLine(JsonText.Of(BoardJson.Of(greeting, atPowerUp)));
        else BoardTable.Show(call.Terminal.Data, greeting, atPowerUp);
        return ExitCode.Ok;
    }

    /// <summary>An option whose number has a least and a most.</summary>
    internal static Option<int> BaudOption() => new("--baud") { Description = "Speed of a serial port, bits per second.", DefaultValueFactory = _ => DefaultBaud };

    internal static Option<double> Bounded(string name, string description, double usual, double least, double most)
    {
        Option<double> option = new(name) { Description = description, DefaultValueFactory = _ => usual };
        option.Validators.Add(result =>
        {
            double found = result.GetValueOrDefault<double>();
            if (!(found >= least && found <= most)) result.AddError(FormattableString.Invariant($"{name}: found {found}; allowed: {least} to {most}"));
        });
        return option;
    }
}
