using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The title block: 180 wide on every sheet, so that it fits A4.</summary>
/// <remarks>Fields following the principles of ISO 7200:2004 (front matter read, field table from memory).</remarks>
internal static class TitleBlockForm
{
    private const double Label = 1.8;
    private const double Small = 2.5;
    private const double Middle = 3.5;
    private const double Large = 5;
    private const double SheetWidth = 13;

    /// <summary>Base line of the lowest row: large letters that hang keep off the frame.</summary>
    private const double Foot = 2.3;

    private sealed record Field(string Tag, double Left, double Bottom, double Right, double Top, string Label, string Value, double Height, double Lift = 1.2);

    /// <param name="corner">Lower left corner of the block on the page.</param>
    /// <param name="slim">The lower block of A4, with owner, project and status in one row.</param>
    internal static Form Of(TitleBlock title, string scale, string paper, string sheet, PaperPoint corner, bool slim)
    {
        var fields = Fields(title, scale, paper, sheet, slim);
        var top = fields.Max(field => field.Top);
        var items = new List<Item>();
        foreach (var field in fields.Where(field => field.Label.Length > 0))
        {
            items.Add(new Text("block.label", field.Label, corner + new PaperPoint(field.Left + 1, field.Top - 0.9 - Label), Label));
        }

        foreach (var (from, to) in Rules(fields))
        {
            items.Add(Frame.Line("table.inner", corner + from, corner + to));
        }

        items.Add(Frame.Box("table.outer", new(corner.X, corner.Y, corner.X + 180, corner.Y + top)));
        return new("block.value", "title-block", items, [.. fields.SelectMany(field => Values(field, corner))]);
    }

    /// <summary>Height of the block in mm.</summary>
    internal static double Height(bool slim) => slim ? 44 : 56;

    private static List<Field> Fields(TitleBlock t, string scale, string paper, string sheet, bool slim)
    {
        var c = slim ? 32 : 34;
        var last = Letters.Width(paper, Small) > SheetWidth / Table.Slack ? 163 : 165; // a name of several letters takes of the box before it
        List<Field> fields =
        [
            new("DOCUMENT-TYPE", 0, 0, 34, 12, "Document type", "Construction detail", Small, Foot),
            new("NUMBER", 34, 0, 106, 12, "Number", t.Number, t.Number.Length > 17 ? Middle : Large, Foot),
            new("STATUS", 106, 0, 124, 12, "Status", t.Status, Large, Foot),
            new("REVISION", 124, 0, 150, 12, "Revision", t.Revision, t.Revision.Length > 3 ? Middle : Large, Foot),
            new("SHEET", 150, 0, last, 12, "Sheet", sheet, Letters.Width(sheet, Middle) > (last - 152) / Table.Slack ? Small : Middle, Foot),
            new("PAPER", last, 0, 180, 12, "Paper", paper, Letters.Width(paper, Middle) > SheetWidth / Table.Slack ? Small : Middle, Foot),
            new("SCALE", 0, 12, 34, 20, "Scale", scale, Small),
            new("DATE", 34, 12, 64, 20, "Date of issue", t.Date, Small),
            new("DRAWN", 64, 12, 98, 20, "Drawn", t.Drawn, Small),
            new("CHECKED", 98, 12, 132, 20, "Checked", t.Checked, Small),
            new("APPROVED", 132, 12, 166, 20, "Approved", t.Approved, Small),
            new("UNITS", 166, 12, 180, 20, "Units", "mm", Small),
            new("TITLE", 0, 20, 180, c, "Title", t.Title, Middle, slim ? 4.9 : 6),
            new("SUBTITLE", 0, 20, 180, c, "", t.Subtitle, Small, slim ? 1.1 : 1.4),
        ];
        if (slim)
        {
            fields.Add(new("OWNER", 0, 32, 60, 44, "Legal owner", t.Owner, Small, 4.6));
            fields.Add(new("PROJECT", 60, 32, 120, 44, "Project", t.Project, Small, 4.6));
            fields.Add(new("STATUS-TEXT", 120, 32, 180, 44, "", t.StatusText, Small, 6.6));
        }
        else
        {
            fields.Add(new("PROJECT", 0, 34, 112, 44, "Project", t.Project, Small, 1.8));
            fields.Add(new("STATUS-TEXT", 112, 34, 180, 44, "", t.StatusText, Small, 6));
            fields.Add(new("OWNER", 0, 44, 180, 56, "Legal owner", t.Owner, Middle, t.Address.Length > 0 ? 5.3 : 3));
            if (t.Address.Length > 0)
            {
                fields.Add(new("ADDRESS", 0, 44, 180, 56, "", t.Address, Small, 1.3));
            }
        }

        return fields;
    }

    // A value too long for its box goes on below where there are two lines, else it ends in an ellipsis; text is never shrunk.
    private static IEnumerable<FormValue> Values(Field field, PaperPoint corner)
    {
        var width = (field.Right - field.Left - 2) / Table.Slack;
        var value = field.Value.Length == 0 && field.Label.Length > 0 ? "–" : field.Value;
        var lines = Wrapping.Wrap(value, field.Height, width);
        var room = field.Tag is "STATUS-TEXT" or "OWNER" or "PROJECT" && field.Lift > 4 ? 2 : 1;
        for (var i = 0; i < Math.Min(lines.Count, room); i++)
        {
            var words = i == room - 1 && lines.Count > room ? Shortened(string.Join(' ', lines.Skip(i)), field.Height, width) : lines[i];
            var at = corner + new PaperPoint(field.Left + 1, field.Bottom + field.Lift - i * 1.5 * field.Height);
            yield return new(i == 0 ? field.Tag : field.Tag + "-2", new Text("block.value", words, at, field.Height));
        }
    }

    private static string Shortened(string words, double height, double width)
    {
        var kept = words;
        while (kept.Length > 1 && Letters.Width(kept + "…", height) > width)
        {
            kept = kept[..^1];
        }

        return kept.TrimEnd() + "…";
    }

    private static IEnumerable<(PaperPoint From, PaperPoint To)> Rules(List<Field> fields)
    {
        foreach (var level in fields.Select(field => field.Bottom).Where(level => level > 0).Distinct())
        {
            yield return (new(0, level), new(180, level));
        }

        foreach (var (left, bottom, top) in fields.Where(field => field.Left > 0).Select(field => (field.Left, field.Bottom, field.Top)).Distinct())
        {
            yield return (new(left, bottom), new(left, top));
        }
    }
}
