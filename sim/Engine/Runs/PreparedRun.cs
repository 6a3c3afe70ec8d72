using StarterCtl.Core;
using StarterCtl.Engine.Design;

namespace StarterCtl.Engine.Runs;

/// <summary>A case read as far as a run needs it, before anything moves.</summary>
/// <param name="Designed">Plate, machine and starter.</param>
/// <param name="Setup">What is simulated.</param>
/// <param name="Settings">The controller's settings, checked.</param>
public sealed record PreparedRun(CaseDesign Designed, RunSetup Setup, Settings Settings);
