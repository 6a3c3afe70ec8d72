using System;
using System.Linq;
using Xunit;

namespace StarterCtl.Core.Tests;

public sealed class FaultTableTests
{
    [Fact]
    public void Table_HasOneRowForEveryFault_EmergencyStopFirst()
    {
        Assert.Equal(Enum.GetValues<FaultId>(), FaultTable.Rows.Select(row => row.Id).Order());
        Assert.Equal([FaultId.None, FaultId.EmergencyStop], FaultTable.Rows.Take(2).Select(row => row.Id));
        Assert.Equal(FaultTable.Rows.Length, FaultTable.Rows.Select(row => row.Name).Distinct().Count());
        Assert.All(FaultTable.Rows, row => Assert.True(row.Cause.Length > 0 && row.Done.Length > 0 && row.Check.Length > 0, row.Name));
        Assert.All(FaultTable.Rows.Skip(1), row => Assert.NotEqual(FaultSeverity.None, row.Severity));
    }

    [Fact]
    public void RowOf_UnknownId_IsNoFault()
    {
        Assert.Equal(FaultId.None, FaultTable.RowOf((FaultId)999).Id);
        Assert.All(Enum.GetValues<FaultId>(), id => Assert.Equal(id, FaultTable.RowOf(id).Id));
    }
}
