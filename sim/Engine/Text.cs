using System;
using System.Globalization;

namespace StarterCtl.Engine;

/// <summary>Numbers as people read them.</summary>
public static class Text
{
    /// <summary>Four significant digits, without exponent where the size allows it, invariant.</summary>
    public static string Number(double number)
    {
        if (!double.IsFinite(number)) return number.ToString(CultureInfo.InvariantCulture);
        double magnitude = Math.Abs(number);
        if (magnitude == 0) return "0";
        if (magnitude is >= 1e6 or < 1e-4) return number.ToString("0.###E+0", CultureInfo.InvariantCulture);
        int decimals = Math.Clamp(3 - (int)Math.Floor(Math.Log10(magnitude)), 0, 7);
        string text = number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
