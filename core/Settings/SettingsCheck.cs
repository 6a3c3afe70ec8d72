namespace StarterCtl.Core;

/// <summary>Checks a set of settings and names every one that is not usable, each with what is wrong with it.</summary>
public sealed class SettingsCheck
{
    /// <summary>The settings that are not usable, in the order of the table; <see cref="Count"/> of them.</summary>
    public readonly SettingId[] Found = new SettingId[SettingTable.Rows.Length];

    /// <summary>What is wrong with each.</summary>
    public readonly SettingProblem[] Problems = new SettingProblem[SettingTable.Rows.Length];

    /// <summary>The other setting that each contradicts or needs; <see cref="SettingId.None"/> where it stands for itself.</summary>
    public readonly SettingId[] Others = new SettingId[SettingTable.Rows.Length];

    /// <summary>How many were found.</summary>
    public int Count;

    private SettingId _other;

    /// <summary>Checks a set.</summary>
    public void Run(Settings settings)
    {
        Count = 0;
        for (int i = 0; i < SettingTable.Rows.Length; i++)
        {
            SettingRow row = SettingTable.Rows[i];
            _other = SettingId.None;
            SettingProblem problem = ProblemOf(settings, row);
            if (problem == SettingProblem.None) continue;
            Found[Count] = row.Id;
            Problems[Count] = problem;
            Others[Count] = _other;
            Count++;
        }
    }

    private SettingProblem ProblemOf(Settings settings, SettingRow row)
    {
        if (!IsInRange(settings, row)) return SettingProblem.OutOfRange;
        switch (row.Id)
        {
            case SettingId.StageOhms:
            case SettingId.VoltsLeft:
                return Falls(settings, row.Id) ? SettingProblem.None : SettingProblem.DoesNotFall;
            case SettingId.CurveAmps:
                return RisesFromZero(settings) ? SettingProblem.None : SettingProblem.DoesNotRise;
            case SettingId.CurveConstants:
                return NeverFalls(settings) ? SettingProblem.None : SettingProblem.DoesNotRise;
            default:
                return ProblemWithOthers(settings, row.Id);
        }
    }

    private static bool IsInRange(Settings settings, SettingRow row)
    {
        if (row.IsWhole) return row.AllowsWhole(SettingAccess.GetWhole(settings, row.Id));
        int count = SettingAccess.Count(settings, row.Id);
        for (int i = 0; i < count; i++)
        {
            if (!row.Allows(SettingAccess.Get(settings, row.Id, i))) return false;
        }

        return count > 0 || SettingAccess.MayBeEmpty(settings, row.Id);
    }

    private static bool Falls(Settings settings, SettingId id)
    {
        int count = SettingAccess.Count(settings, id);
        for (int i = 1; i < count; i++)
        {
            if (!(SettingAccess.Get(settings, id, i) < SettingAccess.Get(settings, id, i - 1))) return false;
        }

        return true;
    }

    private static bool RisesFromZero(Settings settings)
    {
        int count = SettingAccess.Count(settings, SettingId.CurveAmps);
        if (count > 0 && settings.CurveAmps[0] > 0f) return false;
        for (int i = 1; i < count; i++)
        {
            if (!(settings.CurveAmps[i - 1] < settings.CurveAmps[i])) return false;
        }

        return true;
    }

    private static bool NeverFalls(Settings settings)
    {
        int count = SettingAccess.Count(settings, SettingId.CurveConstants);
        for (int i = 1; i < count; i++)
        {
            if (!(settings.CurveConstants[i - 1] <= settings.CurveConstants[i])) return false;
        }

        return true;
    }

    // What holds between settings, beyond each one's own range.
    private SettingProblem ProblemWithOthers(Settings settings, SettingId id)
    {
        switch (id)
        {
            case SettingId.MaximumStageMicroseconds:
                return Above(settings.MaximumStageMicroseconds, settings.MinimumDwellMicroseconds, SettingId.MinimumDwellMicroseconds);
            case SettingId.MaximumFieldMicroseconds:
                return Above(settings.MaximumFieldMicroseconds, settings.FieldBuildMicroseconds, SettingId.FieldBuildMicroseconds);
            case SettingId.ResistiveConfirmMicroseconds:
                if (settings.SpeedLoss != SpeedLossAction.FinishStart) return SettingProblem.None;
                return NotBelow(settings.ResistiveConfirmMicroseconds, settings.ConfirmMicroseconds, SettingId.ConfirmMicroseconds);
            case SettingId.PeakAmps:
                _other = SettingId.InstantTripAmps;
                return settings.PeakAmps < settings.InstantTripAmps ? SettingProblem.None : SettingProblem.NotBelowOther;
            case SettingId.SupplyLowVolts:
                _other = SettingId.NominalSupplyVolts;
                return settings.SupplyLowVolts <= 0f || settings.SupplyLowVolts < settings.NominalSupplyVolts ? SettingProblem.None : SettingProblem.NotBelowOther;
            case SettingId.SupplyHighVolts:
                _other = SettingId.NominalSupplyVolts;
                return settings.SupplyHighVolts > settings.NominalSupplyVolts ? SettingProblem.None : SettingProblem.NotAboveOther;
            default:
                return ProblemWithWhatIsFitted(settings, id);
        }
    }

    private SettingProblem ProblemWithWhatIsFitted(Settings settings, SettingId id)
    {
        switch (id)
        {
            case SettingId.FluxSource:
                if (settings.FluxSource == FluxSource.FieldCurrent && !settings.FieldSensorFitted) return Needs(false, SettingId.FieldSensorFitted);
                return Needs(settings.FluxSource == FluxSource.Constant || settings.CurvePoints > 1, SettingId.CurvePoints);
            case SettingId.LineContactFitted:
                return Needs(settings.LineContactFitted || settings.ZeroAmps > 0f, SettingId.ZeroAmps);
            case SettingId.StageContactsFitted:
                return Needs(settings.StageContactsFitted || settings.StepToleranceRatio > 0f, SettingId.StepToleranceRatio);
            case SettingId.StepToleranceRatio:
                return Needs(settings.StepToleranceRatio <= 0f || settings.ZeroAmps > 0f, SettingId.ZeroAmps);
            case SettingId.SpeedSensorFitted:
                // Then only the current's own step can tell whether line and resistance are really in.
                if (!settings.SpeedSensorFitted && !(settings.StepToleranceRatio > 0f)) return Needs(false, SettingId.StepToleranceRatio);
                return Needs(settings.SpeedSensorFitted || settings.SpeedLoss == SpeedLossAction.FinishStart, SettingId.SpeedLoss);
            case SettingId.SpeedLoss:
                return Needs(settings.SpeedLoss != SpeedLossAction.FinishStart || settings.ZeroAmps > 0f, SettingId.ZeroAmps);
            case SettingId.MinimumFieldAmps:
                return Needs(settings.MinimumFieldAmps <= 0f || settings.FieldSensorFitted, SettingId.FieldSensorFitted);
            case SettingId.FieldContactFitted:
                return Needs(!settings.FieldContactFitted || settings.FieldContactorFitted, SettingId.FieldContactorFitted);
            case SettingId.BrakeContactFitted:
                return Needs(settings.BrakeContactFitted || settings.ZeroAmps > 0f, SettingId.ZeroAmps);
            case SettingId.BrakeFitted:
                return ProblemWithBrake(settings);
            default:
                return SettingProblem.None;
        }
    }

    private SettingProblem ProblemWithBrake(Settings settings)
    {
        if (!settings.BrakeFitted) return SettingProblem.None;
        if (!settings.SpeedSensorFitted) return Needs(false, SettingId.SpeedSensorFitted);
        if (!(settings.BrakeOhms > 0f)) return Needs(false, SettingId.BrakeOhms);
        return Needs(settings.BrakeReleaseRadPerSec > 0f, SettingId.BrakeReleaseRadPerSec);
    }

    private SettingProblem Above(int number, int other, SettingId otherId)
    {
        _other = otherId;
        return number > other ? SettingProblem.None : SettingProblem.NotAboveOther;
    }

    private SettingProblem NotBelow(int number, int other, SettingId otherId)
    {
        _other = otherId;
        return number >= other ? SettingProblem.None : SettingProblem.BelowOther;
    }

    private SettingProblem Needs(bool isThere, SettingId otherId)
    {
        _other = otherId;
        return isThere ? SettingProblem.None : SettingProblem.NeedsOther;
    }
}
