using System.Globalization;

namespace DetailGen.Details.Quantities;

/// <summary>What a written quantity measures, and the unit its number is in.</summary>
public enum QuantityKind
{
    /// <summary>No unit.</summary>
    Bare,

    /// <summary>mm.</summary>
    Length,

    /// <summary>The n of 1:n.</summary>
    Ratio,

    /// <summary>Degrees.</summary>
    Angle,

    /// <summary>W/(m²·K).</summary>
    Transmittance,

    /// <summary>m²·K/W.</summary>
    Resistance,

    /// <summary>W/(m·K).</summary>
    Conductivity,

    /// <summary>kg/m³.</summary>
    Density,

    /// <summary>kg/m².</summary>
    AreaMass,

    /// <summary>MN·s/g.</summary>
    VapourResistance,

    /// <summary>kN/m².</summary>
    Pressure,

    /// <summary>Per cent.</summary>
    Percent,
}

/// <summary>A number with its unit, as read.</summary>
/// <param name="Number">In the unit that the kind names.</param>
public readonly record struct Quantity(QuantityKind Kind, decimal Number)
{
    /// <summary>As <see cref="QuantityKind.Length"/>; null where it measures something else or is finer than a micrometre.</summary>
    public Length? AsLength() => Kind == QuantityKind.Length ? Length.Exactly(Number) : null;

    /// <summary>The nearest whole n on the safe side, the steeper one, for a ratio or an angle; null where there is none.</summary>
    public long? AsRatio()
    {
        switch (Kind)
        {
            case QuantityKind.Ratio:
                return decimal.IsInteger(Number) && Number is >= 1 and <= 1_000_000 ? (long)Number : null;
            case QuantityKind.Angle when Number is > 0 and <= 45:
                // 45° is 1:1; the tangent of the nearest double must not make it 1:0
                return (long)Math.Floor((1 / Math.Tan((double)Number * Math.PI / 180)) + 1e-9);
            default:
                return null;
        }
    }

    public override string ToString() => Kind == QuantityKind.Ratio
        ? string.Create(CultureInfo.InvariantCulture, $"1:{Number:0}")
        : string.Create(CultureInfo.InvariantCulture, $"{Number:0.############} {QuantityReader.UnitOf(Kind)}").TrimEnd();
}
