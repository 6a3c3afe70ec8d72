using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a duty.</summary>
public sealed record DutyJson(
    double RunSeconds, double RestSeconds, double StartsPerHour, double DurationFactor, string Class, string Designation, int? StartsFromCold, string Excess)
{
    /// <summary>The shape of a case's duty.</summary>
    public static DutyJson Of(GivenDuty duty) => new(
        duty.Times.RunSeconds,
        duty.Times.RestSeconds,
        duty.Times.StartsPerHour,
        duty.Times.DurationFactor,
        duty.Class.Name,
        duty.Class.Designation,
        duty.StartsFromCold,
        duty.Excess);
}
