namespace StarterCtl.Engine.Records;

/// <summary>Where a record could no longer be read.</summary>
/// <param name="RowsRead">Rows before it, all of them good.</param>
/// <param name="Where">Line or byte: "line 1201".</param>
/// <param name="Found">What was found there.</param>
public sealed record RecordBreak(long RowsRead, string Where, string Found)
{
    /// <summary>In a sentence.</summary>
    public override string ToString() => $"read {RowsRead} rows and stopped at {Where}: {Found}";
}
