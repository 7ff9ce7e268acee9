using System.Buffers.Text;
using System.Globalization;

namespace DetailGen.Dxf.Tags;

/// <summary>Numbers as text: no exponent, no -0, always a point, the shortest digits that read back as the same double.</summary>
/// <remarks>On the grid a number is a whole count of steps below 1e15. Count divided by steps per unit is the double nearest to the
/// decimal written, and decimals of up to 15 digits name different doubles, so the trimmed decimal is also the shortest one.</remarks>
internal static class DxfNumber
{
    /// <summary>The longest text: sign, 15 digits, point, and a nought either side of it.</summary>
    public const int MostBytes = 24;

    private const double MostSteps = 1e15;

    /// <exception cref="ArgumentException">Not finite, or too large for the grid.</exception>
    public static double OnGrid(double value, Grid grid) => Steps(value, grid) / (double)grid.PerUnit;

    /// <summary>Writes the text; answers its length in bytes.</summary>
    /// <exception cref="ArgumentException">Not finite, or too large for the grid.</exception>
    public static int Format(double value, Grid grid, Span<byte> target)
    {
        var steps = Steps(value, grid);
        var at = 0;
        if (steps < 0)
        {
            target[at++] = (byte)'-';
            steps = -steps;
        }

        var (whole, rest) = Math.DivRem(steps, grid.PerUnit);
        Utf8Formatter.TryFormat(whole, target[at..], out var written);
        at += written;
        target[at++] = (byte)'.';
        var step = grid.PerUnit;
        do
        {
            step /= 10;
            (var digit, rest) = Math.DivRem(rest, step);
            target[at++] = (byte)('0' + digit);
        }
        while (rest != 0);
        return at;
    }

    private static long Steps(double value, Grid grid)
    {
        var steps = Math.Round(value * grid.PerUnit, MidpointRounding.AwayFromZero);
        return Math.Abs(steps) < MostSteps // false for NaN too
            ? (long)steps
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{value} is no number that a drawing can hold."));
    }
}
