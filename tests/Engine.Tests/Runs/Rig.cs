using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Design;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>A machine on a supply with a starter: designed, set and run. Switches ideally unless told otherwise.</summary>
internal sealed record Rig
{
    public required Machine Machine { get; init; }

    public required Supply Supply { get; init; }

    public Load Load { get; init; } = Load.None;

    /// <summary>Supply that the starter is designed for, V; null: the supply's own.</summary>
    public double? DesignVolts { get; init; }

    /// <summary>Load that the starter is designed for.</summary>
    public Load DesignLoad { get; init; } = Load.None;

    public double? PeakAmps { get; init; }

    public double? SwitchingAmps { get; init; }

    public int? StageCount { get; init; }

    public IReadOnlyList<double>? SectionOhms { get; init; }

    public IReadOnlyList<double>? CutoutVolts { get; init; }

    public Contactors Contactors { get; init; } = new(0, 0);

    public ControlSetup Control { get; init; } = new() { PeriodMicroseconds = 20, InstantTripAmps = 1e6 };

    public double DurationSeconds { get; init; } = 2;

    public double InitialSpeedRadPerSec { get; init; }

    public IReadOnlyList<RunEvent> Events { get; init; } = [];

    public ThermalSetup? Heat { get; init; }

    public StarterDesign Design() => StarterDesigner.Design(new DesignInput
    {
        SupplyVolts = DesignVolts ?? Supply.OpenCircuitVolts,
        ArmatureOhms = Machine.ArmatureOhms,
        BrushDropVolts = Machine.BrushDropVolts,
        MachineConstant = Machine.Constant,
        InertiaKgM2 = Machine.InertiaKgM2,
        Load = DesignLoad,
        PeakAmps = PeakAmps,
        SwitchingAmps = SwitchingAmps,
        StageCount = StageCount,
        SectionOhms = SectionOhms,
        CutoutVolts = CutoutVolts,
    });

    public Settings Settings() => ControllerSettings.From(Design(), Machine, Control);

    public RunResult Run(Record? record = null) => StartSimulation.Run(
        new RunSetup
        {
            Machine = Machine,
            Load = Load,
            Supply = Supply,
            SectionOhms = [.. Design().Stages.Select(stage => stage.SectionOhms)],
            Contactors = Contactors,
            PeriodMicroseconds = Control.PeriodMicroseconds,
            DurationSeconds = DurationSeconds,
            InitialSpeedRadPerSec = InitialSpeedRadPerSec,
            Events = Events,
            Heat = Heat,
        },
        Settings(),
        record);

    /// <summary>The same machine without a controller: line closed, every section in.</summary>
    public PlantSolver Plant(params double[] sectionOhms) =>
        new(new PlantConditions(Machine, Load, Supply, sectionOhms, true, 0), InitialSpeedRadPerSec);
}
