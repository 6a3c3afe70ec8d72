using System;
using System.Collections.Generic;
using System.Globalization;
using StarterCtl.Engine.Cases;
using StarterCtl.Engine.Parts;
using Xunit;

namespace StarterCtl.Engine.Tests.Parts;

/// <summary>Cases whose sections are to be bought.</summary>
internal static class PartsCases
{
    /// <summary>The starter of Chapman, Electric Machinery Fundamentals, with mechanical data of our own; ideal switching. CHK-01.</summary>
    public static CaseFile Chapman { get; } = Of(250, 0.05, 2.5, 4, 250, "peak-current = \"700 A\"\nswitching-current = \"330 A\"");

    /// <summary>Six stages of Theraja's starter, with mechanical data of our own; ideal switching. CHK-02.</summary>
    public static CaseFile Theraja { get; } = Of(220, 0.5, 2.1, 1.5, 20, "peak-current = \"40 A\"\nstages = 6");

    /// <summary>A case of constant flux that switches ideally.</summary>
    public static CaseFile Of(double volts, double armatureOhms, double constant, double inertia, double loadTorque, string starter) => CaseFile.Parse("case.toml", string.Create(CultureInfo.InvariantCulture, $"""
        [supply]
        voltage = "{volts} V"
        [motor]
        armature-resistance = "{armatureOhms} ohm"
        constant = "{constant} V s/rad"
        inertia = "{inertia} kg m2"
        [load]
        constant-torque = "{loadTorque} N m"
        [starter]
        {starter}
        [control]
        period = "20 us"
        [run]
        duration = "4 s"
        """));

    /// <summary>The choice for a case; the test's own end ends it.</summary>
    public static PartsChoice Choose(CaseFile file, PartsRequest request) => PartsDesigner.Choose(file, request, TestContext.Current.CancellationToken);

    /// <summary>A list of parts with names by their number.</summary>
    public static StockList Stock(params (double Ohms, double Watts, double Joules, double Price, int? Quantity)[] rows)
    {
        List<Part> parts = [];
        foreach ((double ohms, double watts, double joules, double price, int? quantity) in rows)
        {
            parts.Add(new Part($"P{parts.Count + 1}", ohms, new PartRating(watts, joules), (decimal)Math.Round(price, 2), quantity));
        }

        return new StockList("stock.csv", parts, [], []);
    }
}
