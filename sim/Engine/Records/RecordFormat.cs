namespace StarterCtl.Engine.Records;

/// <summary>A file format of records.</summary>
public enum RecordFormat
{
    /// <summary>Comma-separated text.</summary>
    Csv,

    /// <summary>Apache Parquet.</summary>
    Parquet,

    /// <summary>COMTRADE with a BINARY32 data file.</summary>
    Comtrade,

    /// <summary>COMTRADE with an ASCII data file.</summary>
    ComtradeAscii,

    /// <summary>Value change dump.</summary>
    Vcd,
}
