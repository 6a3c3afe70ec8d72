using System;

namespace StarterCtl.Engine.Records;

/// <summary>A record that a run shall write as it goes.</summary>
/// <param name="Open">Opens what takes the samples, once the header is known.</param>
/// <param name="EveryPeriod">True for a sample of every control period, which a replay needs.</param>
public sealed record RecordOrder(Func<RecordHeader, ISampleSink> Open, bool EveryPeriod);
