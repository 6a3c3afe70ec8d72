using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Core;
using StarterCtl.Engine.Machines;
using StarterCtl.Engine.Records;
using StarterCtl.Engine.Runs;
using Record = StarterCtl.Engine.Records.Record;

namespace StarterCtl.Engine.Tests.Runs;

/// <summary>The line shaft played with events, every tick of it kept. What is tested is the plant, not the controller.</summary>
internal sealed class PlayedRun
{
    private PlayedRun(RunResult result, IReadOnlyList<Sample> samples)
    {
        Result = result;
        Samples = samples;
    }

    public RunResult Result { get; }

    public IReadOnlyList<Sample> Samples { get; }

    /// <summary>The settings of the line shaft for a controller that waits for its contacts as long as it can.</summary>
    public static Settings Patient
    {
        get
        {
            Settings settings = (Rigs.LineShaft with { Control = Rigs.Panel }).Settings();
            settings.ContactMicroseconds = Settings.LongestMicroseconds;
            return settings;
        }
    }

    /// <summary>The same with a brake and a field contactor.</summary>
    public static Settings PatientWithBrakeAndField
    {
        get
        {
            Settings settings = Patient;
            settings.BrakeFitted = true;
            settings.BrakeOhms = 1.38f;
            settings.BrakeReleaseRadPerSec = 90f;
            settings.FieldContactorFitted = true;
            settings.FieldContactFitted = true;
            return settings;
        }
    }

    public static PlayedRun Of(Settings settings, RunSetup setup)
    {
        Record record = new(setup.PeriodMicroseconds);
        RunResult result = StartSimulation.Run(setup, settings, record);
        return new PlayedRun(result, record.Samples);
    }

    /// <summary>Contacts close after 20 ms and open after 10 ms.</summary>
    public static RunSetup Setup(params RunEvent[] events)
    {
        Rig rig = Rigs.LineShaft;
        return new RunSetup
        {
            Machine = rig.Machine,
            Load = rig.Load,
            Supply = rig.Supply,
            SectionOhms = [.. rig.Design().Stages.Select(stage => stage.SectionOhms)],
            Contactors = new Contactors(0.02, 0.01),
            DurationSeconds = rig.DurationSeconds,
            Events = events,
        };
    }

    /// <summary>The same with a brake resistor and a field behind a contactor: 2 A, 0.1 s up, 0.05 s down.</summary>
    public static RunSetup SetupWithBrakeAndField(params RunEvent[] events) => Setup(events) with
    {
        BrakeOhms = 1.2,
        Machine = Rigs.LineShaft.Machine with { Flux = new FluxLaw(Magnetisation.Proportional(2, Rigs.LineShaft.Machine.Constant)) },
        Field = new FieldCircuit
        {
            SupplyVolts = 220,
            Ohms = 110,
            Henries = 11,
            HasContactor = true,
        },
    };

    /// <summary>What the controller read on the tick at a time.</summary>
    public Sample At(double seconds) => Samples.MinBy(sample => Math.Abs(sample.TimeSeconds - seconds));

    public IEnumerable<Sample> Between(double from, double to) =>
        Samples.Where(sample => sample.TimeSeconds >= from - 1e-9 && sample.TimeSeconds <= to + 1e-9);
}
