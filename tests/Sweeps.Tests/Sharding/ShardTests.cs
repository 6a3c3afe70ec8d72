using System.Linq;
using StarterCtl.Sweeps.Sharding;
using Xunit;

namespace StarterCtl.Sweeps.Tests.Sharding;

/// <summary>Which rows a shard has.</summary>
public sealed class ShardTests
{
    [Theory]
    [InlineData(10, 1)]
    [InlineData(10, 3)]
    [InlineData(10, 10)]
    [InlineData(3, 8)]
    [InlineData(1_000_000_000, 7)]
    [InlineData(1_000_000_000, 1_000_000)]
    public void RowsOf_AllShards_AreEveryRowOnceInTheirOrder(long count, int of)
    {
        (long First, long Count)[] shards = [.. Enumerable.Range(1, of).Select(number => new Shard(number, of).RowsOf(count))];

        Assert.Equal(0, shards[0].First);
        Assert.True(Enumerable.Range(1, of - 1).All(i => shards[i].First == shards[i - 1].First + shards[i - 1].Count));
        Assert.Equal(count, shards[^1].First + shards[^1].Count);
        Assert.InRange(shards.Max(shard => shard.Count) - shards.Min(shard => shard.Count), 0, 1);
    }

    [Fact]
    public void RowsOf_TenRowsInFourShards_AreTwoOrThreeOfThem() =>
        Assert.Equal([(0, 2), (2, 3), (5, 2), (7, 3)], Enumerable.Range(1, 4).Select(number => new Shard(number, 4).RowsOf(10)));
}
