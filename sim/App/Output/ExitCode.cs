namespace StarterCtl.App.Output;

/// <summary>What the program says to the shell. Published; never reused.</summary>
public static class ExitCode
{
    /// <summary>Done, and the verdict is pass.</summary>
    public const int Ok = 0;

    /// <summary>Done, but a limit was exceeded; or a board refused, and refuses again until something changes there.</summary>
    public const int Failed = 1;

    /// <summary>Wrong usage or input; nothing was written.</summary>
    public const int Input = 2;

    /// <summary>A defect of this program.</summary>
    public const int Internal = 3;

    /// <summary>Trouble around the program, worth a retry: a full disk, say, or a board that does not answer.</summary>
    public const int Environment = 4;

    /// <summary>Cancelled by the user.</summary>
    public const int Cancelled = 5;
}
