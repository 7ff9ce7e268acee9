namespace DetailGen.Physics.Layers;

/// <summary>Thermal resistance of an unventilated air layer between ordinary surfaces, in m²·K/W.</summary>
/// <remarks>EN ISO 6946:2007, table 2 (read in a secondary text; the 2017 edition calculates instead), straight lines between the rows; downwards from memory.
/// <see cref="AirSpace"/> calculates, for surfaces and steps of temperature that are not ordinary.</remarks>
public static class AirLayer
{
    private static readonly (double Thickness, double Upwards, double Horizontal, double Downwards)[] Rows =
    [
        (0, 0, 0, 0), (5, 0.11, 0.11, 0.11), (7, 0.13, 0.13, 0.13), (10, 0.15, 0.15, 0.15), (15, 0.16, 0.17, 0.17), (25, 0.16, 0.18, 0.19),
        (50, 0.16, 0.18, 0.21), (100, 0.16, 0.18, 0.22), (300, 0.16, 0.18, 0.23),
    ];

    /// <param name="thickness">mm, 0 or more; above 300 the last row is taken.</param>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is negative or not a number.</exception>
    public static double Resistance(double thickness, Flow flow)
    {
        if (!(thickness >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(thickness), thickness, "An air layer cannot be thinner than nothing.");
        }

        for (var i = 1; i < Rows.Length; i++)
        {
            if (thickness <= Rows[i].Thickness)
            {
                var share = (thickness - Rows[i - 1].Thickness) / (Rows[i].Thickness - Rows[i - 1].Thickness);
                return Value(Rows[i - 1], flow) + share * (Value(Rows[i], flow) - Value(Rows[i - 1], flow));
            }
        }

        return Value(Rows[^1], flow);
    }

    private static double Value((double Thickness, double Upwards, double Horizontal, double Downwards) row, Flow flow) => flow switch
    {
        Flow.Upwards => row.Upwards,
        Flow.Downwards => row.Downwards,
        _ => row.Horizontal,
    };
}
