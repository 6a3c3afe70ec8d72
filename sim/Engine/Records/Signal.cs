using System.Globalization;

namespace StarterCtl.Engine.Records;

/// <summary>One column of every record.</summary>
/// <param name="Name">Column name, with its unit at the end where it has one.</param>
/// <param name="Unit">Unit, or empty.</param>
/// <param name="Description">What it is, in a sentence.</param>
/// <param name="Role">Who it comes from.</param>
/// <param name="Kind">What its values are.</param>
/// <param name="Number">The number of a sample; ids and bits as whole numbers.</param>
/// <param name="Put">Puts a number into a sample.</param>
/// <param name="Words">The words of an id, else null.</param>
public sealed record Signal(
    string Name, string Unit, string Description, SignalRole Role, SignalKind Kind, SampleNumber Number, SampleChange Put, SignalWords? Words = null)
{
    /// <summary>A value as a person reads it: the word of an id, else every digit that it takes.</summary>
    public string Show(double number) => Words != null ? Words.Word((int)number)
        : Kind == SignalKind.Real ? ((float)number).ToString("R", CultureInfo.InvariantCulture)
        : number.ToString("R", CultureInfo.InvariantCulture);
}
