using System;
using System.Globalization;
using System.Linq;
using CsCheck;
using StarterCtl.Engine.Cases;
using Xunit;

namespace StarterCtl.Engine.Tests.Cases;

public sealed class CaseFuzzTests
{
    private const string Marks = "\"'=[]{}#.,-+%\n\r\t 019eEnaµ²Ω\u001b\ud83d";

    // One edit: where (as a part of the text), how many characters go, and what comes in.
    private static readonly Gen<(double Part, int Removed, string Inserted)> AnyEdit =
        Gen.Select(Gen.Double[0, 1], Gen.Int[0, 12], Gen.OneOf(Gen.Char[Marks].Array[0, 4], Gen.Char.Array[0, 3]))
            .Select((part, removed, inserted) => (part, removed, new string(inserted)));

    [Fact]
    public void Parse_MutatedCase_ReadsOrReportsAndNeverCrashes() =>
        AnyEdit.Array[1, 6].Sample(
            edits => IsReadOrReported(edits.Aggregate(Sample.Text, Apply)), iter: 2000);

    [Fact]
    public void Parse_ShuffledLines_ReadsOrReportsAndNeverCrashes() =>
        Gen.Shuffle(Sample.Text.Split('\n')).Sample(lines => IsReadOrReported(string.Join('\n', lines)), iter: 500);

    [Fact]
    public void Parse_Rubbish_IsReported() =>
        Gen.Char[Marks + "abmotr"].Array[0, 200].Sample(letters => IsReadOrReported(new string(letters)), iter: 2000);

    [Fact]
    public void Parse_AnyQuantityInRange_ComesBackExactly() =>
        Gen.Double[1e-9, 1000].Sample(ohms =>
        {
            string text = $"motor.armature-resistance = \"{ohms.ToString("R", CultureInfo.InvariantCulture)} ohm\"";
            return Sample.Parse(text).Number(CaseKeys.MotorArmatureResistance) == ohms;
        });

    [Fact]
    public void Parse_AnyWholeMicroseconds_AreAPeriod() =>
        Gen.Int[10, 100000].Sample(microseconds =>
        {
            string milliseconds = (microseconds / 1000m).ToString(CultureInfo.InvariantCulture);
            double seconds = Sample.Parse($"control.period = \"{milliseconds} ms\"").Number(CaseKeys.ControlPeriod);
            return (int)Math.Round(seconds * 1e6) == microseconds;
        });

    private static string Apply(string text, (double Part, int Removed, string Inserted) edit)
    {
        int at = (int)(edit.Part * text.Length);
        int removed = Math.Min(edit.Removed, text.Length - at);
        return text.Remove(at, removed).Insert(at, edit.Inserted);
    }

    private static bool IsReadOrReported(string text)
    {
        try
        {
            return Sample.Parse(text).FileName == Sample.File;
        }
        catch (CaseException fault)
        {
            int lines = text.Count(letter => letter == '\n') + 1;
            return fault.Problems.Count > 0
                && fault.Problems.All(problem => problem.Line >= 0 && problem.Line <= lines)
                && !fault.Message.Any(letter => letter != '\n' && char.IsControl(letter));
        }
    }
}
