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
        Title + Math.Ceiling(entries.Count / Math.Floor(width / Column)) * Pitch + Lines(shortForms, width).Count * LinePitch + 2;

    internal static IReadOnlyList<Item> Lay(IReadOnlyList<KeyEntry> entries, IReadOnlyList<string> shortForms, PaperBox zone)
    {
        var columns = (int)Math.Floor(zone.Width / Column);
        var rows = (int)Math.Ceiling(entries.Count / (double)columns);
        List<Item> items = [new Text("key", "Key", new(zone.Left, zone.Top - 4.3), 3.5)];
        for (var i = 0; i < entries.Count; i++)
        {
            var corner = new PaperPoint(zone.Left + i / rows * Column, zone.Top - Title - i % rows * Pitch - SwatchHeight - 0.5);
            items.AddRange(entries[i].Picture.Select(item => Moving.By(item, corner)));
            var lines = Wrapping.Wrap(entries[i].Words, Table.Text, (Column - SwatchWidth - 3) / Table.Slack);
            for (var line = 0; line < lines.Count; line++)
            {
                var lift = (SwatchHeight - Table.Text) / 2 + (lines.Count - 1) * LinePitch / 2 - line * LinePitch;
                items.Add(new Text("key", lines[line], corner + new PaperPoint(SwatchWidth + 2, lift), Table.Text));
            }
        }

        var y = zone.Top - Title - rows * Pitch - 3.4;
        foreach (var line in Lines(shortForms, zone.Width))
        {
            items.Add(new Text("key", line, new(zone.Left, y), Table.Text));
            y -= LinePitch;
        }

        return items;
    }

    private static IReadOnlyList<string> Lines(IReadOnlyList<string> shortForms, double width) =>
        shortForms.Count == 0 ? [] : Wrapping.Wrap(string.Join("; ", shortForms), Table.Text, width / Table.Slack);
}
