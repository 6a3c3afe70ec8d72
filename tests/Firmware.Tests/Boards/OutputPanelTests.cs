using System.Collections.Generic;
using System.Linq;
using CsCheck;
using StarterCtl.Core;
using Xunit;

namespace StarterCtl.Firmware.Tests.Boards;

/// <summary>The order in which coils and lamps are written, and their levels.</summary>
public sealed class OutputPanelTests
{
    private static readonly PinRole[] EveryOutput =
    [
        PinRole.LineCoil, PinRole.StageCoil1, PinRole.StageCoil1 + 1, PinRole.StageCoil1 + 2, PinRole.ReadyLamp, PinRole.RunningLamp, PinRole.TrippedLamp, PinRole.Watchdog,
    ];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Built_EveryOutput_IsOffFromItsFirstInstant(bool isActiveLow)
    {
        PinMap map = SoftPins.Wired(FakeBoard.Chk01(), isActiveLow ? EveryOutput : []);
        SoftPins pins = new(map) { Logs = true };

        OutputPanel panel = new(map, pins);

        Assert.Equal(7, pins.Writes.Count);
        Assert.All(pins.Writes, write => Assert.EndsWith(" 0", write, System.StringComparison.Ordinal));
        Assert.Equal(-1, panel.FirstCoilOn());
    }

    [Fact]
    public void Write_LineOffAndStagesOn_OpensTheLineFirst()
    {
        (OutputPanel panel, SoftPins pins) = Built();
        panel.Write(new Outputs { CloseLine = true });
        pins.Writes.Clear();

        panel.Write(new Outputs { CloseStages = 3, TrippedLamp = true });

        Assert.Equal(
            ["LineCoil 0", "50 0", "StageCoil1 1", "49 1", "ReadyLamp 0", "RunningLamp 0", "TrippedLamp 1"], pins.Writes);
    }

    [Fact]
    public void Write_EverythingOff_LineBrakeStagesField()
    {
        (OutputPanel panel, SoftPins pins) = BuiltWithBrakeAndField();

        panel.Write(new Outputs());

        Assert.Equal(["LineCoil 0", "BrakeCoil 0", "StageCoil1 0", "49 0", "50 0", "FieldCoil 0"], pins.Writes.Take(6));
    }

    [Fact]
    public void Write_EverythingOn_FieldStagesBrakeLine()
    {
        (OutputPanel panel, SoftPins pins) = BuiltWithBrakeAndField();

        panel.Write(new Outputs { CloseLine = true, CloseBrake = true, CloseField = true, CloseStages = 7 });

        Assert.Equal(["FieldCoil 1", "StageCoil1 1", "49 1", "50 1", "BrakeCoil 1", "LineCoil 1"], pins.Writes.Take(6));
    }

    /// <summary>The core never changes line and brake over in one tick; were it to, the line would have been told to open first.</summary>
    [Theory]
    [InlineData(true, "LineCoil 0")]
    [InlineData(false, "BrakeCoil 0")]
    public void Write_LineAndBrakeChangeOver_OpensTheOneFirst(bool toBrake, string opened)
    {
        (OutputPanel panel, SoftPins pins) = BuiltWithBrakeAndField();
        panel.Write(new Outputs { CloseLine = toBrake, CloseBrake = !toBrake, CloseField = true });
        pins.Writes.Clear();

        panel.Write(new Outputs { CloseLine = !toBrake, CloseBrake = toBrake, CloseField = true });

        Assert.Equal(opened, pins.Writes[0]);
        Assert.Equal(toBrake ? "BrakeCoil 1" : "LineCoil 1", pins.Writes.Take(6).Last());
    }

    [Fact]
    public void Write_AnyChange_OpensEverythingBeforeItClosesAnything() =>
        Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool, Gen.Int[0, 7]).Array[2, 20].Sample(
            course =>
            {
                (OutputPanel panel, SoftPins pins) = BuiltWithBrakeAndField();
                foreach ((bool closeLine, bool closeBrake, bool closeField, int closeStages) in course)
                {
                    pins.Writes.Clear();
                    panel.Write(new Outputs { CloseLine = closeLine, CloseBrake = closeBrake, CloseField = closeField, CloseStages = closeStages });
                    List<string> coils = [.. pins.Writes.Take(6)];

                    Assert.Equal(6, coils.Select(Name).Distinct().Count());
                    Assert.DoesNotContain("0", coils.SkipWhile(write => write.EndsWith('0')).Select(write => write[^1..]));
                    Assert.Equal((closeLine, closeBrake, closeField), (pins.IsOn(PinRole.LineCoil), pins.IsOn(PinRole.BrakeCoil), pins.IsOn(PinRole.FieldCoil)));
                    Assert.Equal(closeStages, Enumerable.Range(0, 3).Sum(i => pins.IsOn(PinRole.StageCoil1 + i) ? 1 << i : 0));
                }
            },
            iter: 200, threads: 1);

    [Theory]
    [InlineData(PinRole.LineCoil)]
    [InlineData(PinRole.BrakeCoil)]
    [InlineData(PinRole.FieldCoil)]
    [InlineData(PinRole.StageCoil1 + 2)]
    public void FirstCoilOn_PinDoesNotFollow_NamesIt(PinRole role)
    {
        (OutputPanel panel, SoftPins pins) = BuiltWithBrakeAndField();
        panel.Write(new Outputs());

        pins.StuckOn.Add(role);

        Assert.Equal((int)role, panel.FirstCoilOn());
    }

    [Fact]
    public void Watchdog_OnTimeOnly_ChangesOncePerPeriod()
    {
        (OutputPanel _, SoftPins pins) = Built();
        WatchdogPulse watchdog = new(pins.Output((int)PinRole.Watchdog, false));

        List<bool> levels = [];
        foreach (bool isOnTime in new[] { true, true, false, false, true, true })
        {
            watchdog.Finish(isOnTime);
            levels.Add(pins.IsOn(PinRole.Watchdog));
        }

        Assert.Equal([true, false, false, false, true, false], levels);
    }

    private static string Name(string write) => write.Split(' ')[0];

    private static (OutputPanel Panel, SoftPins Pins) BuiltWithBrakeAndField() => Built(PinRole.BrakeCoil, PinRole.FieldCoil);

    private static (OutputPanel Panel, SoftPins Pins) Built(params PinRole[] more)
    {
        PinMap map = SoftPins.Wired(FakeBoard.Chk01());
        foreach (PinRole role in more) map.Wire(role, (int)role, false);
        SoftPins pins = new(map);
        OutputPanel panel = new(map, pins);
        pins.Logs = true;
        return (panel, pins);
    }
}
