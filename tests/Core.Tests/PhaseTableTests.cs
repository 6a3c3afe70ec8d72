using System;
using System.Collections.Generic;
using System.Text;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Every state of every phase against every input, as text: where one tick leads, or a dash where the phase stays.</summary>
public sealed class PhaseTableTests
{
    private const string Buttons = """
                                nothing        20 s pass      start          start held     stop           start+stop     reset          reset+start    e-stop         e-stop+start
        NotSetUp                -              -              -              -              -              -              -              -              -              -
        Ready                   -              -              FieldBuilding  -              -              -              -              FieldBuilding  Tripped        Tripped
        Ready, stage closed     -              Tripped        -              -              -              -              -              -              Tripped        Tripped
        Field building          -              Accelerating   -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Field weak              -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Presetting              -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Waiting for shaft       -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Line closing            -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Accelerating            -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Accelerating, dip       -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Last stage closing      -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Running                 -              -              -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Running, dip            -              Tripped        -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Running, no speed       -              -              -              -              Stopping       Stopping       -              -              Tripped        Tripped
        Stopping                -              Tripped        -              -              -              -              -              -              Tripped        Tripped
        Stopping, brake delay   -              Tripped        -              -              -              -              -              -              Tripped        Tripped
        Stopping, EMF too high  -              Tripped        -              -              -              -              -              -              Tripped        Tripped
        Braking                 -              Tripped        -              -              -              -              -              -              Tripped        Tripped
        Tripped                 -              -              -              -              -              -              Ready          -              -              -
        Tripped, cause present  -              -              -              -              -              -              -              -              -              -
        """;

    private const string Surroundings = """
                                bad reading    overcurrent    contacts open  contacts close brake opens    brake closes   field opens    field weak     no permissive  supply 199 V   supply 150 V   supply 301 V   no speed       at rest        backwards      overspeed
        NotSetUp                -              -              -              -              -              -              -              -              -              -              -              -              -              -              -              -
        Ready                   Tripped        Tripped        -              -              -              -              -              -              -              -              -              -              Tripped        -              -              Tripped
        Ready, stage closed     Tripped        Tripped        -              -              -              -              -              -              -              -              -              -              Tripped        -              -              Tripped
        Field building          Tripped        Tripped        -              -              -              -              -              -              Tripped        -              -              -              Tripped        -              -              Tripped
        Field weak              Tripped        Tripped        -              -              -              -              -              -              Tripped        -              -              -              Tripped        -              -              Tripped
        Presetting              Tripped        Tripped        -              -              -              -              Tripped        Tripped        Tripped        -              -              Tripped        Tripped        -              -              Tripped
        Waiting for shaft       Tripped        Tripped        -              -              -              -              Tripped        Tripped        Tripped        -              -              Tripped        Tripped        -              -              Tripped
        Line closing            Tripped        Tripped        -              Tripped        -              Tripped        -              Tripped        Tripped        -              -              Tripped        Tripped        -              -              Tripped
        Accelerating            Tripped        Tripped        -              -              -              Tripped        -              Tripped        Tripped        -              -              Tripped        Tripped        -              Tripped        Tripped
        Accelerating, dip       Tripped        Tripped        -              -              -              Tripped        -              Tripped        Tripped        -              -              Tripped        Tripped        -              Tripped        Tripped
        Last stage closing      Tripped        Tripped        -              Running        -              Tripped        -              Tripped        Tripped        -              -              Tripped        Tripped        -              Tripped        Tripped
        Running                 Tripped        Tripped        -              -              -              Tripped        -              Tripped        Tripped        -              Accelerating   Tripped        Tripped        -              Tripped        Tripped
        Running, dip            Tripped        Tripped        -              -              -              Tripped        -              Tripped        Tripped        -              Accelerating   Tripped        Tripped        Accelerating   Tripped        Tripped
        Running, no speed       -              Tripped        Tripped        -              -              Tripped        -              Tripped        Tripped        Accelerating   Accelerating   Tripped        -              -              -              -
        Stopping                Tripped        Tripped        -              -              -              -              -              -              -              -              -              -              Tripped        -              Tripped        Tripped
        Stopping, brake delay   Tripped        Tripped        -              -              -              -              -              -              -              -              -              -              Tripped        Ready          -              Tripped
        Stopping, EMF too high  Tripped        Tripped        -              -              -              -              -              -              -              -              -              -              Tripped        Ready          Braking        Tripped
        Braking                 Tripped        Tripped        -              Tripped        -              -              -              -              -              -              -              -              Tripped        Stopping       -              Tripped
        Tripped                 -              -              -              -              -              -              -              -              -              -              -              -              -              -              -              -
        Tripped, cause present  -              -              -              -              -              -              -              -              -              -              -              -              -              -              -              -
        """;

    private static readonly (string Name, Action<Bench> Apply)[] ButtonInputs =
    [
        ("nothing", bench => bench.Tick()),
        ("20 s pass", bench => bench.Tick(20_000 * Bench.Millisecond)),
        ("start", bench => bench.PressStart()),
        ("start held", StartHeld),
        ("stop", bench => bench.PressStop()),
        ("start+stop", bench => { bench.Readings.StopPressed = true; bench.PressStart(); }),
        ("reset", bench => bench.PressReset()),
        ("reset+start", bench => { bench.Readings.ResetPressed = true; bench.PressStart(); }),
        ("e-stop", bench => bench.PressEmergencyStop()),
        ("e-stop+start", bench => { bench.Readings.EmergencyStop = true; bench.PressStart(); }),
    ];

    private static readonly (string Name, Action<Bench> Apply)[] SurroundingInputs =
    [
        ("bad reading", Reads(readings => readings.SpeedRadPerSec = float.NaN)),
        ("overcurrent", Reads(readings => readings.ArmatureAmps = 1001f)),
        ("contacts open", Reads(readings => (readings.LineClosed, readings.StagesClosed) = (false, 0))),
        ("contacts close", Reads(readings => (readings.LineClosed, readings.StagesClosed) = (true, Bench.AllStages))),
        ("brake opens", Reads(readings => readings.BrakeClosed = false)),
        ("brake closes", Reads(readings => readings.BrakeClosed = true)),
        ("field opens", Reads(readings => readings.FieldClosed = false)),
        ("field weak", Reads(readings => readings.FieldAmps = 1.9f)),
        ("no permissive", Reads(readings => readings.Permissives = 2)),
        ("supply 199 V", Reads(readings => readings.SupplyVolts = 199f)),
        ("supply 150 V", Reads(readings => readings.SupplyVolts = 150f)),
        ("supply 301 V", Reads(readings => readings.SupplyVolts = 301f)),
        ("no speed", Reads(readings => readings.SpeedValid = false)),
        ("at rest", Reads(readings => readings.SpeedRadPerSec = 0f)),
        ("backwards", Reads(readings => readings.SpeedRadPerSec = -6f)),
        ("overspeed", Reads(readings => readings.SpeedRadPerSec = 121f)),
    ];

    [Fact]
    public void Phase_EveryStateAndButton_LeadsWhereTheTableSays() => AssertTable(Buttons, ButtonInputs);

    [Fact]
    public void Phase_EveryStateAndSurroundings_LeadsWhereTheTableSays() => AssertTable(Surroundings, SurroundingInputs);

    [Fact]
    public void Phase_EveryStateAndInput_OutputsBelongToThePhase()
    {
        foreach ((string name, Func<Bench> prepare) in PhaseTableStates.All)
        {
            foreach ((string input, Action<Bench> apply) in (IEnumerable<(string, Action<Bench>)>)[.. ButtonInputs, .. SurroundingInputs])
            {
                Bench bench = prepare();
                apply(bench);
                AssertOutputsBelong(bench, $"{name} x {input}: {bench.Controller.Phase}");
            }
        }
    }

    [Fact]
    public void Phase_EveryOne_IsInTheTable()
    {
        HashSet<Phase> seen = [];
        foreach ((_, Func<Bench> prepare) in PhaseTableStates.All) seen.Add(prepare().Controller.Phase);

        Assert.Equal(Enum.GetValues<Phase>().Length, seen.Count);
    }

    [Fact]
    public void Phase_Numbers_ArePublished() =>
        Assert.Equal(
            ["NotSetUp=0", "Ready=1", "Accelerating=2", "Running=3", "Stopping=4", "Tripped=5", "FieldBuilding=6", "Braking=7"],
            Array.ConvertAll(Enum.GetValues<Phase>(), phase => $"{phase}={(int)phase}"));

    /// <summary>A bench behind every cell of the table.</summary>
    internal static IEnumerable<Bench> EveryCell()
    {
        foreach ((_, Func<Bench> prepare) in PhaseTableStates.All)
        {
            foreach ((_, Action<Bench> apply) in (IEnumerable<(string, Action<Bench>)>)[.. ButtonInputs, .. SurroundingInputs])
            {
                Bench bench = prepare();
                apply(bench);
                yield return bench;
            }
        }
    }

    private static void AssertOutputsBelong(Bench bench, string where)
    {
        Phase phase = bench.Controller.Phase;
        Outputs outputs = bench.Outputs;
        bool powered = phase is Phase.Accelerating or Phase.Running;
        bool everythingClosed = outputs.CloseLine && outputs.CloseStages == Bench.AllStages;
        Assert.True(powered || !outputs.CloseLine, where);
        Assert.True(outputs.CloseLine || outputs.CloseStages == 0 || phase == Phase.Accelerating, where);
        Assert.True(phase == Phase.Braking || !outputs.CloseBrake, where);
        bool fieldBelongs = phase is Phase.FieldBuilding or Phase.Accelerating or Phase.Running or Phase.Stopping or Phase.Braking;
        Assert.True(outputs.CloseField == fieldBelongs || (phase is Phase.Tripped or Phase.Ready), where);
        Assert.True(!outputs.RunningLamp || (phase == Phase.Running && everythingClosed), where);
        Assert.True(outputs.TrippedLamp == phase is Phase.Tripped or Phase.NotSetUp, where);
        Assert.True(outputs.ReadyLamp == (phase == Phase.Ready && bench.Controller.Refusals == Refusal.None), where);
    }

    private static void AssertTable(string expected, (string Name, Action<Bench> Apply)[] inputs)
    {
        StringBuilder table = new(Row("", inputs, input => input.Name));
        foreach ((string name, Func<Bench> prepare) in PhaseTableStates.All)
        {
            table.Append('\n').Append(Row(name, inputs, input => After(prepare(), input.Apply)));
        }

        Assert.True(expected.ReplaceLineEndings("\n") == table.ToString(), $"the table should be:\n{table}");
    }

    private static string Row(string name, (string, Action<Bench>)[] inputs, Func<(string Name, Action<Bench> Apply), string> cell)
    {
        StringBuilder row = new(name.PadRight(24));
        foreach ((string, Action<Bench>) input in inputs) row.Append(cell(input).PadRight(15));
        return row.ToString().TrimEnd();
    }

    private static string After(Bench bench, Action<Bench> apply)
    {
        Phase before = bench.Controller.Phase;
        apply(bench);
        return bench.Controller.Phase == before ? "-" : bench.Controller.Phase.ToString();
    }

    private static Action<Bench> Reads(Action<Readings> spoil) => bench =>
    {
        bench.Spoil = spoil;
        bench.Tick();
    };

    private static void StartHeld(Bench bench)
    {
        // Pressed where it cannot start anything, and then simply not released.
        bench.Readings.StopPressed = bench.Controller.Phase == Phase.Ready;
        bench.Readings.StartPressed = true;
        bench.Tick();
        bench.Readings.StopPressed = false;
        bench.Tick();
    }
}
