using StarterCtl.Engine.Design;

namespace StarterCtl.App.Json;

/// <summary>The published shape of a stage.</summary>
public sealed record StageJson(
    int Stage,
    double TotalOhms,
    double SectionOhms,
    double CutoutVolts,
    double CutoutFraction,
    double? CutoutRpm,
    double PeakAmps,
    double SwitchingAmps,
    double VoltsLeft,
    double? LoadAmps,
    double? ExpectedSeconds,
    double? EnergyJoules)
{
    /// <summary>Back-EMF to which the lockout current holds the cutout back; null where the threshold is the later.</summary>
    public double? HeldToVolts { get; init; }

    /// <summary>The shape of a designed stage.</summary>
    public static StageJson Of(DesignedStage stage) => new(
        stage.Stage,
        stage.TotalOhms,
        stage.SectionOhms,
        stage.CutoutVolts,
        stage.CutoutFraction,
        stage.CutoutRpm,
        stage.PeakAmps,
        stage.SwitchingAmps,
        stage.VoltsLeft,
        stage.LoadAmps,
        stage.ExpectedSeconds,
        stage.EnergyJoules)
    {
        HeldToVolts = stage.HeldToVolts,
    };
}
