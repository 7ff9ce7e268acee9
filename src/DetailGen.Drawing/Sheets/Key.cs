using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>An entry of the key: a little picture, made by the code that draws the view, and its words.</summary>
/// <param name="Picture">Items in a box of 10 × 5 whose lower left corner is the origin.</param>
internal sealed record KeyEntry(string Words, IReadOnlyList<Item> Picture);

/// <summary>The key: exactly what occurs on the sheet, in columns.</summary>
internal static class Key
{
    internal const double SwatchWidth = 10;
    internal const double SwatchHeight = 5;
    private const double Column = 40;
    private const double Pitch = 8;
    private const double Title = 6.5;
    private const double LinePitch = 3.75;

    /// <summary>Height that the key takes in a zone of this width, mm.</summary>
    internal static double HeightIn(double width, IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms) =>
        Title + Grid(width, entries).Sum() + Lines(shortForms, width).Count * LinePitch + 2;

    internal static IReadOnlyList<Item> Lay(IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms, PaperBox zone)
    {
        var heights = Grid(zone.Width, entries);
        List<Item> items = [new Text("key", "Key", new(zone.Left, zone.Top - 4.3), 3.5)];
        for (var i = 0; i < entries.Count; i++)
        {
            var (column, row) = (i / heights.Length, i % heights.Length);
            var corner = new PaperPoint(zone.Left + column * Column, zone.Top - Title - heights.Take(row).Sum() - (heights[row] + SwatchHeight) / 2);
            items.AddRange(entries[i].Picture.Select(item => Moving.By(item, corner)));
            var lines = Words(entries[i]);
            for (var line = 0; line < lines.Count; line++)
            {
                var lift = (SwatchHeight - Table.Text) / 2 + (lines.Count - 1) * LinePitch / 2 - line * LinePitch;
                items.Add(new Text("key", lines[line], corner + new PaperPoint(SwatchWidth + 2, lift), Table.Text));
            }
        }

        var y = zone.Top - Title - heights.Sum() - 3.4;
        foreach (var line in Lines(shortForms, zone.Width))
        {
            items.Add(new Text("key", line, new(zone.Left, y), Table.Text));
            y -= LinePitch;
        }

        return items;
    }

    // Entries run down the columns; a row is as high as its longest words.
    private static double[] Grid(double width, IReadOnlyList<KeyEntry> entries)
    {
        var columns = Math.Max(1, (int)Math.Floor((width + 2) / Column));
        var rows = (int)Math.Ceiling(entries.Count / (double)columns);
        var heights = new double[rows];
        for (var i = 0; i < entries.Count; i++)
        {
            heights[i % rows] = Math.Max(heights[i % rows], Math.Max(Pitch, Words(entries[i]).Count * LinePitch + 2));
        }

        return heights;
    }

    private static IReadOnlyList<string> Words(KeyEntry entry) => Wrapping.Wrap(entry.Words, Table.Text, (Column - SwatchWidth - 3) / Table.Slack);

    private static IReadOnlyList<string> Lines(IReadOnlyList<string> shortForms, double width) =>
        shortForms.Count == 0 ? [] : Wrapping.Wrap(string.Join("; ", shortForms), Table.Text, width / Table.Slack);
}
