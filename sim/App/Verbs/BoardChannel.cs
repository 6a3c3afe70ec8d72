using System;
using System.Collections.Generic;
using System.Linq;
using StarterCtl.Engine.Cases;
using StarterCtl.Firmware;

namespace StarterCtl.App.Verbs;

/// <summary>An analogue channel of a board as the command line names it.</summary>
/// <param name="Name">What is typed.</param>
/// <param name="Channel">What it is on the board.</param>
/// <param name="Words">What it measures, and where.</param>
/// <param name="Dimension">What its quantity is.</param>
/// <param name="Unit">The unit in which the board reads it.</param>
internal sealed record BoardChannel(string Name, CalibrationChannel Channel, string Words, Dimension Dimension, string Unit)
{
    /// <summary>All of them, in the order of <see cref="CalibrationChannel"/>.</summary>
    public static readonly IReadOnlyList<BoardChannel> All =
    [
        new("volts", CalibrationChannel.SupplyVolts, "supply voltage at the starter's input", Dimension.Voltage, "V"),
        new("amps", CalibrationChannel.ArmatureAmps, "armature current", Dimension.Current, "A"),
        new("field-amps", CalibrationChannel.FieldAmps, "field current", Dimension.Current, "A"),
        new("speed", CalibrationChannel.TachoSpeed, "speed by tacho", Dimension.Speed, "rad/s"),
    ];

    /// <summary>The channel of a name; null when there is none.</summary>
    public static BoardChannel? Find(string? name) => All.FirstOrDefault(channel => string.Equals(channel.Name, name, StringComparison.Ordinal));
}
