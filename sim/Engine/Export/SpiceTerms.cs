using System;
using System.Globalization;
using StarterCtl.Engine.Machines;

namespace StarterCtl.Engine.Export;

/// <summary>Names and scales that the parts of a netlist share.</summary>
internal sealed class SpiceTerms
{
    /// <summary>The armature current, A, positive while motoring.</summary>
    public const string Amps = "I(Varmature_amps)";

    /// <summary>The field current, A.</summary>
    public const string FieldAmps = "I(Vfield_amps)";

    /// <summary>The shaft's speed, rad/s.</summary>
    public const string Speed = "V(speed)";

    /// <summary>Voltage at the starter's input terminals, V.</summary>
    public const string TerminalVolts = "V(terminals)";

    // Where the smooth sign functions turn, as parts of the permitted peak and of the no-load speed.
    private const double SmallAmpsRatio = 1e-4;
    private const double SmallSpeedRatio = 1e-5;

    // A closed contact against the smallest resistance, an open one against the largest.
    private const double ClosedRatio = 1e-7;
    private const double OpenRatio = 1e8;

    // The simulator steps up to a switch's threshold within 0.05 V of it: the gain makes that 5e-7 of the supply.
    private const double Gain = 1e5;

    private readonly SpiceScene _scene;

    /// <summary>Looks at a scene.</summary>
    public SpiceTerms(SpiceScene scene)
    {
        _scene = scene;
        Machine machine = scene.Setup.Machine;
        SmallAmps = SmallAmpsRatio * scene.Settings.PeakAmps;
        SmallRadPerSec = SmallSpeedRatio * scene.Setup.Supply.OpenCircuitVolts / machine.Constant;
        ClosedOhms = ClosedRatio * machine.ArmatureOhms;
        OpenOhms = OpenRatio * scene.Settings.StageOhms[0];
        MarginGain = Gain / scene.Setup.Supply.OpenCircuitVolts;
    }

    /// <summary>Current at which the smooth brush drop has 76 % of its full value, A.</summary>
    public double SmallAmps { get; }

    /// <summary>Speed at which the smooth constant torque has 76 % of its full value, rad/s.</summary>
    public double SmallRadPerSec { get; }

    /// <summary>Resistance of a closed contact, ohm.</summary>
    public double ClosedOhms { get; }

    /// <summary>Resistance of an open contact, ohm.</summary>
    public double OpenOhms { get; }

    /// <summary>Volts of a margin's node per volt of the margin.</summary>
    public double MarginGain { get; }

    /// <summary>Node that armature and shunt winding branch from: behind a series winding that carries both currents, where there is one.</summary>
    public string FeedNode => _scene.Setup.Field is { IsShunt: true, SharedOhms: > 0 } ? "feed" : "terminals";

    /// <summary>True when the line closes as soon as start is pressed.</summary>
    public bool LineClosesAtOnce => !HasFieldBuilding;

    /// <summary>True when the line waits for the field.</summary>
    public bool HasFieldBuilding =>
        _scene.Settings.FieldContactorFitted || _scene.Settings.MinimumFieldAmps > 0 || _scene.Settings.FieldBuildMicroseconds > 0;

    /// <summary>Node that closes the line: start itself, or the decision of the field's building.</summary>
    public string LineNode => LineClosesAtOnce ? "start" : _scene.Settings.FieldBuildMicroseconds > 0 ? "line_margin" : "field_margin";

    /// <summary>Expression of machine constant times flux, V s/rad.</summary>
    public string Constant => _scene.Setup.Machine.Flux == null ? SpiceText.Number(_scene.Setup.Machine.Constant) : "V(constant)";

    /// <summary>An expression that counts from the press of start on; before it is -1.</summary>
    public string SinceStart(string expression) => _scene.StartSeconds > 0 ? $"V(start) > 0 ? ({expression}) : -1" : expression;

    /// <summary>A number as a person reads it.</summary>
    public static string Short(double number) => number.ToString("G4", CultureInfo.InvariantCulture);

    /// <summary>A number with a minus or plus before it, for the middle of an expression.</summary>
    public static string Signed(double number) => (number < 0 ? "-" : "+") + SpiceText.Number(Math.Abs(number));
}
