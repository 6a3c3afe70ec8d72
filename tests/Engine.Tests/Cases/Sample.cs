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
        cable-length = "130 ft"
        cable-area = "25 mm²"
        cable-material = "aluminium"
        cable-temperature = "50 degC"
        permitted-dip = 0.05

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
        resistance-temperature = "20 degC"
        winding-temperature = "95 °C"
        magnet-temperature-coefficient = -0.002
        thermal-capacity = "9 kJ/K"
        thermal-resistance = "0.15 K/W"
        winding-temperature-limit = "145 degC"

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
        table-speeds = ["0 rpm", "100 rpm", "1200 rpm"]
        table-torques = ["60 N m", "20 N m", "45 N m"]
        hoist-torque = "90 N m"
        speed = "-30 rpm"

        [starter]
        peak-current = "200 %"
        switching-current = "95 A"
        stages = 3
        slack = "last section"
        sections = ["0.52 ohm", "0.31 ohm"]
        cutout-voltages = ["90 V", "140 V"]
        section-thermal-capacity = ["2.5 kJ/K", "1800 J/K"]
        section-cooling-time = "10 min"
        section-temperature-coefficient = 0.0001
        section-hot-spot-limit = "375 degC"
        section-hot-spot-factor = 1.2

        [control]
        period = "1 ms"
        jitter = "200 us"
        confirm-time = "2 ms"
        minimum-dwell = "50 ms"
        maximum-stage-time = "10 s"
        lockout-current = "none"
        instant-trip = "250 A"
        contact-time = "0.5 s"
        spinning-start = "yes"

        [contactors]
        closing-time = "40 ms"
        bounce-count = 3
        bounce-time = "1 ms"
        pick-up-voltage = 0.8
        arc-voltage = "400 V"
        drop-out-voltage = 0.6
        rated-current = ["95 A", "80 A"]
        opening-time = "15 ms"

        [duty]
        run-time = "45 s"
        rest = "5 min"
        starts-per-hour = 12

        [run]
        duration = "8 s"
        record-period = "5 ms"
        ambient-temperature = "40 degC"

        [limits]
        peak-current = "160 A"
        peak-torque = "280 N m"
        start-time = "6 s"

        [field]
        supply-voltage = "110 V"
        resistance = "92 ohm"
        inductance = "30 H"
        rated-current = "1.2 A"
        curve-currents = ["0 A", "0.6 A", "1.2 A"]
        curve-constants = ["0.05 V s/rad", "1 V s/rad", "1.69 V s/rad"]
        curve-emfs = ["6 V", "120 V", "203 V"]
        curve-speed = "1150 rpm"
        armature-reaction = 0.002
        discharge-time = "80 ms"
        contactor = "yes"
        minimum-current = "0.6 A"
        build-time = "1 s"
        maximum-time = "5 s"
        thermal-capacity = "12 kJ/K"
        thermal-resistance = "300 K/kW"

        [series-field]
        resistance = "20 mohm"
        inductance = "2 mH"
        turns-ratio = 0.004
        connection = "short shunt"
        sense = "differential"

        [brake]
        resistance = "1.6 ohm"
        release-speed = "60 rpm"
        delay = "100 ms"
        maximum-time = "8 s"

        [sensors]
        speed = "yes"
        speed-loss = "keep running"
        speed-loss-time = "200 ms"
        resistive-confirm-time = "500 ms"
        standstill-speed = "12 rpm"
        zero-current = "2 %"
        step-tolerance = 0.2
        step-settle-time = "30 ms"
        line-contact = "yes"
        stage-contacts = "no"
        brake-contact = "yes"
        field-contact = "yes"
        field-current = "yes"
        current-noise = "1.5 A"
        current-gain = 1.02
        current-offset = "-2 A"
        current-range = "400 A"
        voltage-noise = "0.8 V"
        voltage-gain = 1.02
        voltage-offset = "-1.5 V"
        voltage-range = "400 V"
        speed-noise = "2 rpm"
        speed-gain = 1.02
        speed-offset = "-3 rpm"
        speed-range = "2000 rpm"
        bits = 12
        filter-time = "2 ms"
        seed = 7
        pulses-per-revolution = 60
        pulse-timeout = "100 ms"

        [protection]
        trip-confirm-time = "20 ms"
        supply-low = "170 V"
        dip-time = "500 ms"
        dip-action = "put resistance back"
        supply-high = "250 V"
        supply-high-time = "1 s"
        overload-current = "100 %"
        overload-class = "10A"
        overload-reset = 0.75
        resistor-energy = "120 kJ"
        resistor-time-constant = "10 min"
        resistor-start-level = 0.5
        resistor-temperature = "350 °C"
        starts-per-hour = 6
        maximum-start-time = "12 s"
        stall-current = "150 %"
        stall-time = "1 s"
        overspeed = "1500 rpm"
        reverse-speed = "30 rpm"
        disagreement = "30 V"
        disagreement-time = "500 ms"
        maximum-tick = "3 ms"
        permissives = 2

        [expect]
        fault = "field lost"
        by = "2 s"
        phase = "tripped"

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
