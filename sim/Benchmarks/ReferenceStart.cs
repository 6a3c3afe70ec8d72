using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Benchmarks;

/// <summary>The start that the figures speak of: three stages, 2.5 s at a 1 ms tick, inductance and contactor delays included.</summary>
internal static class ReferenceStart
{
    private static readonly Machine Machine = new(2.5, 0.05, 0.5e-3, 0, 4);
    private static readonly Load Load = new(250, 0, 0);

    private static readonly FluxLaw Saturating = new(new Magnetisation([0, 0.5, 1, 1.5, 2, 3], [0.08, 0.95, 1.7, 2.2, 2.5, 2.75]));

    private static readonly StarterDesign Design = StarterDesigner.Design(new DesignInput
    {
        SupplyVolts = 250,
        ArmatureOhms = Machine.ArmatureOhms,
        MachineConstant = Machine.Constant,
        InertiaKgM2 = Machine.InertiaKgM2,
        Load = Load,
        PeakAmps = 700,
        SwitchingAmps = 350,
    });

    /// <summary>The controller's settings.</summary>
    public static Settings Settings { get; } = NewSettings();

    /// <summary>The same machine with another number of stages, each graded from 700 A.</summary>
    public static (RunSetup Setup, Settings Settings) WithStages(int stages)
    {
        StarterDesign design = StarterDesigner.Design(new DesignInput
        {
            SupplyVolts = 250,
            ArmatureOhms = Machine.ArmatureOhms,
            MachineConstant = Machine.Constant,
            InertiaKgM2 = Machine.InertiaKgM2,
            Load = Load,
            PeakAmps = 700,
            StageCount = stages,
        });
        return (
            Setup with { SectionOhms = [.. design.Stages.Select(stage => stage.SectionOhms)] },
            ControllerSettings.From(design, Machine, new ControlSetup { ConfirmMicroseconds = 2000, InstantTripAmps = 1050 }));
    }

    /// <summary>The same starter with a field contactor and a brake, so that it passes through every phase.</summary>
    public static Settings SettingsWithFieldAndBrake()
    {
        Settings settings = NewSettings();
        settings.FieldContactorFitted = true;
        settings.FieldContactFitted = true;
        settings.FieldBuildMicroseconds = 500000;
        settings.BrakeFitted = true;
        settings.BrakeOhms = 1;
        settings.BrakeReleaseRadPerSec = 5;
        return settings;
    }

    /// <summary>The same starter that cuts out as soon as the threshold is passed.</summary>
    public static Settings SettingsWithoutConfirmTime()
    {
        Settings settings = NewSettings();
        settings.ConfirmMicroseconds = 0;
        return settings;
    }

    private static Settings NewSettings() =>
        ControllerSettings.From(Design, Machine, new ControlSetup { ConfirmMicroseconds = 2000, InstantTripAmps = 1050 });

    /// <summary>Machine, load, supply and contactors.</summary>
    public static RunSetup Setup { get; } = new()
    {
        Machine = Machine,
        Load = Load,
        Supply = new Supply(250, 0),
        SectionOhms = [.. Design.Stages.Select(stage => stage.SectionOhms)],
        Contactors = new Contactors(0.04, 0.015),
        DurationSeconds = 2.5,
    };

    /// <summary>The same start of a saturating shunt machine: its field, 0.3 s, is switched on first and still rises in the first stage.</summary>
    public static RunSetup ShuntSetup { get; } = Setup with
    {
        Machine = Machine with { Flux = Saturating },
        Supply = new Supply(250, 0.005),
        Field = new FieldCircuit { IsShunt = true, SupplyVolts = 250, Ohms = 125, Henries = 37.5, HasContactor = true },
    };

    /// <summary>Its controller's settings: the field current is measured.</summary>
    public static Settings ShuntSettings { get; } = ControllerSettings.From(Design, Machine, new ControlSetup
    {
        ConfirmMicroseconds = 2000,
        InstantTripAmps = 1050,
        Flux = ControllerCurve.Of(
            new CaseMachine(MachineKind.Shunt, Machine.ArmatureOhms, Machine.ArmatureHenries, Saturating, ShuntSetup.Field) { RatedFieldAmps = 2 }, true, 700, 1050),
        Field = new FieldControl { HasContactor = true, HasContact = true, IsMeasured = true, MinimumAmps = 1.6 },
    });
}
