using System.Collections.Generic;

namespace StarterCtl.Engine.Ratings;

/// <summary>The duty that a case asks for.</summary>
/// <param name="Times">Its cycle.</param>
/// <param name="Steady">The cycle that repeats itself in the end; null where temperatures rise without end.</param>
/// <param name="FromCold">The first cycles from cold, as far as a picture needs them.</param>
/// <param name="StartsFromCold">Starts until one passes a limit; null: none ever does.</param>
/// <param name="Excess">Why it is not permitted; empty where it is.</param>
/// <param name="Class">Its name by IEC 60034-1.</param>
public sealed record GivenDuty(CycleTimes Times, CycleHeat? Steady, IReadOnlyList<CycleHeat> FromCold, int? StartsFromCold, string Excess, DutyClass Class);
