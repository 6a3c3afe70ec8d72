namespace StarterCtl.Engine.Runs;

/// <summary>A contactor that goes wrong, or is repaired. Main contact and auxiliary contact can be faulty side by side.</summary>
/// <param name="Contact">Which contactor.</param>
/// <param name="Kind">What is wrong with it from now on.</param>
/// <param name="Stage">Number of the stage, 1 = first, where the contactor is a stage's.</param>
public sealed record ContactFault(ContactName Contact, ContactFaultKind Kind, int Stage = 0);
