using CsCheck;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Runs;
using Xunit;

namespace StarterCtl.Engine.Tests.Runs;

public sealed class ControllerSettingsTests
{
    [Fact]
    public void From_AnyDesign_PassesTheControllersCheck() =>
        Rigs.Any.Sample(rig => Assert.Equal(SettingId.None, rig.Settings().FirstProblem()));

    [Fact]
    public void From_AnyDesign_HandsOverSectionsAndThresholds() =>
        Rigs.Any.Sample(rig =>
        {
            StarterDesign design = rig.Design();
            Settings settings = rig.Settings();

            Assert.Equal(design.StageCount, settings.StageCount);
            for (int i = 0; i < design.StageCount; i++)
            {
                Assert.Equal((float)design.Stages[i].TotalOhms, settings.StageOhms[i]);
                Assert.Equal((float)design.Stages[i].VoltsLeft, settings.VoltsLeft[i]);
            }

            Assert.Equal((float)rig.Machine.ArmatureOhms, settings.StageOhms[design.StageCount]);
        });

    [Fact]
    public void From_ControlSetup_HandsOverEveryTimeAndLimit()
    {
        ControlSetup control = new()
        {
            ConfirmMicroseconds = 1,
            MinimumDwellMicroseconds = 2,
            MaximumStageMicroseconds = 3,
            ContactMicroseconds = 4,
            LockoutAmps = 5,
            InstantTripAmps = 6,
        };

        Settings settings = (Rigs.LineShaft with { Control = control }).Settings();

        Assert.Equal((1, 2, 3, 4), (settings.ConfirmMicroseconds, settings.MinimumDwellMicroseconds, settings.MaximumStageMicroseconds, settings.ContactMicroseconds));
        Assert.Equal((5f, 6f), (settings.LockoutAmps, settings.InstantTripAmps));
        Assert.Equal((1.69f, 2f), (settings.MachineConstant, settings.BrushDropVolts));
        Assert.Equal(440f, settings.HighestSupplyVolts);
        // 1 % of 220 V over 3 mH.
        Assert.Equal(2.2 / 0.003, settings.SteadyAmpsPerSec, 0.01);
    }

    [Fact]
    public void From_NoLockoutAndNoInductance_LeavesBothOpen()
    {
        Settings settings = (Rigs.LineShaft with { Machine = Rigs.LineShaft.Machine with { ArmatureHenries = 0 } }).Settings();

        Assert.Equal(Settings.Largest, settings.LockoutAmps);
        Assert.Equal(Settings.Largest, settings.SteadyAmpsPerSec);
    }
}
