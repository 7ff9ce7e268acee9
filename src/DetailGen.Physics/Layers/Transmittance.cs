namespace DetailGen.Physics.Layers;

/// <summary>Thermal transmittance of plane layers: U = 1 / (Rsi + Σ Rⱼ + Rse), with Rⱼ = dⱼ / λⱼ for a homogeneous layer.</summary>
/// <remarks>EN ISO 6946:2017, homogeneous layers (clause number still to be read). No bridging, no corrections for gaps or fixings.</remarks>
public static class Transmittance
{
    /// <summary>Resistance d / λ of a homogeneous layer in m²·K/W.</summary>
    /// <param name="thickness">m, 0 or more.</param>
    /// <param name="conductivity">W/(m·K), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is outside its range.</exception>
    public static double Resistance(double thickness, double conductivity)
    {
        if (!(thickness >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(thickness), thickness, "A layer cannot be thinner than nothing.");
        }

        return conductivity > 0
            ? thickness / conductivity
            : throw new ArgumentOutOfRangeException(nameof(conductivity), conductivity, "A conductivity is above nothing.");
    }

    /// <summary>U in W/(m²·K) from the resistances of the layers, surfaces included, in m²·K/W.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sum is not above 0.</exception>
    public static double Of(double totalResistance) =>
        totalResistance > 0
            ? 1 / totalResistance
            : throw new ArgumentOutOfRangeException(nameof(totalResistance), totalResistance, "A total resistance is above nothing.");
}
