using System;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

/// <summary>A case that has every table, and helpers to break it.</summary>
internal static class Sample
{
    internal const string File = "line-shaft.toml";

    internal const string Text = """
        title = "Line-shaft drive"

        [supply]
        voltage = "220 V"                    # open circuit
        resistance = "10 mohm"

        [motor]
        kind = "separately excited"
        rated-power = "15 kW"
        rated-voltage = "220 V"
        rated-current = "78 A"
        rated-speed = "1150 rpm"
        efficiency = 0.87
        armature-resistance = "0.18 ohm"
        armature-inductance = "3 mH"
        brush-drop = "2 V"
        inertia = "0.6 kg m2"
        constant = "1.69 V s/rad"

        [motor.construction]
        poles = 4
        conductors = 492
        parallel-paths = 2
        flux-per-pole = "12 mWb"

        [load]
        inertia = "1.9 kg m2"
        constant-torque = "70 N m"
        viscous-torque = "0.05 N m s/rad"
        fan-torque = "0.002 N m s2/rad2"
        speed = "-30 rpm"

        [starter]
        peak-current = "200 %"
        switching-current = "95 A"
        stages = 3
        slack = "last section"
        sections = ["0.52 ohm", "0.31 ohm"]
        cutout-voltages = ["90 V", "140 V"]

        [control]
        period = "1 ms"
        confirm-time = "2 ms"
        minimum-dwell = "50 ms"
        maximum-stage-time = "10 s"
        lockout-current = "none"
        instant-trip = "250 A"
        contact-time = "0.5 s"

        [contactors]
        closing-time = "40 ms"
        opening-time = "15 ms"

        [run]
        duration = "8 s"
        record-period = "5 ms"

        [limits]
        peak-current = "160 A"
        peak-torque = "280 N m"
        start-time = "6 s"

        [[event]]
        at = "5 s"
        load-torque = "120 N m"

        [[event]]
        at = "7 s"
        supply-voltage = "180 V"
        command = "emergency stop"

        """;

    internal static CaseFile Parse(string text) => CaseFile.Parse(File, text);

    internal static CaseException Refused(string text) => Assert.Throws<CaseException>(() => Parse(text));

    /// <summary>All problems as text, one per line, without the file's name before the line number.</summary>
    internal static string Problems(string text) =>
        Refused(text).Message.Replace(File + ":", "", StringComparison.Ordinal);
}
