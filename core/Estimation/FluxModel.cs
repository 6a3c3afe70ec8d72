namespace StarterCtl.Core;

/// <summary>
/// Machine constant times flux for the present currents, and for the permitted peak: the flux that will stand right after a
/// cutout decides what current flows then.
/// </summary>
public sealed class FluxModel
{
    private readonly Settings _settings;
    private readonly float[] _slopes = new float[Settings.MostCurvePoints];
    private readonly float _seriesAtPeak;

    /// <summary>Builds the model on checked settings.</summary>
    public FluxModel(Settings settings)
    {
        _settings = settings;
        if (settings.FluxSource == FluxSource.Constant) return;
        for (int i = 1; i < settings.CurvePoints; i++)
        {
            float span = settings.CurveAmps[i] - settings.CurveAmps[i - 1];
            if (span > 0f) _slopes[i] = (settings.CurveConstants[i] - settings.CurveConstants[i - 1]) / span;
        }

        _seriesAtPeak = OnCurve(settings.PeakAmps);
    }

    /// <summary>Constant at the present currents, V s/rad.</summary>
    public float Now(Readings readings)
    {
        switch (_settings.FluxSource)
        {
            case FluxSource.FieldCurrent: return OnCurve(NetFieldAmps(readings.FieldAmps, readings.ArmatureAmps));
            case FluxSource.ArmatureCurrent: return OnCurve(Magnitude.Of(readings.ArmatureAmps));
            default: return _settings.MachineConstant;
        }
    }

    /// <summary>Constant at the permitted peak and the present field current, V s/rad.</summary>
    public float AtPeak(Readings readings)
    {
        switch (_settings.FluxSource)
        {
            case FluxSource.FieldCurrent: return OnCurve(NetFieldAmps(readings.FieldAmps, _settings.PeakAmps));
            case FluxSource.ArmatureCurrent: return _seriesAtPeak;
            default: return _settings.MachineConstant;
        }
    }

    // Armature reaction weakens whatever the current's direction; a series winding on top of the field turns with it.
    private float NetFieldAmps(float fieldAmps, float armatureAmps)
    {
        float ratio = _settings.ReactionRatio;
        float taken = ratio * (ratio > 0f ? Magnitude.Of(armatureAmps) : armatureAmps);
        return Magnitude.Of(fieldAmps) - taken;
    }

    private float OnCurve(float excitingAmps)
    {
        int last = _settings.CurvePoints - 1;
        int i = 1;
        while (i < last && excitingAmps > _settings.CurveAmps[i]) i++;
        float behind = excitingAmps - _settings.CurveAmps[i - 1];
        if (behind <= 0f) return _settings.CurveConstants[i - 1];
        float constant = _settings.CurveConstants[i - 1] + _slopes[i] * behind;
        return constant < _settings.CurveConstants[last] ? constant : _settings.CurveConstants[last];
    }
}
