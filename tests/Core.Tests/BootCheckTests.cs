using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>The board's check at power-up: its number is the desk's, and the course behind it comes through the controller.</summary>
public sealed class BootCheckTests
{
    [Fact]
    public void Run_OnTheDesk_GivesTheBuiltInNumber()
    {
        Assert.Equal($"0x{BootCheck.Expected:X8}", $"0x{BootCheck.Run():X8}");
        Assert.True(BootCheck.Passes());
    }

    [Fact]
    public void Course_Settings_AreSound() => Assert.Equal(SettingId.None, BootCourse.Settings().FirstProblem());

    [Fact]
    public void Course_ComesThroughEveryPhaseAndMostReasons()
    {
        HashSet<Phase> phases = [];
        HashSet<Reason> reasons = [];
        HashSet<FaultId> faults = [];
        Controller controller = new(BootCourse.Settings());
        BootCourse course = new(BootCourse.Settings());
        Readings readings = new();
        Outputs outputs = new();
        for (int tick = 0; tick < 3000; tick++)
        {
            controller.Tick(course.Next(readings, outputs), readings, outputs);
            phases.Add(controller.Phase);
            reasons.Add(controller.Why.Reason);
            faults.Add(controller.Fault.Id);
        }

        Assert.Equal(Enum.GetValues<Phase>().Except([Phase.NotSetUp]), phases.Order());
        Assert.InRange(reasons.Count, 20, int.MaxValue);
        Assert.InRange(faults.Count, 9, int.MaxValue);
    }
}
