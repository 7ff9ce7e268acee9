using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>A figure with its row: 0 nearest the drawing.</summary>
/// <param name="Low">Lesser end along the dimension line, paper mm.</param>
internal sealed record Rowed(Figure Figure, string Chain, int Row, double Low, double High)
{
    internal double Span => High - Low;
}

/// <summary>Which row of dimension lines each size of a side stands in.</summary>
internal static class DimensionRows
{
    /// <summary>Shorter ones inside longer ones, no two of a row over the same stretch, chains of one tier in one row where they can.</summary>
    internal static IReadOnlyList<Rowed> Assign(IEnumerable<(string Chain, Figure Figure)> figures, double scale)
    {
        var rows = new List<Rowed>();
        foreach (var (chain, figure) in figures
            .OrderBy(one => one.Figure.Measure.Tier).ThenBy(one => one.Figure.Measure.Value)
            .ThenBy(one => Rounding.Ends(one.Figure.Measure).Low).ThenBy(one => one.Figure.Measure.Id, StringComparer.Ordinal))
        {
            var (low, high) = Rounding.Ends(figure.Measure);
            (low, high) = (low / scale, high / scale);
            if (rows.Exists(other => Math.Abs(other.Low - low) < 0.01 && Math.Abs(other.High - high) < 0.01))
            {
                continue; // one size is shown once
            }

            var row = 0;
            foreach (var other in rows)
            {
                row = other.Low < high - 0.01 && low < other.High - 0.01 ? Math.Max(row, other.Row + 1) : row;
            }

            rows.Add(new(figure, chain, row, low, high));
        }

        return rows;
    }

    /// <summary>True for measures that run along the side's dimension lines.</summary>
    internal static bool Fits(Measure measure, Side side) =>
        measure.Axis == (side is Side.Below or Side.Above ? Axis.Horizontal : Axis.Vertical);
}

/// <summary>Where a row of dimension lines stands, with the outside on the left.</summary>
internal enum Side
{
    Below,
    Above,
    Roof,
    Weather,
}
