namespace StarterCtl.Sweeps.Sensitivity;

/// <summary>What one input contributes to an outcome.</summary>
/// <param name="Input">Name of its column, or <see cref="Noise"/>.</param>
/// <param name="FirstOrder">Share of the variance that would go if this input alone were known.</param>
/// <param name="Total">Share that would be left if all others were known: its own and that of everything it does together with others.</param>
public sealed record InputSensitivity(string Input, IndexEstimate FirstOrder, IndexEstimate Total)
{
    /// <summary>Name of the input that stands for the sensors' noise and the loop's jitter.</summary>
    public const string Noise = "noise and jitter";
}
