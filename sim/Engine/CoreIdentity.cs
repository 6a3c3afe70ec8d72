using System.Reflection;
using StarterCtl.Core;

namespace StarterCtl.Engine;

/// <summary>Which core decided.</summary>
public static class CoreIdentity
{
    /// <summary>Version of the core, such as 0.1.0.</summary>
    public static string Version { get; } =
        typeof(Controller).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
}
