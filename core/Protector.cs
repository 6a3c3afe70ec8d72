namespace StarterCtl.Core;

/// <summary>Looks for every fault that the readings themselves show, in order of importance.</summary>
public sealed class Protector
{
    // A sensor's zero may sit a little below 0 V; a tenth of the range is no zero error any more.
    private const float LowestSupplyFraction = -0.1f;

    private readonly Settings _settings;
    private readonly ContactProof _contacts;
    private readonly float _lowestSupplyVolts;

    /// <summary>The most important fault whose cause is there on this tick, or <see cref="FaultId.None"/>.</summary>
    public FaultId Present;

    /// <summary>What was measured for <see cref="Present"/>.</summary>
    public float PresentValue;

    /// <summary>The limit that it broke.</summary>
    public float PresentLimit;

    /// <summary>Builds the checks on checked settings.</summary>
    public Protector(Settings settings, ContactProof contacts)
    {
        _settings = settings;
        _contacts = contacts;
        _lowestSupplyVolts = LowestSupplyFraction * settings.HighestSupplyVolts;
    }

    /// <summary>Finds the most important fault that is present.</summary>
    /// <param name="readings">Readings of this tick, of any value.</param>
    public void Check(Readings readings)
    {
        Present = FaultId.None;
        if (readings.EmergencyStop) Find(FaultId.EmergencyStop, 1f, 0f);
        else if (!IsSupplyPlausible(readings)) Find(FaultId.ReadingInvalid, readings.SupplyVolts, _settings.HighestSupplyVolts);
        else if (!IsCurrentPlausible(readings)) Find(FaultId.ReadingInvalid, readings.ArmatureAmps, Settings.Largest);
        else if (!IsSpeedPlausible(readings)) Find(FaultId.ReadingInvalid, readings.SpeedRadPerSec, _settings.HighestSpeedRadPerSec);
        else if (!IsCurrentPermitted(readings)) Find(FaultId.Overcurrent, readings.ArmatureAmps, _settings.InstantTripAmps);
        else if (_contacts.LineFailed) Find(_contacts.LineCommanded ? FaultId.ContactDidNotClose : FaultId.ContactDidNotOpen, 0f, 0f);
        else if (_contacts.StagesFailed) FindStageContact(readings);
    }

    private bool IsSupplyPlausible(Readings readings) =>
        IsWithin(readings.SupplyVolts, _lowestSupplyVolts, _settings.HighestSupplyVolts);

    private bool IsSpeedPlausible(Readings readings) =>
        readings.SpeedValid && IsWithin(readings.SpeedRadPerSec, -_settings.HighestSpeedRadPerSec, _settings.HighestSpeedRadPerSec);

    private bool IsCurrentPermitted(Readings readings) =>
        IsWithin(readings.ArmatureAmps, -_settings.InstantTripAmps, _settings.InstantTripAmps);

    private static bool IsCurrentPlausible(Readings readings) =>
        IsWithin(readings.ArmatureAmps, -Settings.Largest, Settings.Largest);

    // The board's interpreter takes NaN for larger than any number, so it is the upper bound that rejects NaN there.
    private static bool IsWithin(float number, float lowest, float highest) => number >= lowest && number <= highest;

    private void FindStageContact(Readings readings)
    {
        int stage = _contacts.FirstDisagreeingStage(readings);
        bool commanded = stage > 0 && _contacts.IsStageCommanded(stage);
        Find(commanded ? FaultId.ContactDidNotClose : FaultId.ContactDidNotOpen, stage, 0f);
    }

    private void Find(FaultId id, float measured, float limit)
    {
        Present = id;
        PresentValue = measured;
        PresentLimit = limit;
    }
}
