namespace StarterCtl.Engine.Runs;

/// <summary>A stage's cutout as it happened.</summary>
/// <param name="Stage">1 for the first.</param>
/// <param name="Seconds">When the contact shorted the section, s.</param>
/// <param name="ThresholdSeconds">When the back-EMF crossed the threshold, between ticks too, s.</param>
/// <param name="CommandSeconds">When the controller decided it, s.</param>
/// <param name="BackEmfVolts">True back-EMF at the contact's closing, V.</param>
/// <param name="Rpm">Speed at the contact's closing, r/min.</param>
/// <param name="AmpsBefore">Current just before, A.</param>
/// <param name="PeakAmpsAfter">Largest current until the next contact or event, A.</param>
public sealed record Cutout(
    int Stage, double Seconds, double ThresholdSeconds, double CommandSeconds, double BackEmfVolts, double Rpm, double AmpsBefore, double PeakAmpsAfter);
