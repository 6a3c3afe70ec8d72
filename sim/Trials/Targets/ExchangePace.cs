namespace StarterCtl.Trials.Targets;

/// <summary>Who keeps the time of a trial over a link.</summary>
/// <param name="IsRealTime">False: each exchange is one control period, as long as it takes. True: the model keeps to the computer's clock.</param>
/// <param name="ExchangeSeconds">In real time the time from one exchange to the next, s, a whole number of control periods.</param>
public sealed record ExchangePace(bool IsRealTime, double ExchangeSeconds)
{
    /// <summary>Each exchange is one control period.</summary>
    public static ExchangePace Lockstep { get; } = new(false, 0);

    /// <summary>By the computer's clock, 100 exchanges a second.</summary>
    public static ExchangePace RealTime { get; } = new(true, 0.01);
}
