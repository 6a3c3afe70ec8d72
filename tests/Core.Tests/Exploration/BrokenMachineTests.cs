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
    private static readonly (string Invariant, Defect Defect)[] Defects =
    [
        // Not listened to: what comes out is not what the interlock let through.
        ("stages close in order", Spoils((_, _, o) => { if (o.CloseStages == 1) o.CloseStages = 2; })),
        ("no stage without the line", Spoils((was, _, o) => { if (!o.CloseLine) o.CloseStages = was.Stages; })),
        ("one stage per decision", Spoils((was, _, o) => { if (was.Stages == 0 && o.CloseStages == 1) o.CloseStages = 3; })),
        ("no stage opens under the line", Spoils((was, _, o) => { if (was.Stages == 3) o.CloseStages &= 1; })),
        ("tripped is all off", Spoils((was, _, o) => { if (o.TrippedLamp) o.CloseLine = was.Line; })),
        ("one lamp at most", Spoils((_, _, o) => { if (o.TrippedLamp) o.ReadyLamp = true; })),
        ("ready lamp only when a start is accepted", Spoils((_, _, o) => o.ReadyLamp = !o.CloseLine && !o.TrippedLamp)),
        ("running lamp only with everything closed", Spoils((_, r, o) => o.RunningLamp = o.CloseLine && r.LineClosed)),

        // Lied to: a check that is missing sees what it would like to see.
        ("next stage only when the last is proven closed", Lies((was, r) => { if (was.Stages != 0) r.StagesClosed = was.Stages; })),
        ("no stage before the line is proven closed", Lies((was, r) => r.LineClosed = was.Line)),
        ("line only when every stage is proven open", Lies((was, r) => { if (!was.Line) r.StagesClosed = 0; })),
        ("line only when its own contact is proven open", Lies((was, r) => { if (!was.Line) r.LineClosed = false; })),
        ("line coil off when a stage that nobody asked for closes before the line is in", Lies((was, r) => { if (was.Line) r.StagesClosed &= was.Stages; })),
        ("no peak when a contact that opened closes again", Lies((was, r) => { if (was.Stages != 0) r.LineClosed = true; })),
        ("stop wins in the same tick", Lies((_, r) => r.StopPressed = false)),
        ("emergency stop trips", Lies((_, r) => { r.StopPressed |= r.EmergencyStop; r.EmergencyStop = false; })),
        ("a bad reading trips", Lies((_, r) => r.SpeedValid = true)),
        ("line only on a press of start", Lies((_, r) => r.StartPressed |= r.ResetPressed)),
        ("a trip stays until a reset", Lies((was, r) => r.ResetPressed = was.Tripped)),
        ("no reset while start is held", Lies((was, r) => { if (was.Tripped) r.StartPressed = false; })),

        // Both: two checks hold, and both are gone.
        (
            "no stage on the tick that closes the line",
            new Defect
            {
                Lie = (was, r) => { if (!was.Line) r.LineClosed = false; },
                Spoil = (was, _, o) => { if (!was.Line && o.CloseLine) o.CloseStages = 1; },
            }),
        (
            "no start straight out of a trip",
            new Defect
            {
                Lie = (was, r) => { if (was.Tripped) r.StartPressed = false; },
                Spoil = (was, r, o) => { if (was.Tripped && !o.TrippedLamp) o.CloseLine = r.StartPressed; },
            }),

        // Set up wrongly: a limit that is not there or is not looked at.
        ("overcurrent trips", Has(s => s.InstantTripAmps = Settings.Largest)),
        ("a wrong line contact trips", Has(s => s.ContactMicroseconds += Alphabet.TickMicroseconds)),
        ("a wrong stage contact trips", Has(s => s.ContactMicroseconds += Alphabet.TickMicroseconds)),
        ("no peak above the permitted one", Has(s => { s.VoltsLeft[0] = 130f; s.VoltsLeft[1] = 125f; })),
        ("no current back above the permitted one", Has(s => s.VoltsLeft[1] = 120f)),
        ("no cutout above the lockout", Has(s => s.LockoutAmps = Settings.Largest)),
        // The confirm time would hide it: it covers what is left of the dwell.
        ("no cutout before the dwell is over", Has(s => s.MinimumDwellMicroseconds = s.ConfirmMicroseconds = 0)),
    ];

    public static TheoryData<string> Invariants => [.. Defects.Select(row => row.Invariant)];

    [Theory]
    [MemberData(nameof(Invariants))]
    public void Explore_MachineThatBreaksIt_IsFoundOut(string invariant)
    {
        Defect defect = Array.Find(Defects, row => row.Invariant == invariant).Defect;

        Explorer explorer = new Explorer(() => new BrokenMachine(defect), Ticks(), invariant).Run();

        ExplorationTests.Tell($"{explorer.States.Count} states, {explorer.Depth} ticks deep");
        Assert.Contains(invariant, explorer.Broken.Keys);
        ExplorationTests.Tell(explorer.Broken[invariant]);
    }

    [Fact]
    public void Explore_NothingWrongWithTheMachine_FindsNothing() =>
        Assert.Empty(new Explorer(() => new BrokenMachine(new Defect()), Ticks()).Run().Broken);

    [Fact]
    public void Invariants_AllThatTheCheckerKnows_HaveAMachineThatBreaksThem()
    {
        string checker = Repository.Text("tests/Core.Tests/Invariants/InvariantChecker.cs");

        Assert.Equal(
            Returned().Matches(checker).Select(match => match.Groups[1].Value).Distinct().Order(),
            Defects.Select(row => row.Invariant).Order());
    }

    // A third of the letters: a tick is time enough to break anything.
    private static List<Letter> Ticks() => Alphabet.Letters().FindAll(letter => letter.ElapsedMicroseconds == Alphabet.TickMicroseconds);

    private static Defect Spoils(Action<Before, Readings, Outputs> spoil) => new() { Spoil = spoil };

    private static Defect Lies(Action<Before, Readings> lie) => new() { Lie = lie };

    private static Defect Has(Action<Settings> change) => new() { Change = change };

    [GeneratedRegex("return (?:isOver \\? )?\"([^\"]+)\"")]
    private static partial Regex Returned();
}
