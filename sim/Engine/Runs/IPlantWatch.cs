namespace StarterCtl.Engine.Runs;

/// <summary>Looks on while the plant's circuit changes between two ticks. Called at the instant of each change, never in between.</summary>
public interface IPlantWatch
{
    /// <summary>Circuit, load or supply is about to change.</summary>
    /// <param name="now">Time, s.</param>
    /// <param name="closing">Stage contacts that close now, bit 0 = stage 1.</param>
    void BeforeChange(double now, int closing);

    /// <summary>It has changed.</summary>
    void AfterChange(double now);

    /// <summary>A contact is about to bounce or has bounced: the circuit changes and the coil's command is long carried out.</summary>
    void Bounced(double now);

    /// <summary>An event of the case has happened.</summary>
    void Happened(RunEvent happening, double now);

    /// <summary>Something of which pictures are drawn is about to change; the readings are still those of the last tick.</summary>
    void Leaving();

    /// <summary>It has changed.</summary>
    void Changed(double now);
}
