namespace StarterCtl.Engine.Solving;

/// <summary>Contact in whose place an arc carries the armature current.</summary>
public enum ArcPlace
{
    /// <summary>No arc burns.</summary>
    None,

    /// <summary>The line contact's.</summary>
    Line,

    /// <summary>The brake contact's.</summary>
    Brake,
}
