using System;
using StarterCtl.Core;
using StarterCtl.Engine.Runs;
using StarterCtl.Engine.Solving;

namespace StarterCtl.Sweeps.WorstCase;

/// <summary>
/// One plant at the moments that decide a start, with its currents at rest: where the controller cuts a stage out, what flows then, and up to
/// which speed the load is accelerated. The controller compares <c>V' - Vb - c</c> with <c>k w'</c>: V' and w' are what the sensors show, c is the
/// setting of the stage; and it cuts out only while the current that it sees is within the lockout. Not to be used from two threads at once.
/// </summary>
/// <remarks>
/// Inductance and every delay make the peak smaller than the one computed here: the current lags behind its value at rest and the speed rises
/// on until the contact has closed. A field that is still rising when the first stage is cut out is not looked at.
/// </remarks>
internal sealed class StaticPlant
{
    // A stage must be left with at least this part of the peak's torque for acceleration: next to no load the end would never come.
    private const double LeastTorqueShare = 0.02;

    // Below this part of the peak the current counts as gone.
    private const double LeastCurrentShare = 1e-3;

    // Noise may not show a passed threshold early in one start of a million that are as long as the run.
    private const double EarlyChance = 1e-6;

    private const double CurrentTolerance = 1e-13;
    private const double FallFactor = 2;
    private const int FallSteps = 64;

    private readonly RunSetup _setup;
    private readonly Settings _settings;
    private readonly FluxModel _flux;
    private readonly Readings _readings = new();
    private readonly Network _network;
    private readonly Characteristic _alone;
    private readonly SensorModel _sensors;
    private readonly double _fluxFall;

    /// <summary>Looks at a plant.</summary>
    /// <param name="setup">What really stands there.</param>
    /// <param name="settings">What the controller is told about the nominal machine.</param>
    public StaticPlant(RunSetup setup, Settings settings)
    {
        _setup = setup;
        _settings = settings;
        _flux = new FluxModel(settings);
        PlantConditions conditions = setup.OnFullSupply(setup.Load);
        _network = new Network(conditions);
        _alone = Characteristic.Of(conditions);
        _sensors = setup.Sensors ?? new SensorModel();
        _fluxFall = FluxFall();
        double sigmas = Sigmas(setup), constant = ControllerConstant(_network.FinalFieldAmps(0));
        double noise = Math.Sqrt(Square(_sensors.Voltage.Noise) + Square(constant * _sensors.Speed.Noise));
        NoiseVolts = sigmas * noise + (Step(_sensors.Voltage) + constant * Step(_sensors.Speed)) / 2;
        NoiseAmps = sigmas * _sensors.Current.Noise + Step(_sensors.Current) / 2;
    }

    /// <summary>Volts by which noise and the converters' steps may move the comparison, 0 or more.</summary>
    public double NoiseVolts { get; }

    /// <summary>Amps by which they may move the current that is seen, 0 or more.</summary>
    public double NoiseAmps { get; }

    /// <summary>Current at rest without any section, A.</summary>
    public double DirectAmps => _alone.StandstillAmps;

    /// <summary>Sections with which a current flows at a speed, ohm; below 0 where the armature alone passes less.</summary>
    /// <param name="amps">The current, A, above 0.</param>
    /// <param name="radPerSec">The speed, rad/s.</param>
    public double SectionsFor(double amps, double radPerSec) => (_alone.DrivingVolts - _alone.ConstantAt(amps) * radPerSec) / amps - _alone.CircuitOhms;

    /// <summary>Current at rest through sections, A.</summary>
    public double StandstillAmps(double sectionOhms) => With(sectionOhms).StandstillAmps;

    /// <summary>Current at a speed, A.</summary>
    /// <param name="sectionOhms">Sections in the circuit, ohm.</param>
    /// <param name="radPerSec">Speed, rad/s.</param>
    /// <param name="fromAmps">Current from which it settles, A.</param>
    public double AmpsAt(double sectionOhms, double radPerSec, double fromAmps)
    {
        double ohms = _alone.CircuitOhms + sectionOhms;
        if (_setup.Machine.Flux == null) return Math.Max(0, (_alone.DrivingVolts - _setup.Machine.Constant * radPerSec) / ohms);
        if (!HasOneCurrent(ohms, radPerSec)) return With(sectionOhms).AmpsAt(radPerSec, fromAmps);
        double most = _alone.DrivingVolts / ohms;
        if (!(Over(0) > 0)) return 0;
        return Over(most) >= 0 ? most : RootFinder.Find(Over, 0, most, CurrentTolerance * most);

        double Over(double amps) => _alone.DrivingVolts - amps * ohms - _alone.ConstantAt(amps) * radPerSec;
    }

    /// <summary>Torque of a current, N m.</summary>
    public double TorqueAt(double amps) => amps * _alone.ConstantAt(amps);

    /// <summary>Torque of the load at a speed, N m.</summary>
    public double LoadTorqueAt(double radPerSec) => _setup.Load.TorqueAt(radPerSec);

    /// <summary>Volts left that the controller sees, V: with this or more set, the stage is cut out.</summary>
    /// <param name="radPerSec">Speed, rad/s.</param>
    /// <param name="amps">Armature current, A.</param>
    public double SeenVoltsLeft(double radPerSec, double amps)
    {
        double fieldAmps = _network.FinalFieldAmps(amps);
        double volts = _setup.Supply.OpenCircuitVolts - _setup.Supply.SourceOhms * _network.Line.Amps(amps, fieldAmps);
        return Seen(_sensors.Voltage, volts) - _settings.BrushDropVolts - ControllerConstant(fieldAmps) * Seen(_sensors.Speed, radPerSec);
    }

    /// <summary>Armature current that the controller sees, A.</summary>
    public double SeenAmps(double amps) => Seen(_sensors.Current, amps);

    /// <summary>
    /// Speed up to which a stage accelerates the load with something to spare, rad/s; null where it does not even from rest.
    /// </summary>
    /// <param name="sectionOhms">Sections of the stage, ohm.</param>
    /// <param name="spare">Part of the load's torque that must be left over, 0 or more.</param>
    /// <param name="peakAmps">Highest current of the start, A.</param>
    public double? AcceleratedTo(double sectionOhms, double spare, double peakAmps)
    {
        double least = LeastTorqueShare * TorqueAt(peakAmps);

        double Over(double radPerSec)
        {
            double load = LoadTorqueAt(radPerSec);
            return TorqueAt(AmpsAt(sectionOhms, radPerSec, peakAmps)) - load - Math.Max(spare * load, least);
        }

        if (!(Over(0) > 0)) return null;
        double top = Top(sectionOhms, peakAmps);
        return Over(top) > 0 ? top : FirstRoot.Find(Over, 0, top, _setup.Load.Table == null && HasOneCurrent(_alone.CircuitOhms + sectionOhms, top));
    }

    /// <summary>Earliest speed at which a stage is cut out, rad/s; 0: at once. Never above the speed at which no current is left.</summary>
    /// <param name="sectionOhms">Sections of the stage, ohm.</param>
    /// <param name="voltsLeft">The setting of the stage, V.</param>
    /// <param name="lockout">Lockout current and dwell.</param>
    /// <param name="peakAmps">Highest current of the start, A.</param>
    public double EarliestCutout(double sectionOhms, double voltsLeft, Lockout lockout, double peakAmps)
    {
        // Behind a filter the supply still shows the sag of the peak; and when the dwell ends the current may still be rising.
        bool sags = _sensors.FilterSeconds > 0;
        double seconds = SettlingSeconds(1 + sectionOhms / _alone.CircuitOhms);
        double rising = seconds > 0 ? peakAmps * Math.Exp(-lockout.DwellSeconds / seconds) : 0;
        return CutOutAt(sectionOhms, voltsLeft + NoiseVolts, lockout.Amps + NoiseAmps + rising, peakAmps, sags);
    }

    /// <summary>Latest speed at which a stage is cut out while it still gets there, rad/s.</summary>
    /// <inheritdoc cref="EarliestCutout"/>
    public double LatestCutout(double sectionOhms, double voltsLeft, Lockout lockout, double peakAmps) =>
        CutOutAt(sectionOhms, voltsLeft - NoiseVolts, lockout.Amps - NoiseAmps, peakAmps, false);

    /// <summary>Time constant with which the current settles in a circuit, and with it what the sensors show of it, s.</summary>
    /// <param name="circuitFactor">Resistance of the circuit over that without any section.</param>
    public double SettlingSeconds(double circuitFactor) => _setup.Machine.ArmatureHenries / (circuitFactor * _alone.CircuitOhms) + _sensors.FilterSeconds;

    /// <summary>Numbers that tell two plants apart as far as anything here is concerned.</summary>
    public double[] Marks()
    {
        double amps = 0.3 * DirectAmps;
        double speed = Top(0, DirectAmps);
        return
        [
            _alone.DrivingVolts, _alone.CircuitOhms, _alone.ConstantAt(0), _alone.ConstantAt(amps), _alone.ConstantAt(DirectAmps), NoiseVolts,
            NoiseAmps, SeenAmps(0), SeenAmps(amps), _setup.Machine.ArmatureHenries, SeenVoltsLeft(0, 0), SeenVoltsLeft(0, amps), SeenVoltsLeft(1, amps), LoadTorqueAt(0), LoadTorqueAt(0.5 * speed), LoadTorqueAt(speed), _sensors.FilterSeconds,
        ];
    }

    // Where more current weakens the flux several currents may fit, but not while the resistance outweighs that by far.
    private bool HasOneCurrent(double ohms, double radPerSec) => !_alone.FluxFalls || ohms > FallFactor * _fluxFall * radPerSec;

    // Steepest fall of the constant with the current, V s/rad per A.
    private double FluxFall()
    {
        if (!_alone.FluxFalls) return 0;
        double steepest = 0, step = DirectAmps / FallSteps;
        for (int i = 0; i < FallSteps; i++) steepest = Math.Max(steepest, (_alone.ConstantAt(i * step) - _alone.ConstantAt((i + 1) * step)) / step);
        return steepest;
    }

    private Characteristic With(double sectionOhms) => _alone.On(_alone.CircuitOhms + sectionOhms);

    // Where the current is next to nothing; a series machine without residual would never get to none.
    private double Top(double sectionOhms, double peakAmps) => With(sectionOhms).AtAmps(LeastCurrentShare * peakAmps).SpeedRadPerSec;

    private double ControllerConstant(double fieldAmps)
    {
        _readings.FieldAmps = (float)fieldAmps;
        return _flux.AtPeak(_readings);
    }

    private double CutOutAt(double sectionOhms, double voltsLeft, double lockoutAmps, double peakAmps, bool sags)
    {
        double Over(double radPerSec)
        {
            double amps = AmpsAt(sectionOhms, radPerSec, peakAmps);
            double volts = SeenVoltsLeft(radPerSec, sags ? Math.Max(amps, peakAmps) : amps) - voltsLeft;
            return double.IsFinite(lockoutAmps) ? Math.Max(volts, SeenAmps(amps) - lockoutAmps) : volts;
        }

        if (Over(0) <= 0) return 0;
        double top = Top(sectionOhms, peakAmps);
        return Over(top) > 0 ? top : FirstRoot.Find(Over, 0, top, HasOneCurrent(_alone.CircuitOhms + sectionOhms, top)) ?? top;
    }

    // Both comparisons must hold in every tick of the confirm time, so that noise has to be large several times in a row.
    private double Sigmas(RunSetup setup)
    {
        int inARow = Math.Max(1, _settings.ConfirmMicroseconds / (setup.PeriodMicroseconds + (setup.Jitter?.MostMicroseconds ?? 0)));
        double ticks = setup.DurationSeconds * 1e6 / setup.PeriodMicroseconds;
        return -MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Math.Min(0.5, Math.Pow(EarlyChance / ticks, 1.0 / inARow)));
    }

    private static double Seen(SensorChannel channel, double value) => Math.Clamp(channel.Gain * value + channel.Offset, -channel.Range, channel.Range);

    private double Step(SensorChannel channel) => _sensors.Bits > 0 && double.IsFinite(channel.Range) ? 2 * channel.Range / (1L << _sensors.Bits) : 0;

    private static double Square(double number) => number * number;
}
