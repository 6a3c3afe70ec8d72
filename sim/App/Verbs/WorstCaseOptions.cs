using System.CommandLine;
using System.CommandLine.Parsing;
using System.Linq;
using Spectre.Console;
using StarterCtl.App.Output;
using StarterCtl.Engine.Cases;
using StarterCtl.Sweeps.WorstCase;
using Text = StarterCtl.Engine.Text;

namespace StarterCtl.App.Verbs;

/// <summary>Whether and how a starter is chosen for the worst case.</summary>
internal sealed class WorstCaseOptions
{
    private static readonly WorstCaseRequest Usual = new();

    private readonly Option<bool> _isAsked = new("--worst-case") { Description = "Choose sections and thresholds so that the worst peak over the case's tolerances is as low as it can be and no start sticks." };
    private readonly Option<double> _spare = LinkVerb.Bounded("--spare-torque", "Percent of the load's torque that must be left over at each cutout, on the worst plant.", Usual.SpareTorque * 100, 0, 500);
    private readonly Option<long?> _starts = SweepOptions.WholeOption("--starts", "N", $"Simulated starts that verify the worst case, 1 to {WorstCaseRequest.MostStarts}. Without it: {Usual.Starts}.", 1, WorstCaseRequest.MostStarts);
    private readonly Option<long?> _seed = SweepOptions.WholeOption("--seed", "S", $"Number from which these starts follow, 0 to 1000000000. Without it: {Usual.Seed}.", 0, 1_000_000_000);

    /// <summary>Every option.</summary>
    public Option[] All => [_isAsked, _spare, _starts, _seed];

    /// <summary>True where the worst case is asked for.</summary>
    public bool IsAsked(CommandResult command) => command.GetValue(_isAsked);

    /// <summary>Refuses what does not go together.</summary>
    public void Check(CommandResult command)
    {
        if (IsAsked(command)) return;
        foreach (Option option in All.Skip(1).Where(option => command.GetResult(option) is { Implicit: false })) command.AddError($"{option.Name}: found it without --worst-case; allowed: it beside --worst-case");
    }

    /// <summary>The starter for the worst case; null where none is asked for.</summary>
    public WorstCaseChoice? Choose(VerbCall call, CaseFile file)
    {
        if (!call.Parsed.GetValue(_isAsked)) return null;
        WorstCaseRequest request = new() { SpareTorque = call.Parsed.GetValue(_spare) / 100, Starts = (int)(call.Parsed.GetValue(_starts) ?? Usual.Starts), Seed = (int)(call.Parsed.GetValue(_seed) ?? Usual.Seed) };
        return call.Terminal.Work("worst case", progress => WorstCaseDesigner.Choose(file, request, progress, call.Cancellation));
    }

    /// <summary>Says what holds for every choice.</summary>
    public static void Caution(Terminal terminal, WorstCaseChoice choice)
    {
        if (choice.SpareTorque > choice.Request.SpareTorque) terminal.Warn($"With {Text.Number(100 * choice.Request.SpareTorque)} % of the load's torque to spare the slowest start would not end in time: {Text.Number(100 * choice.SpareTorque)} % are left over.");
        if (!choice.IsVerified) terminal.Warn("Simulated starts passed the bound or did not get to the full supply: this starter is not verified.");
        terminal.Notes.MarkupLineInterpolated($"The bound holds between the limits of [bold][[tolerances]][/] and for what the model knows, with every part sound. It replaces no overcurrent device and no commissioning: the limits of motor and supply remain those of who is responsible for them.");
    }
}
