using System;

namespace StarterCtl.Engine.Solving;

/// <content>
/// The arc between parting contacts: a voltage that opposes the current whatever its size, as the brushes do, until the current is
/// zero. <c>L di/dt = V - E - s (Vb + Varc) - R i</c>: where V - E exceeds Vb + Varc it never is.
/// </content>
public sealed partial class PlantSolver
{
    // What opposes the current whatever its size.
    private double OpposingVolts => _conditions.Machine.BrushDropVolts + _network.ArcVolts;

    // A contact that parts with the only path of a current draws an arc, which goes on in its place. A contact that is closed
    // beside it takes the current over at once.
    private PlantConditions WithArc(PlantConditions next)
    {
        if (next.ArcVolts == 0) return next;
        PlantConditions alone = next with { Arc = ArcPlace.None };
        if (alone.IsLive || _amps == 0) return alone;
        return alone with { Arc = _conditions.IsLineIn ? ArcPlace.Line : ArcPlace.Brake };
    }

    // It goes out where the current passes zero, or has no inductance and is no longer driven.
    private bool IsArcOut() =>
        _amps == 0 || (_conditions.Machine.ArmatureHenries == 0 && PushedSign(out _) != Math.Sign(_amps));
}
