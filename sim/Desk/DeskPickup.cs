using System;
using StarterCtl.Engine.Runs;

namespace StarterCtl.Desk;

/// <summary>The toothed wheel on the desk's shaft: its edges go to the board's edge counter, each stamped when it came.</summary>
/// <param name="pins">The board.</param>
/// <param name="radPerEdge">Angle between two edges, rad, above 0.</param>
internal sealed class DeskPickup(DeskPins pins, double radPerEdge)
{
    private double _position;
    private double _missing;
    private double _extra;
    private double _missingRatio;
    private double _extraRatio;
    private double _stuckRadPerSec;
    private SpeedSignalState _signal;

    /// <summary>Lets the pick-up go wrong, or sound again.</summary>
    /// <param name="happening">The event.</param>
    /// <param name="radPerSec">Speed of the shaft, at which the signal may be stuck.</param>
    public void Obey(RunEvent happening, double radPerSec)
    {
        _missingRatio = happening.MissingPulseRatio ?? _missingRatio;
        _extraRatio = happening.ExtraPulseRatio ?? _extraRatio;
        if (happening.SpeedSignal is not SpeedSignalState signal) return;
        _signal = signal;
        _stuckRadPerSec = radPerSec;
    }

    /// <summary>Turns the shaft, whose speed goes in a straight line over the span; the last edge of the span is stamped where it came.</summary>
    /// <param name="fromMicroseconds">The board's clock at the beginning of the span; may wrap.</param>
    /// <param name="seconds">Length of the span, s.</param>
    /// <param name="before">Speed at its beginning, rad/s.</param>
    /// <param name="after">Speed at its end, rad/s.</param>
    public void Turn(int fromMicroseconds, double seconds, double before, double after)
    {
        double mean = _signal == SpeedSignalState.Stuck ? _stuckRadPerSec : (before + after) / 2;
        double turned = mean * seconds / radPerEdge;
        double from = _position;
        _position += turned;
        double edges = Math.Abs(Math.Floor(_position) - Math.Floor(from));
        if (edges == 0 || _signal is SpeedSignalState.Lost or SpeedSignalState.Zero) return;
        int counted = Counted(edges);
        if (counted == 0) return;
        double last = turned > 0 ? Math.Floor(_position) : Math.Floor(_position) + 1;
        pins.EdgeCount = unchecked(pins.EdgeCount + counted);
        pins.LastEdgeMicroseconds = unchecked(fromMicroseconds + (int)(seconds * 1e6 * (last - from) / turned));
    }

    // What is lost or added is spread evenly over the edges.
    private int Counted(double edges)
    {
        _missing += _missingRatio * edges;
        _extra += _extraRatio * edges;
        double lost = Math.Floor(_missing), added = Math.Floor(_extra);
        _missing -= lost;
        _extra -= added;
        return (int)(edges - lost + added);
    }
}
