namespace StarterCtl.Trials.Judging;

/// <summary>What is expected of a signal, or of the run.</summary>
public enum ExpectationKind
{
    /// <summary>The signal gets to a value, from whichever side it begins on, or becomes a word.</summary>
    Reaches,

    /// <summary>The signal is never this word or count.</summary>
    Never,

    /// <summary>No sample is below a value.</summary>
    AtLeast,

    /// <summary>No sample is above a value.</summary>
    AtMost,

    /// <summary>No sample is outside of two values.</summary>
    StaysWithin,

    /// <summary>Words or counts come for the first time in this order.</summary>
    Order,

    /// <summary>The signal ends up at a value, or as a word, and stays there for a time.</summary>
    Settles,

    /// <summary>This fault is the first to be raised, or none is.</summary>
    Fault,
}
