namespace StarterCtl.House;

/// <summary>What this test project tests.</summary>
internal static class Tested
{
    internal const string Folder = "firmware";
    internal const string Library = "StarterCtl.Firmware";
    internal const string MainType = "ControlLoop";

    internal static readonly string[] References = ["StarterCtl.Core", "mscorlib"];
}
