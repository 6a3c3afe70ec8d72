using System.CommandLine;
using System.Net;
using System.Threading;
using System.Threading.Tasks;
using Spectre.Console;
using StarterCtl.App.Output;
using StarterCtl.Core;
using StarterCtl.Desk;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Runs;
using StarterCtl.Firmware;
using StarterCtl.Link;

namespace StarterCtl.App.Verbs;

/// <summary>Runs the firmware as a board on the desk, behind a port.</summary>
internal static class BoardVerb
{
    private const string DefaultPlace = "127.0.0.1:7000";

    /// <summary>The verb with its options.</summary>
    public static Command Build(Terminal terminal)
    {
        Argument<string> casePath = new("CASE") { Description = "Case file (TOML): the machine at the board's pins, and its wiring." };
        Option<string> listen = new("--listen")
        {
            Description = "Address of this computer alone and port behind which the board's serial line is; port 0 is any that is free.",
            HelpName = "ADDRESS:PORT",
            DefaultValueFactory = _ => DefaultPlace,
        };
        listen.Validators.Add(result =>
        {
            string? found = result.GetValueOrDefault<string?>();
            if (found == null || !IPEndPoint.TryParse(found, out IPEndPoint? place) || !IPAddress.IsLoopback(place.Address))
            {
                result.AddError($"--listen: found \"{found}\"; allowed: an address of this computer alone and a port, such as {DefaultPlace}");
            }
        });
        Option<bool> terminalLine = new("--pty") { Description = "Put the board's serial line behind a pseudo-terminal instead, which any program opens as a serial port (Linux)." };
        Option<string?> memory = new("--memory") { Description = "File that is the board's memory. Without it: CASE.board.bin in the folder 'out' here.", HelpName = "FILE" };
        Option<bool> permit = new("--permit") { Description = "Close the switch at the machine that permits a start over the link." };
        Option<bool> compiled = new("--compiled") { Description = "Compile the settings of the case in: a memory that was never written begins with them." };
        Command command = new("board", "Run the board's whole firmware on this computer, with the machine of a case at its pins, in real time until Ctrl-C.\n\nExample:\n  starterctl board sim/cases/bench-rig.toml --permit\n  starterctl board sim/cases/bench-rig.toml --listen 127.0.0.1:7001 --memory rig.bin\n  starterctl board sim/cases/bench-rig.toml --pty")
        {
            casePath, listen, terminalLine, memory, permit, compiled,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(terminalLine) && result.GetResult(listen) is { Implicit: false }) result.AddError("--pty: found together with --listen; allowed: one of them");
        });
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            string path = parsed.GetRequiredValue(casePath);
            string kept = parsed.GetValue(memory) ?? new OutputPlace(null, path).PathOf("board.bin");
            if (parsed.GetValue(terminalLine))
            {
                using TerminalLine device = new();
                return Do(terminal, path, device, device.Path, kept, parsed.GetValue(permit), parsed.GetValue(compiled), cancellation);
            }

            using TcpLine port = new(IPEndPoint.Parse(parsed.GetRequiredValue(listen)));
            return Do(terminal, path, port, $"tcp:{port.Place}", kept, parsed.GetValue(permit), parsed.GetValue(compiled), cancellation);
        }));
        return command;
    }

    private static int Do(Terminal terminal, string casePath, ISerialLine line, string place, string memoryPath, bool isPermitted, bool isCompiled, CancellationToken cancellation)
    {
        CaseFile file = CaseFile.Read(casePath);
        PreparedRun run = CaseRunner.Prepare(file);
        using MemoryFile chip = MemoryFile.Open(memoryPath);
        BoardMemory memory = new(chip, ResetCause.PowerUp);
        if (isCompiled) memory.FillBlank(run.Settings, SettingsChecksum.Of(run.Settings), CaseHash.Of(file.Sha256));
        DeskBoard board = new(run, line, memory, isPermitted);
        foreach (string warning in run.Designed.Warnings) terminal.Warn(warning);
        if (run.Setup.Heat != null) terminal.Warn("On the desk nothing warms up: windings and sections keep the resistance with which the case begins.");
        // Without kept settings, what will be uploaded is most likely this case.
        BoardCheck wiring = memory.Settings.State == StoreState.Sound ? board.Starter.Wiring : new BoardCheck(DeskWiring.Of(run), run.Settings);
        if (wiring.Problem != BoardProblem.None) terminal.Warn($"The board starts nothing with {(wiring == board.Starter.Wiring ? "the settings that it keeps" : "the settings of this case")}: {BoardLock.Of(wiring).Sentence}.");

        terminal.Notes.MarkupLineInterpolated($"This is a simulation: no pin, no contactor and no motor of this board is real. Ctrl-C stops the motor and ends it.");
        terminal.Notes.MarkupLineInterpolated($"machine: {CaseRunner.TitleOf(file)}; memory: {memoryPath}; settings: {SettingsText(memory.Settings)}; permit for a start over the link: {(isPermitted ? "given" : "not given (--permit gives it)")}");
        terminal.Data.WriteLine(place);
        terminal.Data.Flush();
        board.Run(cancellation);
        terminal.Notes.MarkupLineInterpolated($"stopped: {(board.IsAnyCoilOn ? "a coil is still energised" : "every coil is off")}");
        return ExitCode.Ok;
    }

    private static string SettingsText(SettingsStore settings) => settings.State switch
    {
        StoreState.Sound => $"kept, of case {CaseHash.Shown(settings.CaseHash)}",
        StoreState.Blank => "none yet",
        _ => $"cannot be used ({settings.State})",
    };
}
