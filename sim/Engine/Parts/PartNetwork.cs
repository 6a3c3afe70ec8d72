using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace StarterCtl.Engine.Parts;

/// <summary>One part, or parts in series and parallel that stand for one resistor.</summary>
public sealed class PartNetwork
{
    // What is beyond nine digits is rounding of the sums; a case file carries nine digits back bit for bit.
    private const string OhmFormat = "G9";

    private readonly PartNetwork[] _members;
    private readonly bool _isSeries;
    private readonly double _exactOhms;

    /// <summary>A part alone.</summary>
    /// <param name="part">The part.</param>
    /// <param name="startsPerHour">Starts an hour that its rating is held against.</param>
    internal PartNetwork(Part part, double startsPerHour)
    {
        Part = part;
        _members = [];
        _exactOhms = part.Ohms;
        Ohms = Rounded(part.Ohms);
        Count = 1;
        Price = part.Price ?? 0;
        CapabilityJoules = part.Rating is PartRating rating ? 1 / rating.Share(1, startsPerHour) : double.PositiveInfinity;
    }

    private PartNetwork(bool isSeries, PartNetwork[] members, double exactOhms)
    {
        _isSeries = isSeries;
        _members = members;
        _exactOhms = exactOhms;
        Ohms = Rounded(exactOhms);
        Count = members.Sum(member => member.Count);
        Price = members.Sum(member => member.Price);
        // Members in series take heat by their resistance, members in parallel by their conductance.
        CapabilityJoules = members.Min(member => member.CapabilityJoules * (isSeries ? exactOhms / member._exactOhms : member._exactOhms / exactOhms));
    }

    /// <summary>The part; null for a network of several.</summary>
    public Part? Part { get; }

    /// <summary>Resistance to nine digits, ohm.</summary>
    public double Ohms { get; }

    /// <summary>Number of parts.</summary>
    public int Count { get; }

    /// <summary>Price of all parts; 0 for preferred values.</summary>
    public decimal Price { get; }

    /// <summary>Heat in one start with which its most burdened part is at its rating, J; infinity for preferred values.</summary>
    public double CapabilityJoules { get; }

    /// <summary>True for members in series.</summary>
    internal bool IsSeries => _isSeries;

    /// <summary>The parts with what each takes of the whole.</summary>
    /// <returns>Each part with its part of the heat and of the voltage, 0 to 1.</returns>
    public IEnumerable<(Part Part, double HeatShare, double VoltShare)> Parts()
    {
        if (Part != null) return [(Part, 1, 1)];
        return _members.SelectMany(member => member.Parts().Select(share => (
            share.Part,
            share.HeatShare * (_isSeries ? member._exactOhms / _exactOhms : _exactOhms / member._exactOhms),
            share.VoltShare * (_isSeries ? member._exactOhms / _exactOhms : 1))));
    }

    /// <summary>The network in one line: + for in series, || for in parallel.</summary>
    public override string ToString() => Part?.Name ?? string.Join(_isSeries ? " + " : " || ", _members.Select(member => member.Part?.Name ?? $"({member})"));

    /// <summary>Resistance of members in series or parallel, ohm.</summary>
    internal static double OhmsOf(bool isSeries, IReadOnlyList<PartNetwork> members, int count)
    {
        double sum = 0;
        for (int i = 0; i < count; i++) sum += isSeries ? members[i]._exactOhms : 1 / members[i]._exactOhms;
        return isSeries ? sum : 1 / sum;
    }

    /// <summary>Members in series or parallel.</summary>
    internal static PartNetwork Of(bool isSeries, PartNetwork[] members) => new(isSeries, members, OhmsOf(isSeries, members, members.Length));

    private static double Rounded(double ohms) => double.Parse(ohms.ToString(OhmFormat, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
