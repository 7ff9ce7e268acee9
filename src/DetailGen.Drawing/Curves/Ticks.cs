using System.Globalization;

namespace DetailGen.Drawing.Curves;

/// <summary>Round values along an axis.</summary>
/// <param name="Values">Rising; the first and the last hold everything between them.</param>
internal sealed record Ticks(IReadOnlyList<double> Values, int Decimals)
{
    private static readonly double[] Mantissas = [1, 2, 5, 10];

    internal double Least => Values[0];

    internal double Most => Values[^1];

    /// <summary>About as many as wanted, in steps of 1, 2 or 5.</summary>
    internal static Ticks Over(double least, double most, int wanted)
    {
        // a figure that does not change still needs an axis
        var spread = Math.Max(most - least, Math.Max(Math.Abs(most) * 0.02, 1e-4));
        var power = Math.Pow(10, Math.Floor(Math.Log10(spread / wanted)));
        var step = power * Mantissas.First(mantissa => mantissa * power * wanted >= spread * (1 - 1e-9));
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        var (from, to) = ((long)Math.Floor((least / step) + 1e-9), (long)Math.Ceiling((most / step) - 1e-9));
        to = Math.Max(to, from + 1);
        return new([.. Enumerable.Range(0, (int)(to - from) + 1).Select(i => Math.Round((from + i) * step, decimals + 1))], decimals);
    }

    internal string Written(double value) => (Math.Round(value, Decimals) + 0.0).ToString("F" + Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
