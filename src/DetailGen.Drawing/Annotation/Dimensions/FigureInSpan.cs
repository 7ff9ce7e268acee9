namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>Where a figure can stand over its own dimension line: off the witness lines, and off the oblique stroke that rises beside its first letter.</summary>
internal static class FigureInSpan
{
    /// <summary>
    /// Off the end at which one begins to read, mm: the stroke there rises into the row of the figure by 0.88 and half its width (0.25 on the largest sheets), and white belongs between them.
    /// The stroke at the other end rises away from it.
    /// </summary>
    private const double Before = 1.4;

    /// <summary>Off a witness line, mm: letters have some white of their own beside them.</summary>
    internal const double After = 0.35;

    private const double Step = 0.25;

    internal static bool Fits(double width, double span) => width + Before + After <= span + 1e-9;

    /// <summary>Middles of a figure that fits, the nearest to the middle of its span first.</summary>
    /// <param name="turned">On paper one reads from the high end to the low one.</param>
    internal static IEnumerable<double> Middles(double low, double high, double width, bool turned)
    {
        var (from, to) = (low + width / 2 + (turned ? After : Before), high - width / 2 - (turned ? Before : After));
        to = Math.Max(from, to);
        var best = Math.Clamp((low + high) / 2, from, to);
        yield return best;
        for (var shift = Step; best + shift <= to + 1e-9 || best - shift >= from - 1e-9; shift += Step)
        {
            if (best + shift <= to + 1e-9)
            {
                yield return best + shift;
            }

            if (best - shift >= from - 1e-9)
            {
                yield return best - shift;
            }
        }
    }
}
