using System;
using StarterCtl.Engine;

namespace StarterCtl.App.Reporting;

/// <summary>Numbers with their units as the report prints them; the space between the two does not break.</summary>
internal static class Quantity
{
    private const string Space = "\u00A0";

    public static string Plain(double number) => Text.Number(number).Replace('-', '\u2212');

    public static string Volts(double volts) => Plain(volts) + Space + "V";

    public static string Amps(double amps) => Plain(amps) + Space + "A";

    public static string Ohms(double ohms) => Plain(ohms) + Space + "Ω";

    public static string Rpm(double rpm) => Plain(rpm) + Space + "r/min";

    public static string Seconds(double seconds) => Math.Abs(seconds) is > 0 and < 0.1 ? Milliseconds(seconds) : Plain(seconds) + Space + "s";

    public static string Milliseconds(double seconds) => Plain(Math.Round(seconds * 1000, 6)) + Space + "ms";

    public static string Torque(double newtonMetres) => Plain(newtonMetres) + Space + "N" + Space + "m";

    public static string Percent(double percent) => Plain(percent) + Space + "%";

    public static string Watts(double watts) => Math.Abs(watts) >= 1000 ? Plain(watts / 1000) + Space + "kW" : Plain(watts) + Space + "W";

    public static string Joules(double joules) => Math.Abs(joules) >= 1000 ? Plain(joules / 1000) + Space + "kJ" : Plain(joules) + Space + "J";

    public static string Constant(double voltSeconds) => Plain(voltSeconds) + Space + "V" + Space + "s/rad";

    public static string Celsius(double celsius) => Plain(celsius) + Space + "°C";

    public static string PerKelvin(double perKelvin) => Plain(perKelvin) + Space + "per" + Space + "kelvin";

    public static string OrDash(double? number, Func<double, string> format) => number is double known ? format(known) : "–";
}
