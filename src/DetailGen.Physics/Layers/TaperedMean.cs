namespace DetailGen.Physics.Layers;

/// <summary>U of a tapered piece: the mean of 1/R over its area, where R, films included, changes evenly over the area.</summary>
/// <remarks>
/// The closed forms of ISO 6946:2017, annex on tapered layers (annex number still to be read), are divided differences of x·ln x: with R at the corners,
/// rectangle U = ln[a, b], triangle U = 2·(x·ln x)[a, b, c]; the forms for equal corners are their limits. Written so, one expression serves all shapes, and nothing
/// divides by a difference that goes to 0.
/// </remarks>
internal static class TaperedMean
{
    /// <summary>Below this spread, as a share of the least, differences of logarithms lose digits and a series takes over.</summary>
    private const double Close = 0.05;

    /// <param name="least">Resistance at one edge, above 0.</param>
    /// <param name="most">At the edge across.</param>
    internal static double Rectangle(double least, double most) => LogShare((most - least) / least) / least;

    /// <summary>Resistances at the three corners, above 0, in any order.</summary>
    internal static double Triangle(double first, double second, double third)
    {
        Span<double> corners = [first, second, third];
        corners.Sort();
        var a = corners[0];
        var (b, c) = (corners[1] / a, corners[2] / a);
        return (c - 1 < Close ? Series(b - 1, c - 1) : 2 * (Slope(b, c) - Slope(1, b)) / (c - 1)) / a;
    }

    /// <summary>(x·ln x)[p, q] with p ≤ q.</summary>
    private static double Slope(double p, double q) => Math.Log(p) + q / p * LogShare((q - p) / p);

    /// <summary>ln(1 + t) / t, to rounding also where t is small.</summary>
    private static double LogShare(double t)
    {
        if (Math.Abs(t) > Close)
        {
            return Math.Log(1 + t) / t;
        }

        var (sum, power) = (0.0, 1.0);
        for (var k = 1; k <= 16; k++)
        {
            sum += power / k;
            power *= -t;
        }

        return sum;
    }

    /// <summary>Mean of 1/x over a triangle with the corners 1, 1 + b, 1 + c: the means of powers over a triangle are complete symmetric sums.</summary>
    private static double Series(double b, double c)
    {
        var (sum, ofC, both, sign) = (1.0, 1.0, 1.0, 1.0);
        for (var k = 1; k <= 14; k++)
        {
            ofC *= c;
            both = b * both + ofC; // h_k(b, c) = b·h_(k−1)(b, c) + c^k
            sign = -sign;
            sum += sign * both * 2 / ((k + 1) * (k + 2));
        }

        return sum;
    }
}
