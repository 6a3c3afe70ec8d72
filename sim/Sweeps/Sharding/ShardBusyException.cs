using System.IO;

namespace StarterCtl.Sweeps.Sharding;

/// <summary>Another process computes the shard.</summary>
public sealed class ShardBusyException() : IOException("another process computes this shard");
