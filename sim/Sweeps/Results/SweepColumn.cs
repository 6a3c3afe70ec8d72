using System;
using StarterCtl.Sweeps.Running;

namespace StarterCtl.Sweeps.Results;

/// <summary>A column of results.</summary>
/// <param name="Name">Its name, with the unit in brackets.</param>
/// <param name="Kind">Type of its values: long, int, bool, double or string.</param>
/// <param name="ValueOf">Its value of a row.</param>
internal sealed record SweepColumn(string Name, Type Kind, Func<SweepRow, object> ValueOf);
