using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Firmware.Tests.Boards;
using Xunit;

namespace StarterCtl.Firmware.Tests.Checks;

/// <summary>One wrong thing in a wiring at a time, and what is said of it.</summary>
public sealed class BoardCheckTests
{
    public static TheoryData<BoardProblem, PinRole, string> Wrong()
    {
        TheoryData<BoardProblem, PinRole, string> data = [];
        foreach (WrongWiring wrong in Wirings) data.Add(wrong.Problem, wrong.Role, wrong.Name);
        return data;
    }

    private static readonly List<WrongWiring> Wirings =
    [
        new("start on the pin of stop", BoardProblem.PinUsedTwice, PinRole.StartButton, (map, _) => map.Wire(PinRole.StartButton, (int)PinRole.StopButton, false)),
        new("last permissive on the first pin", BoardProblem.PinUsedTwice, PinRole.Permissive1 + 15, (map, _) => map.Wire(PinRole.Permissive1 + 15, 0, false)),
        new("no armature current", BoardProblem.PinMissing, PinRole.ArmatureAmps, (map, _) => Remove(map, PinRole.ArmatureAmps)),
        new("no stop chain", BoardProblem.PinMissing, PinRole.StopChain, (map, _) => Remove(map, PinRole.StopChain)),
        new("no line contact", BoardProblem.PinMissing, PinRole.LineContact, (map, _) => Remove(map, PinRole.LineContact)),
        new("no third stage coil", BoardProblem.PinMissing, PinRole.StageCoil1 + 2, (map, _) => Remove(map, PinRole.StageCoil1 + 2)),
        new("no third stage contact", BoardProblem.PinMissing, PinRole.StageContact1 + 2, (map, _) => Remove(map, PinRole.StageContact1 + 2)),
        new("no speed", BoardProblem.PinMissing, PinRole.SpeedEdges, (map, _) => Remove(map, PinRole.SpeedEdges)),
        new("no field current", BoardProblem.PinMissing, PinRole.FieldAmps, (_, settings) => settings.FieldSensorFitted = true),
        new("no resistor sensor", BoardProblem.PinMissing, PinRole.ResistorCelsius, (_, settings) => settings.ResistorSensorFitted = true),
        new("no brake coil", BoardProblem.PinMissing, PinRole.BrakeCoil, (_, settings) => (settings.BrakeFitted, settings.BrakeContactFitted) = (true, false)),
        new("no field coil", BoardProblem.PinMissing, PinRole.FieldCoil, (_, settings) => settings.FieldContactorFitted = true),
        new("no second permissive", BoardProblem.PinMissing, PinRole.Permissive1 + 1, (_, settings) => settings.RequiredPermissives = 3),
        new("gain 0", BoardProblem.GainUnusable, PinRole.SupplyVolts, (map, _) => map.Supply.Calibration.UnitsPerCount = 0f),
        new("gain no number", BoardProblem.GainUnusable, PinRole.SupplyVolts, (map, _) => map.Supply.Calibration.UnitsPerCount = float.NaN),
        new("offset no number", BoardProblem.GainUnusable, PinRole.ArmatureAmps, (map, _) => map.Armature.Calibration.OffsetCounts = float.PositiveInfinity),
        new("counts crossed", BoardProblem.CountsCrossed, PinRole.SupplyVolts, (map, _) => map.Supply.LowestCounts = 3890),
        new("median of 4", BoardProblem.MedianUnknown, PinRole.SupplyVolts, (map, _) => map.Supply.MedianSamples = 4),
        new("current up to 999 A at a trip of 1000 A", BoardProblem.RangeTooSmall, PinRole.ArmatureAmps, (map, _) => SoftPins.Scale(map.Armature, -1200f, 999f)),
        new("current down to -999 A", BoardProblem.NegativeRangeTooSmall, PinRole.ArmatureAmps, (map, _) => SoftPins.Scale(map.Armature, -999f, 1200f)),
        new("supply up to 290 V at a limit of 300 V", BoardProblem.RangeTooSmall, PinRole.SupplyVolts, (map, settings) =>
        {
            settings.SupplyHighVolts = 300f;
            SoftPins.Scale(map.Supply, 0f, 290f);
        }),
        new("300 edges a turn at 240 rad/s", BoardProblem.TooManyEdges, PinRole.SpeedEdges, (map, settings) =>
        {
            settings.OverspeedRadPerSec = 240f;
            map.Pulses.EdgesPerTurn = 300;
        }),
        new("no edges a turn", BoardProblem.PulsesUnusable, PinRole.SpeedEdges, (map, _) => map.Pulses.EdgesPerTurn = 0),
        new("no time-out", BoardProblem.PulsesUnusable, PinRole.SpeedEdges, (map, _) => map.Standstill.TimeOutMicroseconds = 0),
        new("no acceleration", BoardProblem.PulsesUnusable, PinRole.SpeedEdges, (map, _) => map.Pulses.HighestRadPerSecSquared = float.NaN),
        new("no zero current", BoardProblem.NoZeroCurrent, PinRole.SpeedEdges, (map, _) => map.Standstill.ZeroAmps = 0f),
        new("tacho believed down to less than a count", BoardProblem.LeastSpeedTooSmall, PinRole.TachoRadPerSec, (map, _) =>
        {
            WireTacho(map);
            map.Standstill.LeastRadPerSec = 0.1f;
        }),
        new("tacho without zero current", BoardProblem.NoZeroCurrent, PinRole.TachoRadPerSec, (map, _) =>
        {
            WireTacho(map);
            map.Standstill.ZeroAmps = 0f;
        }),
        new("contacts debounced for 100 ms", BoardProblem.DebounceTooLong, PinRole.LineContact, (map, _) => map.ContactDebounceMicroseconds = 100_000),
        new("period above the longest tick", BoardProblem.PeriodTooLong, PinRole.Watchdog, (_, settings) => settings.MaximumTickMicroseconds = 1400),
        new("no period", BoardProblem.PeriodTooLong, PinRole.Watchdog, (map, _) => map.PeriodMicroseconds = 0),
        new("filter of -1 us", BoardProblem.NegativeTime, PinRole.SupplyVolts, (map, _) => map.Supply.FilterMicroseconds = -1),
        new("lateness of -1 us", BoardProblem.NegativeTime, PinRole.Watchdog, (map, _) => map.LateMicroseconds = -1),
    ];

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Wiring_OneThingWrong_IsNamed(BoardProblem problem, PinRole role, string name)
    {
        BoardCheck check = Check(Wirings.Single(wrong => wrong.Name == name).Change);

        Assert.Equal((problem, role), (check.Problem, check.Role));
    }

    [Fact]
    public void Wiring_Sound_IsPassed() => Assert.Equal(BoardProblem.None, Check((_, _) => { }).Problem);

    [Fact]
    public void Wiring_TachoInsteadOfEdges_IsPassed()
    {
        BoardCheck check = Check((map, _) => WireTacho(map));

        Assert.Equal(BoardProblem.None, check.Problem);
    }

    [Fact]
    public void EveryProblem_HasARow() =>
        Assert.Equal(Enum.GetValues<BoardProblem>().Where(problem => problem != BoardProblem.None), Wirings.Select(wrong => wrong.Problem).Distinct().Order());

    [Fact]
    public void SharedPin_NamesBothRolesAndThePin()
    {
        BoardCheck check = Check((map, _) => map.Wire(PinRole.StartButton, (int)PinRole.StopButton, false));

        Assert.Equal((PinRole.StartButton, PinRole.StopButton, 8f), (check.Role, check.OtherRole, check.Value));
    }

    [Fact]
    public void Numbers_FoundAndPermitted_AreGiven()
    {
        BoardCheck current = Check((map, _) => SoftPins.Scale(map.Armature, -1200f, 999f));
        // 300 edges a turn at 240 rad/s are 300 * 240 / 2 pi = 11459 edges a second.
        BoardCheck edges = Check((map, settings) => (map.Pulses.EdgesPerTurn, settings.OverspeedRadPerSec) = (300, 240f));

        Assert.Equal((999.0, 1000f), (Math.Round(current.Value), current.Limit));
        Assert.Equal((11459.0, 10_000f), (Math.Round(edges.Value), edges.Limit));
    }

    private static BoardCheck Check(Action<PinMap, Settings> change)
    {
        Settings settings = FakeBoard.Chk01();
        PinMap map = SoftPins.Wired(settings);
        change(map, settings);
        return new BoardCheck(map, settings);
    }

    // One count is 400 rad/s in 3685 counts, 0.109 rad/s.
    private static void WireTacho(PinMap map)
    {
        Remove(map, PinRole.SpeedEdges);
        map.Wire(PinRole.TachoRadPerSec, 99, false);
        SoftPins.Scale(map.Tacho, -200f, 200f);
    }

    private static void Remove(PinMap map, PinRole role) => map.Wire(role, PinMap.NotFitted, false);

    private sealed record WrongWiring(string Name, BoardProblem Problem, PinRole Role, Action<PinMap, Settings> Change);
}
