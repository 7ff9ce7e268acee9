using System.Globalization;

namespace DetailGen.Physics.Cases;

/// <summary>What a number must keep to, in code and in words ("above 0").</summary>
/// <remarks>The upper ends are our own: wider than anything built, and near enough that no figure overflows.</remarks>
internal readonly record struct Bound(Func<double, bool> Holds, string Wording)
{
    private const double Kilometre = 1e6;

    internal static Bound ZeroOrMore { get; } = new(value => value >= 0, "0 or more");

    internal static Bound Humidity { get; } = new(value => value is >= 0 and <= 1, "0 to 1 (a fraction, not percent)");

    internal static Bound Fraction { get; } = new(value => value is > 0 and <= 1, "above 0 and at most 1");

    internal static Bound AirTemperature { get; } = new(value => value is >= -100 and <= 100, "-100 to 100 °C, the range of the saturation formulas");

    /// <summary>Of a surface or a body; the least is absolute zero.</summary>
    internal static Bound Temperature { get; } = Between(-273.15, 5000, "°C");

    internal static Bound TemperatureStep { get; } = Between(0, 1000, "K");

    internal static Bound Coordinate { get; } = Between(-Kilometre, Kilometre, "mm");

    internal static Bound Thickness { get; } = Above(0, Kilometre, "mm");

    /// <summary>Of a piece of a tapered layer, which may run out.</summary>
    internal static Bound ThicknessOrNone { get; } = Between(0, Kilometre, "mm");

    internal static Bound Conductivity { get; } = Between(1e-6, 1e5, "W/mK");

    internal static Bound Resistance { get; } = Between(0, 1e6, "m²K/W");

    internal static Bound StripResistance { get; } = Above(0, 1e6, "m²K/W");

    internal static Bound VapourFactor { get; } = Between(0, 1e9, "");

    internal static Bound AirEquivalent { get; } = Between(0, 1e9, "m");

    internal static Bound VapourExcess { get; } = Between(0, 1e5, "Pa");

    internal static Bound Water { get; } = Between(0, 1e6, "g/m²");

    /// <summary>Of openings and fixings, mm².</summary>
    internal static Bound SmallArea { get; } = Between(0, 1e6, "mm²");

    internal static Bound FixingArea { get; } = Above(0, 1e6, "mm²");

    internal static Bound FixingDiameter { get; } = Above(0, 1000, "mm");

    internal static Bound PerSquareMetre { get; } = Between(0, 1e4, "to the m²");

    internal static Bound Rain { get; } = Between(0, 1000, "mm a day");

    internal static Bound RainFactor { get; } = Between(0, 1, "W·day/(m²·K·mm)");

    internal static Bound Area { get; } = Above(0, 1e9, "m²");

    internal static Bound Between(double least, double most, string unit) => new(value => value >= least && value <= most, $"{Number(least)} to {Number(most)} {unit}".TrimEnd());

    private static Bound Above(double least, double most, string unit) => new(value => value > least && value <= most, $"above {Number(least)} and at most {Number(most)} {unit}".TrimEnd());

    private static string Number(double value) => value.ToString("#,0.######", CultureInfo.InvariantCulture);
}
