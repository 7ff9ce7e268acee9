namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>Figures of a crowded chain, raised into one row above it.</summary>
internal static class FigureSpread
{
    private const double Step = 0.25;

    /// <summary>
    /// Where the figures stand so that they keep their order and their distance, touch no barred line, and depart least in all from the middles of their spans.
    /// </summary>
    /// <param name="middles">Of their spans, ascending, mm along the chain.</param>
    /// <param name="gap">Clear distance between two of them, mm.</param>
    /// <param name="barred">Lines across the chain that no figure may touch, and how far off they are kept.</param>
    internal static double[] Along(IReadOnlyList<double> middles, IReadOnlyList<double> widths, double gap, (IReadOnlyList<double> Lines, double Off) barred)
    {
        // Wide enough for all of them on either side of everything that bars the way.
        var reach = widths.Sum() + (widths.Count * gap) + 2 * barred.Off;
        var from = Math.Min(middles[0], barred.Lines.DefaultIfEmpty(middles[0]).Min()) - reach;
        var to = Math.Max(middles[^1], barred.Lines.DefaultIfEmpty(middles[^1]).Max()) + reach;
        // The grid runs through the first middle, so that what has room stands there exactly.
        from = middles[0] - Math.Ceiling((middles[0] - from) / Step) * Step;
        var places = (int)Math.Ceiling((to - from) / Step) + 1;

        // least[i][p]: the least departure of the first i + 1 figures with the last of them at or before place p; at[i][p]: where it stands then.
        var least = new double[widths.Count][];
        var at = new int[widths.Count][];
        for (var i = 0; i < widths.Count; i++)
        {
            (least[i], at[i]) = (new double[places], new int[places]);
            var behind = Behind(i);
            for (var p = 0; p < places; p++)
            {
                var along = from + p * Step;
                var before = i == 0 ? 0 : p < behind ? double.PositiveInfinity : least[i - 1][p - behind];
                var half = widths[i] / 2 + barred.Off;
                var cost = barred.Lines.Any(line => Math.Abs(line - along) < half - 1e-9) ? double.PositiveInfinity : before + Math.Abs(along - middles[i]);
                (least[i][p], at[i][p]) = p > 0 && least[i][p - 1] <= cost ? (least[i][p - 1], at[i][p - 1]) : (cost, p);
            }
        }

        var result = new double[widths.Count];
        var last = places - 1;
        for (var i = widths.Count - 1; i >= 0; i--)
        {
            var p = at[i][last];
            result[i] = from + p * Step;
            last = p - Behind(i);
        }

        return result;

        // How many places a figure stands behind the one before it at least.
        int Behind(int i) => i == 0 ? 0 : (int)Math.Ceiling((((widths[i - 1] + widths[i]) / 2) + gap) / Step - 1e-9);
    }
}
