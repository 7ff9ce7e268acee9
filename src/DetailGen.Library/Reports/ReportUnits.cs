using DetailGen.Details.Quantities;

namespace DetailGen.Library.Reports;

/// <summary>Values as reports give them: lengths in mm, falls as the n of 1:n, counts as they are.</summary>
internal static class ReportUnits
{
    internal const string Millimetres = "mm";
    internal const string Ratio = "1:n";

    /// <summary>Null for what has no unit.</summary>
    internal static string? Of(Unit unit) => unit switch { Unit.Length => Millimetres, Unit.Ratio => Ratio, _ => null };

    /// <summary>To a thousandth, half away from 0; never -0.</summary>
    internal static double Thousandth(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero) + 0.0;

    /// <param name="value">Micrometres, n or a count.</param>
    internal static double Number(Unit unit, long value) => unit == Unit.Length ? new Length(value).ToMillimetres() : value;
}
