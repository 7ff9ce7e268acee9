using System.Globalization;

namespace DetailGen.Library.Wording;

/// <summary>Numbers as people read them; the culture of the machine plays no part.</summary>
internal static class Figures
{
    internal static string Short(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    internal static string Short(decimal value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    internal static string Fixed(double value, int decimals) => value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>As it stands on a sheet, where a minus is as wide as a figure.</summary>
    internal static string OnSheet(double value, int decimals) => Fixed(value, decimals).Replace('-', '−');

    internal static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}
