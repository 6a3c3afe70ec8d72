using System;
using Xunit;

namespace StarterCtl.Core.Tests;

/// <summary>
/// A controller with a motor on it: rising back-EMF, contacts with their own time, and main contacts that fail behind sound
/// auxiliary ones. Its own few equations in double precision, nothing of the engine's.
/// </summary>
internal sealed class BenchMotor
{
    internal const int ContactMicroseconds = 40_000;

    private const int Substeps = 8;

    private readonly int[] _contactMicroseconds = new int[Settings.MostStages + 1];

    internal BenchMotor(Settings settings)
    {
        Settings = settings;
        Controller = new Controller(settings);
        for (int i = 0; i < settings.StageCount; i++) SectionOhms[i] = settings.StageOhms[i] - (double)settings.StageOhms[i + 1];
        MotorOhms = settings.StageOhms[settings.StageCount];
        MachineConstant = settings.MachineConstant;
        Readings.SpeedValid = settings.SpeedSensorFitted;
    }

    internal Settings Settings { get; }

    internal Controller Controller { get; }

    internal Readings Readings { get; } = new();

    internal Outputs Outputs { get; } = new();

    internal double[] SectionOhms { get; } = new double[Settings.MostStages];

    internal double MotorOhms { get; set; }

    internal double MachineConstant { get; set; }

    internal double ArmatureHenry { get; set; }

    internal double Inertia { get; set; } = 4;

    /// <summary>Load torque, N m; it never drives.</summary>
    internal double LoadTorque { get; set; }

    internal double SupplyVolts { get; set; } = Bench.SupplyVolts;

    internal double BrushVolts { get; set; }

    /// <summary>Time a contact takes to follow its coil, microseconds.</summary>
    internal int FollowMicroseconds { get; set; } = ContactMicroseconds;

    internal bool LineNeverConducts { get; set; }

    /// <summary>Main contacts that stay closed, as bits of the stages.</summary>
    internal int WeldedStages { get; set; }

    /// <summary>Main contacts that stay open, as bits of the stages.</summary>
    internal int OpenStages { get; set; }

    /// <summary>Added to the current's reading.</summary>
    internal Func<double> NoiseAmps { get; set; } = () => 0;

    internal double Amps { get; private set; }

    internal double SpeedRadPerSec { get; set; }

    /// <summary>Stage contacts that have followed their coils, as bits.</summary>
    internal int Followed { get; private set; }

    internal bool LineFollowed { get; private set; }

    internal double BackEmfVolts => MachineConstant * SpeedRadPerSec;

    internal double CircuitOhms
    {
        get
        {
            int conducting = (Followed & ~OpenStages) | WeldedStages;
            double ohms = MotorOhms;
            for (int i = 0; i < Settings.StageCount; i++)
            {
                if ((conducting & (1 << i)) == 0) ohms += SectionOhms[i];
            }

            return ohms;
        }
    }

    internal BenchMotor Tick(int microseconds = Bench.Millisecond)
    {
        Follow(microseconds);
        for (int i = 0; i < Substeps; i++) Advance(microseconds * 1e-6 / Substeps);
        Readings.SupplyVolts = (float)SupplyVolts;
        Readings.ArmatureAmps = (float)(Amps + NoiseAmps());
        Readings.SpeedRadPerSec = Settings.SpeedSensorFitted ? (float)SpeedRadPerSec : 0f;
        Readings.LineClosed = Settings.LineContactFitted && LineFollowed;
        Readings.StagesClosed = Settings.StageContactsFitted ? Followed : 0;
        Controller.Tick(microseconds, Readings, Outputs);
        return this;
    }

    internal BenchMotor TickUntil(Func<bool> reached, int mostTicks = 20_000, int microseconds = Bench.Millisecond)
    {
        for (int i = 0; i < mostTicks && !reached(); i++) Tick(microseconds);
        Assert.True(reached(), $"not reached: still {Controller.Phase}, stage {Controller.Stage}, {Controller.Why.Reason}, fault {Controller.Fault.Id} {Controller.Fault.Value}");
        return this;
    }

    /// <summary>Presses start as soon as it is accepted.</summary>
    internal BenchMotor Start(int microseconds = Bench.Millisecond)
    {
        Tick(microseconds).TickUntil(() => Outputs.ReadyLamp || Controller.Fault.IsLatched, microseconds: microseconds);
        Readings.StartPressed = true;
        Tick(microseconds);
        Readings.StartPressed = false;
        return this;
    }

    /// <summary>Starts, and goes on until it runs or trips.</summary>
    internal FaultId RunUp(int microseconds = Bench.Millisecond)
    {
        Start(microseconds);
        TickUntil(() => Controller.Phase == Phase.Running || Controller.Fault.IsLatched, microseconds: microseconds);
        return Controller.Fault.Id;
    }

    internal void AssertFault(FaultId fault, float named)
    {
        FaultLatch latched = Controller.Fault;
        Assert.Equal((fault, named), (latched.Id, latched.Value));
        Assert.False(Outputs.CloseLine || Outputs.CloseStages != 0);
    }

    private void Follow(int microseconds)
    {
        int commanded = Outputs.CloseStages | (Outputs.CloseLine ? 1 << Settings.MostStages : 0);
        int followed = Followed | (LineFollowed ? 1 << Settings.MostStages : 0);
        for (int i = 0; i <= Settings.MostStages; i++)
        {
            int bit = 1 << i;
            bool differs = ((commanded ^ followed) & bit) != 0;
            _contactMicroseconds[i] = differs ? _contactMicroseconds[i] + microseconds : 0;
            if (_contactMicroseconds[i] < FollowMicroseconds || !differs) continue;
            followed ^= bit;
            _contactMicroseconds[i] = 0;
        }

        Followed = followed & ((1 << Settings.MostStages) - 1);
        LineFollowed = (followed & (1 << Settings.MostStages)) != 0;
    }

    // Implicit in the current, midpoint in the speed.
    private void Advance(double seconds)
    {
        double ohms = CircuitOhms;
        double volts = SupplyVolts - BackEmfVolts;
        double driving = Math.Abs(volts) <= BrushVolts && Amps == 0 ? 0 : volts - Math.Sign(volts) * BrushVolts;
        if (!LineFollowed || LineNeverConducts) Amps = 0;
        else if (ArmatureHenry <= 0) Amps = driving / (ohms + 0.5 * MachineConstant * MachineConstant * seconds / Inertia);
        else Amps = (Amps + seconds / ArmatureHenry * driving) / (1 + seconds * ohms / ArmatureHenry);

        double torque = MachineConstant * Amps;
        double held = SpeedRadPerSec > 0 ? LoadTorque : Math.Clamp(torque, -LoadTorque, LoadTorque);
        double change = (torque - held) / Inertia * seconds;
        SpeedRadPerSec = SpeedRadPerSec > 0 && SpeedRadPerSec + change < 0 && Math.Abs(torque) <= LoadTorque ? 0 : SpeedRadPerSec + change;
    }
}
