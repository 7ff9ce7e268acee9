using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>A row of the layer map as a practice sets it.</summary>
/// <param name="WidthOnA1">mm; A1 moves one step up the series.</param>
public sealed record LayerLook(string Row, string Name, double Width, double WidthOnA1, string LineType, Ink Ink, bool Plotted);

/// <summary>The layer map: how every row looks. The drawing code knows row ids only.</summary>
public sealed record LayerMap(IReadOnlyList<LayerLook> Looks)
{
    /// <summary>Line widths, mm: ISO 128-2, from memory.</summary>
    private static readonly double[] Series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0];

    /// <summary>Border, outer rules of tables, lines under titles: they survive copying as they are, and wider ones would take the white beside the letters that stand between them.</summary>
    private static readonly string[] Ruled = ["frame", "frame.grid", "table.outer", "title.view"];

    /// <summary>A pattern is pressed by no more in a sign, or it would look like another.</summary>
    private const double Pressed = 0.78;

    /// <summary>The rows that these views and pages use, in the order of the map.</summary>
    /// <exception cref="KeyNotFoundException">An item names a row that the map lacks.</exception>
    /// <param name="forCopies">Every width one step up its series, but those of the sheet's own rules.</param>
    internal IReadOnlyList<LayerRow> Used(IEnumerable<Item> items, string paper, bool forCopies = false)
    {
        var rows = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            Collect(item, rows);
        }

        var found = Looks.Where(look => rows.Remove(look.Row))
            .Select(look => new LayerRow(look.Row, look.Name, Width(paper is "A1" or "ANSI-D" ? look.WidthOnA1 : look.Width, forCopies && !Ruled.Contains(look.Row)), look.LineType, look.Ink, look.Plotted))
            .ToList();
        return rows.Count == 0 ? found : throw new KeyNotFoundException($"The layer map has no row {string.Join(", ", rows.Order(StringComparer.Ordinal))}.");
    }

    /// <summary>How long the signs of these rows stand in a legend, so that a broken line shows two dashes there and what lies between; 0 where none is broken, mm.</summary>
    internal double Sign(IEnumerable<string> rows, string paper, bool forCopies)
    {
        var patterns = rows.SelectMany(row => Used([new Stroke(row, [])], paper, forCopies)).Select(Dashes.Pattern).Where(pattern => pattern.Length > 0);
        return patterns.Select(pattern => Pressed * (pattern.Sum() + pattern[0])).DefaultIfEmpty().Max();
    }

    private static double Width(double width, bool oneStepUp) => oneStepUp ? Series.FirstOrDefault(wider => wider > width + 1e-9, width) : width;

    private static void Collect(Item item, HashSet<string> rows)
    {
        rows.Add(item.Row);
        switch (item)
        {
            case Dimension dimension:
                rows.Add(dimension.TerminatorRow);
                break;
            case Group group:
                foreach (var inner in group.Items)
                {
                    Collect(inner, rows);
                }

                break;
            case Form form:
                foreach (var inner in form.Items.Concat(form.Values.Select(value => value.Text)))
                {
                    Collect(inner, rows);
                }

                break;
        }
    }
}
