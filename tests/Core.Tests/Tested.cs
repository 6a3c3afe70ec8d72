namespace StarterCtl.House;

/// <summary>What this test project tests.</summary>
internal static class Tested
{
    internal const string Folder = "core";
    internal const string Library = "StarterCtl.Core";
    internal const string MainType = "Controller";

    internal static readonly string[] References = ["mscorlib"];
}
