namespace StarterCtl.App.Reporting.Plots;

/// <summary>Size of a drawing in its own units; the page scales it to its width.</summary>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="IsNarrow">True for the drawing that a phone shows.</param>
internal sealed record PlotSize(double Width, double Height, bool IsNarrow)
{
    /// <summary>Size of the letters.</summary>
    public double FontSize => IsNarrow ? 11 : 13;

    /// <summary>Room left of the plot for numbers.</summary>
    public double Left => IsNarrow ? 40 : 50;

    /// <summary>Room below the plot for numbers and title.</summary>
    public double Bottom => IsNarrow ? 36 : 42;
}
