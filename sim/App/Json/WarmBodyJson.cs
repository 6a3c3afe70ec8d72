using StarterCtl.Engine.Ratings;

namespace StarterCtl.App.Json;

/// <summary>The published shape of what warms up; null where a state does not exist or the case does not ask for it.</summary>
public sealed record WarmBodyJson(string Body, double? LimitCelsius, double FirstStartCelsius, double? StartsPerHourCelsius, double? DutyCelsius)
{
    /// <summary>The shape of a body.</summary>
    public static WarmBodyJson Of(DutyStudy study, WarmBody body, int index)
    {
        return new(body.Name, Spot(body.LimitCelsius), Spot(study.FirstStart.HighestCelsius[index])!.Value, Spot(study.AtStartsPerHour?.HighestCelsius[index]), Spot(study.Duty?.Steady?.HighestCelsius[index]));

        double? Spot(double? celsius) => celsius is double mean ? body.HotSpot(mean, study.AmbientCelsius) : null;
    }
}
