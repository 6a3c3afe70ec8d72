namespace StarterCtl.Engine.Parts;

/// <summary>A series of preferred values of IEC 60063; the number is how many values a decade has.</summary>
public enum PreferredSeries
{
    /// <summary>Six values a decade.</summary>
    E6 = 6,

    /// <summary>Twelve values a decade.</summary>
    E12 = 12,

    /// <summary>Twenty-four values a decade.</summary>
    E24 = 24,

    /// <summary>Forty-eight values a decade.</summary>
    E48 = 48,

    /// <summary>Ninety-six values a decade.</summary>
    E96 = 96,
}
