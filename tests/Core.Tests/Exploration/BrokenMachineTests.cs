using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using StarterCtl.House;
using Xunit;

namespace StarterCtl.Core.Tests.Exploration;

/// <summary>The exploration bites: for every invariant there is a machine that breaks it, and it is found out.</summary>
public sealed partial class BrokenMachineTests
{
    private static readonly string[] Parts = ["", ".Sequence", ".Protection", ".Cutout"];

    private static readonly ExploredSet Bare = Alphabet.Set;
    private static readonly ExploredSet Brake = FieldAndBrakeSet.Set;
    private static readonly ExploredSet Dip = DipAndSpinningStartSet.Set;
    private static readonly ExploredSet Limits = LimitsSet.Set;

    private static readonly (string Invariant, ExploredSet Set, Defect Defect)[] Defects =
    [
        // Not listened to: what comes out is not what the interlock let through.
        ("stages close in order", Bare, Spoils((_, _, o) => { if (o.CloseStages == 1) o.CloseStages = 2; })),
        ("no stage without the line", Bare, Spoils((was, _, o) => { if (was.Phase == Phase.Ready && !o.CloseLine) o.CloseStages = 1; })),
        ("one stage per decision", Bare, Spoils((was, _, o) => { if (was.Stages == 0 && o.CloseStages == 1) o.CloseStages = 3; })),
        ("no stage opens under the line", Bare, Spoils((was, _, o) => { if (was.Stages == 3) o.CloseStages &= 1; })),
        ("tripped is all off", Bare, Spoils((was, _, o) => { if (o.TrippedLamp) o.CloseLine = was.Line; })),
        ("one lamp at most", Bare, Spoils((_, _, o) => { if (o.TrippedLamp) o.ReadyLamp = true; })),
        ("ready lamp only when a start is accepted", Bare, Spoils((_, _, o) => o.ReadyLamp = !o.CloseLine && !o.TrippedLamp)),
        ("running lamp only with everything closed", Bare, Spoils((_, r, o) => o.RunningLamp = o.CloseLine && r.LineClosed)),
        ("tripped lamp exactly while tripped", Bare, Spoils((_, _, o) => o.TrippedLamp = false)),
        ("a line that was in and opened needs a new start", Bare, Spoils((was, r, o) => { if (was.Line && r.StartPressed) o.AllOff(); })),
        ("line and stages only while starting or running", Bare, Spoils((was, r, o) => o.CloseLine |= was.Phase == Phase.Ready && r.ResetPressed)),
        ("no coil that is not fitted", Bare, Spoils((was, _, o) => o.CloseBrake = was.Phase == Phase.Ready)),
        ("line and brake are never closed together", Brake, Spoils((_, _, o) => o.CloseBrake |= o.CloseLine)),
        ("brake only while braking", Brake, Spoils((was, r, o) => o.CloseBrake |= was.Phase == Phase.Ready && r.ResetPressed)),
        ("emergency stop opens the brake", Brake, Spoils((was, r, o) => o.CloseBrake |= was.Brake && r.EmergencyStop)),
        ("line only with the field", Brake, Spoils((was, _, o) => o.CloseField &= !was.Line)),
        ("field never drops under a closed line", Brake, Spoils((_, _, o) => o.CloseField &= !o.TrippedLamp)),
        ("field goes when the line is proven open", Brake, Spoils((was, _, o) => o.CloseField |= was.Field)),
        ("field comes with a start", Brake, Spoils((was, r, o) => o.CloseField |= was.Phase == Phase.Ready && r.LineClosed)),

        // Lied to: a check that is missing sees what it would like to see.
        ("next stage only when the last is proven closed", Bare, Lies((was, r) => { if (was.Stages != 0) r.StagesClosed = was.Stages; })),
        ("no stage before the line is proven closed", Bare, Lies((was, r) => r.LineClosed = was.Line)),
        ("line only when every stage is proven where it should be", Bare, Lies((was, r) => { if (!was.Line) r.StagesClosed = 0; })),
        ("line only when its own contact is proven open", Bare, Lies((was, r) => { if (!was.Line) r.LineClosed = false; })),
        ("line coil off when a stage that nobody asked for closes before the line is in", Bare, Lies((was, r) => { if (was.Line) r.StagesClosed &= was.Stages; })),
        ("no peak when a contact that opened closes again", Bare, Lies((was, r) => { if (was.Stages != 0) r.LineClosed = true; })),
        ("stop wins in the same tick", Bare, Lies((_, r) => r.StopPressed = false)),
        ("emergency stop trips", Bare, Lies((_, r) => { r.StopPressed |= r.EmergencyStop; r.EmergencyStop = false; })),
        ("a bad reading trips", Bare, Lies((_, r) => r.SupplyVolts = Alphabet.SupplyVolts)),
        ("a lost speed trips", Bare, Lies((_, r) => r.SpeedValid = true)),
        ("start only on a press in ready", Bare, Lies((_, r) => r.StartPressed |= r.ResetPressed)),
        ("a trip stays until a reset", Bare, Lies((was, r) => r.ResetPressed = was.Tripped)),
        ("no reset while start is held", Bare, Lies((was, r) => { if (was.Tripped) r.StartPressed = false; })),
        ("line only when the brake is proven open", Brake, Lies((was, r) => r.BrakeClosed &= was.Brake)),
        ("line opens when the brake closes by itself", Brake, Lies((was, r) => r.BrakeClosed &= !was.Line)),
        ("brake only when the line is proven open", Brake, Lies((was, r) => r.LineClosed &= was.Line)),
        ("brake opens when the line closes by itself", Brake, Lies((was, r) => r.LineClosed &= !was.Brake)),
        ("brake only when every stage is proven open", Brake, Lies((was, r) => { if (was.Phase == Phase.Stopping) r.StagesClosed = 0; })),
        ("brake opens at its release speed", Brake, Lies((was, r) => { if (was.Brake) r.SpeedRadPerSec = 75f; })),
        ("line closes only on a field that stands", Brake, Lies((_, r) => r.FieldAmps = 2f)),
        ("a lost field trips", Brake, Lies((_, r) => r.FieldAmps = 2f)),
        ("a wrong brake contact trips", Brake, Lies((was, r) => r.BrakeClosed = was.Brake)),
        ("a wrong field contact trips", Brake, Lies((was, r) => r.FieldClosed = was.Field)),
        ("no start against a refusal", Limits, Lies((_, r) => r.Permissives = -1)),
        ("a lost permissive trips", Limits, Lies((_, r) => r.Permissives = -1)),
        ("a hot resistor trips", Limits, Lies((_, r) => r.ResistorCelsius = 20f)),
        ("a long dip trips", Dip, Lies((was, r) => { if (was.Line) r.SupplyVolts = Alphabet.SupplyVolts; })),

        // Both: two checks hold, and both are gone.
        (
            "no start straight out of a trip",
            Bare,
            new Defect
            {
                Lie = (was, r) => { if (was.Tripped) r.StartPressed = false; },
                Spoil = (was, r, o) => { if (was.Tripped && !o.TrippedLamp) o.CloseLine = r.StartPressed; },
            }),

        // Set up wrongly: a limit that is not there or is not looked at.
        ("overcurrent trips", Bare, Has(s => s.InstantTripAmps = Settings.Largest)),
        ("a wrong line contact trips", Bare, Has(s => s.ContactMicroseconds += Alphabet.TickMicroseconds)),
        ("a wrong stage contact trips", Bare, Has(s => s.ContactMicroseconds += Alphabet.TickMicroseconds)),
        ("no peak above the permitted one", Bare, Has(s => { s.VoltsLeft[0] = 130f; s.VoltsLeft[1] = 125f; })),
        ("no current back above the permitted one", Bare, Has(s => s.VoltsLeft[1] = 120f)),
        ("no cutout above the lockout", Bare, Has(s => s.LockoutAmps = Settings.Largest)),
        // The confirm time would hide it: it covers what is left of the dwell.
        ("no cutout before the dwell is over", Bare, Has(s => s.MinimumDwellMicroseconds = s.ConfirmMicroseconds = 0)),
        ("brake only after its delay", BrakeByCurrentSet.Set, Has(s => s.BrakeDelayMicroseconds = 0)),
        ("no brake current above the permitted peak", Brake, Has(s => s.BrakeOhms = 0.6f)),
        ("no preset that the back-EMF does not permit", Dip, Has(s => { s.VoltsLeft[0] = 160f; s.VoltsLeft[1] = 155f; })),
        ("no cutout in a dip", Dip, Has(s => s.SupplyLowVolts = 0f)),
        ("a high supply trips", Dip, Has(s => s.SupplyHighVolts = Settings.Largest)),
        ("no cutout by a current that moves", SpeedLossSet.Set, Has(s => s.SteadyAmpsPerSec = Settings.Largest)),
        ("no cutout by a current that does not flow", SpeedLossSet.Set, Has(s => s.ZeroAmps = 5f)),
        ("no cutout by the current before its confirm time", SpeedLossSet.Set, Has(s => s.ResistiveConfirmMicroseconds = 0)),
        ("overspeed trips", Limits, Has(s => s.OverspeedRadPerSec = Settings.Largest)),
        ("turning backwards under the line trips", Limits, Has(s => s.ReverseRadPerSec = Settings.Largest)),
        ("a stall trips", Limits, Has(s => s.StallAmps = Settings.Largest)),
        ("a current while everything is open trips", Limits, Has(s => s.ZeroAmps = 0f)),
        ("a late tick trips", Limits, Has(s => s.MaximumTickMicroseconds = Settings.LongestMicroseconds)),
        ("no phase lasts for ever", Limits, Has(s => s.MaximumStartMicroseconds = Settings.LongestMicroseconds)),
    ];

    public static TheoryData<string> Invariants => [.. Defects.Select(row => row.Invariant)];

    [Theory]
    [MemberData(nameof(Invariants))]
    public void Explore_MachineThatBreaksIt_IsFoundOut(string invariant)
    {
        (_, ExploredSet set, Defect defect) = Array.Find(Defects, row => row.Invariant == invariant);

        Explorer explorer = new Explorer(() => new BrokenMachine(set, defect), Ticks(set), invariant).Run();

        ExplorationTests.Tell($"{explorer.States.Count} states, {explorer.Depth} ticks deep");
        Assert.Contains(invariant, explorer.Broken.Keys);
        ExplorationTests.Tell(explorer.Broken[invariant]);
    }

    [Fact]
    public void Explore_NothingWrongWithTheMachine_FindsNothing() =>
        Assert.Empty(new Explorer(() => new BrokenMachine(Dip, new Defect()), Ticks(Dip)).Run().Broken);

    [Fact]
    public void Invariants_AllThatTheCheckerKnows_HaveAMachineThatBreaksThem()
    {
        string checker = string.Concat(Parts.Select(part => Repository.Text($"tests/Core.Tests/Invariants/InvariantChecker{part}.cs")));

        Assert.Equal(
            Returned().Matches(checker).Select(match => match.Groups[1].Value).Distinct().Order(),
            Defects.Select(row => row.Invariant).Order());
    }

    // A tick, and none for contacts that follow at once, are time enough to break anything.
    private static List<Letter> Ticks(ExploredSet set) =>
        set.Letters().FindAll(letter => set != Bare || letter.ElapsedMicroseconds <= Alphabet.TickMicroseconds);

    private static Defect Spoils(Action<Before, Readings, Outputs> spoil) => new() { Spoil = spoil };

    private static Defect Lies(Action<Before, Readings> lie) => new() { Lie = lie };

    private static Defect Has(Action<Settings> change) => new() { Change = change };

    [GeneratedRegex("return \"([^\"]+)\"")]
    private static partial Regex Returned();
}
