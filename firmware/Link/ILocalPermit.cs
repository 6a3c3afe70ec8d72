namespace StarterCtl.Firmware;

/// <summary>The switch at the machine without which nothing starts over the link.</summary>
public interface ILocalPermit
{
    /// <summary>True while a start over the link is permitted.</summary>
    bool IsGiven();
}
