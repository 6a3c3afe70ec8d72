using System;
using System.Reflection;
using StarterCtl.Core;
using StarterCtl.Engine.Records;
using Xunit;

namespace StarterCtl.Engine.Tests.Records;

/// <summary>Nothing that the controller is given is lost on the way into a sample and out again.</summary>
public sealed class ControllerTickTests
{
    [Fact]
    public void ReadInto_EveryReading_ComesOutAsItWasPutIn()
    {
        foreach (FieldInfo field in typeof(Readings).GetFields())
        {
            Readings given = new(), read = new();
            field.SetValue(given, field.FieldType == typeof(bool) ? true : field.FieldType == typeof(int) ? (object)5 : 1.25f);
            Sample sample = default;

            ControllerTick.PutReadings(ref sample, 0, given);
            ControllerTick.ReadInto(sample, read);

            Assert.True(field.GetValue(given)!.Equals(field.GetValue(read)), field.Name);
        }
    }

    // A lamp or coil that no record had could not be compared.
    [Fact]
    public void PutDecisions_EveryOutput_IsADecisionOfTheTable()
    {
        foreach (FieldInfo field in typeof(Outputs).GetFields())
        {
            Assert.Contains(SignalTable.All, signal => signal.Role == SignalRole.Decision && string.Equals(signal.Name, field.Name, StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public void All_EverySignal_PutsAndGivesTheSameNumber()
    {
        foreach (Signal signal in SignalTable.All)
        {
            Sample sample = default;
            signal.Put(ref sample, 1);

            Assert.True(signal.Number(sample) == 1, signal.Name);
            Assert.All(SignalTable.All, other => Assert.Equal(other == signal ? 1 : 0, other.Number(sample)));
        }
    }
}
