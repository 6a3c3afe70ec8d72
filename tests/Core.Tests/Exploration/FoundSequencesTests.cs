using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>The shortest sequences by which the exploration once broke an invariant: none of them does any more.</summary>
public sealed class FoundSequencesTests
{
    private const int Tick = SmallSettings.TickMicroseconds;

    private static readonly Letter Rest = new();
    private static readonly Letter RestWithField = new() { FieldAmps = 2f };
    private static readonly Letter Start = new() { Start = true };
    private static readonly Letter Fast = new() { BackEmfVolts = 187.5f, ArmatureAmps = 100f };
    private static readonly Letter FieldStands = new() { ElapsedMicroseconds = int.MaxValue, Field = true, FieldAmps = 2f };
    private static readonly Letter StartWithField = RestWithField with { Start = true, Field = true };

    private static readonly (string Name, ExploredSet Set, Letter[] Letters)[] Found =
    [
        ("field stays on for a tick of the trip by a field that does not stand", FieldAndBrakeSet.Set,
            [RestWithField, RestWithField with { Start = true }, RestWithField with { ElapsedMicroseconds = int.MaxValue }]),
        ("line closes on a field that has gone while the brake's contact held it up", FieldAndBrakeSet.Set,
            [RestWithField, StartWithField, FieldStands with { Brake = true }, RestWithField]),
        ("line that opened for the brake's contact closes again by itself", FieldAndBrakeSet.Set,
        [
            RestWithField, StartWithField, FieldStands, FieldStands with { ElapsedMicroseconds = 0, Line = true, Brake = true },
            FieldStands with { ElapsedMicroseconds = 0 },
        ]),
        ("brake closes into a shaft that got too fast behind a line that closed and opened", FieldAndBrakeSet.Set,
        [
            RestWithField, RestWithField with { Start = true }, RestWithField with { Stop = true }, Fast, Fast with { Line = true, Brake = true },
            Fast with { Line = true }, Fast with { BackEmfVolts = 360f },
        ]),
        ("brake's delay counts the long tick that found the contacts open", BrakeByCurrentSet.Set,
        [
            Rest, Rest with { ElapsedMicroseconds = Tick }, Start, Rest with { Stop = true },
            Fast with { ElapsedMicroseconds = Tick, ArmatureAmps = 0f }, Fast with { ArmatureAmps = 0f },
        ]),
        ("brake waits for the current and closes into a shaft that got too fast", BrakeByCurrentSet.Set,
        [
            Rest, Rest with { ElapsedMicroseconds = Tick }, Start with { ArmatureAmps = 350f }, Rest with { Stop = true },
            Fast with { ArmatureAmps = 0f }, Fast with { ElapsedMicroseconds = Tick, ArmatureAmps = 350f },
            Fast with { BackEmfVolts = 360f, ArmatureAmps = 0f },
        ]),
        ("line closes while a current says that something still is", BrakeByCurrentSet.Set,
            [Rest, Rest with { ElapsedMicroseconds = Tick }, Start with { ArmatureAmps = 350f }]),
        ("stage is preset while a current says that something still is", ProofByCurrentSet.Set,
            [Rest, Rest with { ElapsedMicroseconds = Tick }, Start with { BackEmfVolts = 125f, ArmatureAmps = 350f }]),
        ("stage is preset that only the dip permits", DipAndSpinningStartSet.Set,
            [Rest, Fast with { Start = true }, Fast with { Stages = 1, BackEmfVolts = 100f, SupplyVolts = 150f }]),
        ("stage is commanded anew in the dip behind a line contact that closed and opened", DipAndSpinningStartSet.Set,
        [
            Rest, Fast with { Start = true }, Fast with { Line = true, BackEmfVolts = 100f, SupplyVolts = 150f },
            Fast with { BackEmfVolts = 100f, SupplyVolts = 150f },
        ]),
        ("stage opens under the line's coil", LimitsSet.Set,
            [Rest, Fast with { Start = true }, Fast with { Stages = 1 }, Rest]),
        ("line contact that closes without its coil passes for a start", LimitsSet.Set,
            [Rest, Fast with { Start = true }, Rest, Fast with { Line = true }, Fast, Rest with { Line = true }]),
        ("dip puts resistance back where the line is lost", DipAndSpinningStartSet.Set,
        [
            Rest, Start, Fast with { Line = true }, Fast with { Line = true, Stages = 1 },
            Fast with { Line = true, Stages = 3, SupplyVolts = 150f }, Rest with { Stages = 1, SupplyVolts = 150f },
        ]),
        ("voltage equation speaks for a resistance that a lost contact has changed", SpeedLossSet.Set,
        [
            Rest, Start, Fast with { Line = true, ArmatureAmps = 0f }, Fast with { Line = true, Stages = 1, ArmatureAmps = 350f },
            Rest with { Line = true, ArmatureAmps = 350f, SpeedValid = false },
        ]),
    ];

    public static TheoryData<string> Names => [.. Found.Select(row => row.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Found_ShortestSequence_BreaksNothing(string name)
    {
        (_, ExploredSet set, Letter[] letters) = Array.Find(Found, row => row.Name == name);
        Machine machine = new(set);

        List<string?> broken = [.. letters.Select(machine.Tick)];

        Assert.All(broken, Assert.Null);
    }

    [Fact]
    public void PowerUp_StagesWithoutAuxiliaryContacts_AreNotProvenOpenBeforeTheirTime()
    {
        Bench bench = new(settings =>
        {
            settings.StageContactsFitted = false;
            settings.StepToleranceRatio = 0.2f;
            settings.ZeroAmps = 20f;
        });
        bench.Tick();

        Assert.True(bench.Controller.Refusals.HasFlag(Refusal.StageNotOpen));
        bench.Tick(bench.Settings.ContactMicroseconds);
        Assert.False(bench.Controller.Refusals.HasFlag(Refusal.StageNotOpen));
    }
}
