using System;
using System.Collections.Generic;
using System.Text;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>Every phase against every input, as text: where one tick leads, or that the phase stays.</summary>
public sealed class PhaseTableTests
{
    // Two states of one phase are two rows where the same input does different things in them.
    private const string Expected = """
                                nothing       time passes   start         start held    stop          start+stop    reset         reset+start   e-stop        e-stop+start  bad reading   overcurrent   contacts open contacts close
        NotSetUp                stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays
        Ready                   stays         stays         Accelerating  stays         stays         stays         stays         Accelerating  Tripped       Tripped       Tripped       Tripped       stays         stays
        Ready, stage closed     stays         Tripped       stays         stays         stays         stays         stays         stays         Tripped       Tripped       Tripped       Tripped       stays         stays
        Line closing            stays         Tripped       stays         stays         Stopping      Stopping      stays         stays         Tripped       Tripped       Tripped       Tripped       stays         Tripped
        Accelerating            stays         Tripped       stays         stays         Stopping      Stopping      stays         stays         Tripped       Tripped       Tripped       Tripped       stays         stays
        Last stage closing      stays         Tripped       stays         stays         Stopping      Stopping      stays         stays         Tripped       Tripped       Tripped       Tripped       stays         Running
        Running                 stays         stays         stays         stays         Stopping      Stopping      stays         stays         Tripped       Tripped       Tripped       Tripped       stays         stays
        Stopping                stays         Tripped       stays         stays         stays         stays         stays         stays         Tripped       Tripped       Tripped       Tripped       Ready         stays
        Tripped                 stays         stays         stays         stays         stays         stays         Ready         stays         stays         stays         stays         stays         stays         stays
        Tripped, cause present  stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays         stays
        """;

    private static readonly (string Name, Func<Bench> Prepare)[] States =
    [
        ("NotSetUp", () => new Bench(settings => settings.StageCount = 0).Tick()),
        ("Ready", () => new Bench().Tick()),
        ("Ready, stage closed", StageClosed),
        ("Line closing", () => new Bench(contactTicks: int.MaxValue).Tick().PressStart()),
        ("Accelerating", () => new Bench().InStage(2)),
        ("Last stage closing", LastStageClosing),
        ("Running", () => new Bench().Run()),
        ("Stopping", () => new Bench(contactTicks: 20).Run().PressStop()),
        ("Tripped", () => new Bench().Tick().PressEmergencyStop().Tick()),
        ("Tripped, cause present", CausePresent),
    ];

    private static readonly (string Name, Action<Bench> Apply)[] Inputs =
    [
        ("nothing", bench => bench.Tick()),
        ("time passes", bench => bench.Tick(20_000 * Bench.Millisecond)),
        ("start", bench => bench.PressStart()),
        ("start held", StartHeld),
        ("stop", bench => bench.PressStop()),
        ("start+stop", bench => { bench.Readings.StopPressed = true; bench.PressStart(); }),
        ("reset", bench => bench.PressReset()),
        ("reset+start", bench => { bench.Readings.ResetPressed = true; bench.PressStart(); }),
        ("e-stop", bench => bench.PressEmergencyStop()),
        ("e-stop+start", bench => { bench.Readings.EmergencyStop = true; bench.PressStart(); }),
        ("bad reading", bench => { bench.Readings.SpeedValid = false; bench.Tick(); }),
        ("overcurrent", bench => { bench.Readings.ArmatureAmps = 1001f; bench.Tick(); }),
        ("contacts open", bench => Contacts(bench, false, 0)),
        ("contacts close", bench => Contacts(bench, true, Bench.AllStages)),
    ];

    [Fact]
    public void Phase_EveryStateAndInput_LeadsWhereTheTableSays()
    {
        StringBuilder table = new(Row("", Inputs, input => input.Name));
        foreach ((string name, Func<Bench> prepare) in States)
        {
            table.Append('\n').Append(Row(name, Inputs, input => After(prepare(), input.Apply)));
        }

        Assert.Equal(Expected.ReplaceLineEndings("\n"), table.ToString());
    }

    [Fact]
    public void Phase_EveryStateAndInput_OutputsBelongToThePhase()
    {
        foreach ((string name, Func<Bench> prepare) in States)
        {
            foreach ((string input, Action<Bench> apply) in Inputs)
            {
                Bench bench = prepare();
                apply(bench);

                Phase phase = bench.Controller.Phase;
                bool energised = phase is Phase.Accelerating or Phase.Running;
                string where = $"{name} x {input}: {phase}";
                Assert.True(bench.Outputs.CloseLine == energised, where);
                Assert.True(energised || bench.Outputs.CloseStages == 0, where);
                bool everythingClosed = bench.Readings.LineClosed && bench.Readings.StagesClosed == Bench.AllStages;
                Assert.True(bench.Outputs.RunningLamp == (phase == Phase.Running && everythingClosed), where);
                Assert.True(bench.Outputs.TrippedLamp == phase is Phase.Tripped or Phase.NotSetUp, where);
                Assert.True(bench.Outputs.ReadyLamp == (phase == Phase.Ready && bench.Controller.Refusals == Refusal.None), where);
            }
        }
    }

    [Fact]
    public void Phase_EveryOne_IsInTheTable()
    {
        HashSet<Phase> seen = [];
        foreach ((_, Func<Bench> prepare) in States) seen.Add(prepare().Controller.Phase);

        Assert.Equal(Enum.GetValues<Phase>().Length, seen.Count);
    }

    private static string Row(string name, (string, Action<Bench>)[] inputs, Func<(string Name, Action<Bench> Apply), string> cell)
    {
        StringBuilder row = new(name.PadRight(24));
        foreach ((string, Action<Bench>) input in inputs) row.Append(cell(input).PadRight(14));
        return row.ToString().TrimEnd();
    }

    private static string After(Bench bench, Action<Bench> apply)
    {
        Phase before = bench.Controller.Phase;
        apply(bench);
        return bench.Controller.Phase == before ? "stays" : bench.Controller.Phase.ToString();
    }

    private static Bench StageClosed()
    {
        Bench bench = new Bench { StagesStuck = 1 };
        bench.Readings.StagesClosed = 1;
        return bench.Tick();
    }

    private static Bench LastStageClosing()
    {
        Bench bench = new Bench().InStage(3).BackEmf(240f);
        bench.StagesStuck = 4;
        return bench.Tick().Tick();
    }

    private static Bench CausePresent()
    {
        Bench bench = new Bench().Tick();
        bench.Readings.SupplyVolts = float.NaN;
        return bench.Tick();
    }

    private static void StartHeld(Bench bench)
    {
        // Pressed where it cannot start anything, and then simply not released.
        bench.Readings.StopPressed = bench.Controller.Phase == Phase.Ready;
        bench.Readings.StartPressed = true;
        bench.Tick();
        bench.Readings.StopPressed = false;
        bench.Tick();
    }

    private static void Contacts(Bench bench, bool line, int stages)
    {
        bench.LineStuck = true;
        bench.StagesStuck = Bench.AllStages;
        bench.Readings.LineClosed = line;
        bench.Readings.StagesClosed = stages;
        bench.Tick();
    }
}
