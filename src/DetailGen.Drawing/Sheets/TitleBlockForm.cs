using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>The title block: as wide as its zone, which is 180 on most sheets, so that it fits A4.</summary>
/// <remarks>Fields following the principles of ISO 7200:2004 (front matter read, field table from memory).</remarks>
internal static class TitleBlockForm
{
    private const string Kind = "Construction detail";

    /// <summary>Any date: figures are of one width.</summary>
    private const string ADate = "0000-00-00";

    /// <summary>From the upper rule of a field to the letters of its label; less where the value would touch it in a low field.</summary>
    private static double LabelOff(TextSizes sizes) => Math.Min(0.9, Low(sizes) - ValueAndLabel(sizes));

    /// <summary>Height of the low fields: higher letters take of the fields under them.</summary>
    private static double Low(TextSizes sizes) => Math.Max(8, ValueAndLabel(sizes) + 0.9);

    private static double ValueAndLabel(TextSizes sizes) =>
        Lowest(sizes) + sizes.Typeface.Rise(sizes.Notes) + 0.15 + sizes.Typeface.Hang(sizes.FieldLabels) + sizes.FieldLabels;

    /// <summary>The base line in a low field: what hangs keeps off the rule.</summary>
    private static double Lowest(TextSizes sizes) => Math.Max(1.2, sizes.Typeface.Hang(sizes.Notes) + 0.36);

    /// <summary>Base line of the lowest row: large letters that hang keep off the frame.</summary>
    private const double Foot = 2.3;

    /// <summary>Most that a logo takes of the legal owner's field across, and the white round it; mm.</summary>
    private const double LogoWidth = 50, SlimLogoWidth = 20, LogoClear = 1.2;

    private sealed record Field(string Tag, double Left, double Bottom, double Right, double Top, string Label, string Value, double Height, double Lift);

    /// <param name="zone">Of the block on the page, which it fills from side to side.</param>
    /// <param name="slim">The lower block of A4, with owner, project and status in one row.</param>
    internal static Form Of(TextSizes sizes, TitleBlock title, string scale, string paper, string sheet, PaperBox zone, bool slim, Logo? logo = null)
    {
        var (corner, width) = (new PaperPoint(zone.Left, zone.Bottom), zone.Width);
        var fields = Fields(sizes, title, scale, paper, sheet, width, slim);
        PaperBox? mark = null;
        if (logo is not null)
        {
            // Beside the legal owner, whose words keep off it.
            var owner = fields.Find(field => field.Tag == "OWNER")!;
            var box = new PaperBox(owner.Right - (slim ? SlimLogoWidth : LogoWidth), owner.Bottom, owner.Right, owner.Top).Grow(-LogoClear);
            mark = box with { Left = box.Right - logo.WidthIn(box.Width, box.Height) };
            fields = [.. fields.Select(field => field.Tag is "OWNER" or "ADDRESS" ? field with { Right = mark.Value.Left } : field)];
        }

        var top = fields.Max(field => field.Top);
        var items = new List<Item>();
        foreach (var field in fields.Where(field => field.Label.Length > 0))
        {
            items.Add(new Text("block.label", field.Label, corner + new PaperPoint(field.Left + 1, field.Top - LabelOff(sizes) - sizes.FieldLabels), sizes.FieldLabels));
        }

        foreach (var (from, to) in Rules(fields, width))
        {
            items.Add(Frame.Line("table.inner", corner + from, corner + to));
        }

        if (mark is { } room)
        {
            items.AddRange(logo!.In(room.Shift(corner)));
        }

        items.Add(Frame.Box("table.outer", new(corner.X, corner.Y, corner.X + width, corner.Y + top)));
        return new("block.value", "title-block", items, [.. fields.SelectMany(field => Values(sizes, field, corner))]);
    }

    /// <summary>Height of the block in mm.</summary>
    internal static double Height(bool slim) => slim ? 44 : 56;

    private static List<Field> Fields(TextSizes sizes, TitleBlock t, string scale, string paper, string sheet, double width, bool slim)
    {
        var (small, middle, large) = (sizes.Notes, sizes.Titles, sizes.Numbers);
        var c = slim ? 32 : 34;

        // The fields of kind, scale, paper and approval are as wide as their words, at the cost of those beside them.
        var kind = Math.Max(34, Math.Ceiling(Needed(sizes, Kind, small)));
        var of = Math.Min(165, Math.Floor(width - Needed(sizes, paper, small)));
        var approved = Math.Clamp(Math.Floor(166 - Needed(sizes, t.Approved, small)), 120, 132);
        var above = slim ? 1.1 : 1.4;
        var drawnBy = Math.Max(64, Math.Ceiling(Needed(sizes, scale, small)) + Math.Ceiling(Needed(sizes, ADate, small)));
        var issued = Math.Max(34, drawnBy - Math.Max(30, Math.Ceiling(Needed(sizes, ADate, small))));
        var title = AsHigh(sizes, middle, small, slim ? 4.9 : 6, above, c - 20);
        var owner = t.Address.Length > 0 ? AsHigh(sizes, middle, small, 5.3, 1.3, 12) : (Height: middle, Lift: 3);
        var (low, lowest) = (20 - Low(sizes), Lowest(sizes));
        List<Field> fields =
        [
            new("DOCUMENT-TYPE", 0, 0, kind, low, "Document type", Kind, small, Foot),
            new("NUMBER", kind, 0, 106, low, "Number", t.Number, t.Number.Length > 17 ? Fitting(sizes, t.Number, 106 - kind, middle, small) : Fitting(sizes, t.Number, 106 - kind, large, middle, small), Foot),
            new("STATUS", 106, 0, 124, low, "Status", t.Status, large, Foot),
            new("REVISION", 124, 0, of - 15, low, "Revision", t.Revision, t.Revision.Length > 3 ? Fitting(sizes, t.Revision, of - 139, middle, small) : large, Foot),
            new("SHEET", of - 15, 0, of, low, "Sheet", sheet, Fitting(sizes, sheet, 15, middle, small), Foot),
            new("PAPER", of, 0, width, low, "Paper", paper, Fitting(sizes, paper, width - of, middle, small), Foot),
            new("SCALE", 0, low, issued, 20, "Scale", scale, small, lowest),
            new("DATE", issued, low, drawnBy, 20, "Date of issue", t.Date, small, lowest),
            new("DRAWN", drawnBy, low, 98, 20, "Drawn", t.Drawn, small, lowest),
            new("CHECKED", 98, low, approved, 20, "Checked", t.Checked, small, lowest),
            new("APPROVED", approved, low, 166, 20, "Approved", t.Approved, small, lowest),
            new("UNITS", 166, low, width, 20, "Units", "mm", small, lowest),
            new("TITLE", 0, 20, width, c, "Title", t.Title, title.Height, title.Lift),
            new("SUBTITLE", 0, 20, width, c, "", t.Subtitle, small, above),
        ];
        if (slim)
        {
            fields.Add(new("OWNER", 0, 32, 60, 44, "Legal owner", t.Owner, small, 4.6));
            fields.Add(new("PROJECT", 60, 32, 120, 44, "Project", t.Project, small, 4.6));
            fields.Add(new("STATUS-TEXT", 120, 32, width, 44, "", t.StatusText, small, 6.6));
        }
        else
        {
            // What the status allows is said in full, as far as the project's name leaves room.
            var split = 112.0;
            while (split - 4 >= Needed(sizes, t.Project, small) && sizes.Typeface.Wrap(t.StatusText, small, (width - split - 2) / Table.Slack).Count > 2)
            {
                split -= 4;
            }

            fields.Add(new("PROJECT", 0, 34, split, 44, "Project", t.Project, small, 1.8));
            fields.Add(new("STATUS-TEXT", split, 34, width, 44, "", t.StatusText, small, 6));
            fields.Add(new("OWNER", 0, 44, width, 56, "Legal owner", t.Owner, owner.Height, owner.Lift));
            if (t.Address.Length > 0)
            {
                fields.Add(new("ADDRESS", 0, 44, width, 56, "", t.Address, small, 1.3));
            }
        }

        return fields;
    }

    private static double Needed(TextSizes sizes, string words, double height) => sizes.Typeface.Width(words, height) * Table.Slack + 2;

    /// <summary>The first height in which the words fit a field so wide, else the last.</summary>
    private static double Fitting(TextSizes sizes, string words, double width, params IReadOnlyList<double> heights) => heights.FirstOrDefault(height => Needed(sizes, words, height) <= width, heights[^1]);

    /// <summary>The upper of two lines in a field: clear of the one below it, in the higher letters where the field holds them.</summary>
    /// <param name="lift">Of its base line where the letters leave room.</param>
    /// <param name="below">Base line of the lower.</param>
    private static (double Height, double Lift) AsHigh(TextSizes sizes, double height, double lower, double lift, double below, double field)
    {
        const double Least = 0.3;
        double Lift(double own) => Math.Max(lift, below + sizes.Typeface.Rise(lower) + sizes.Typeface.Hang(own) + 0.034 * lower);
        return Lift(height) + sizes.Typeface.Rise(height) <= field - Least ? (height, Lift(height)) : (lower, Lift(lower));
    }

    // A value beside its label, where it would touch it from below; one too long for its box goes on below where there are two lines, else it ends in an ellipsis; text is never shrunk.
    private static IEnumerable<FormValue> Values(TextSizes sizes, Field field, PaperPoint corner)
    {
        var laid = Laid(sizes, field, 1);
        var under = field.Top - field.Bottom - LabelOff(sizes) - sizes.FieldLabels - sizes.Typeface.Hang(sizes.FieldLabels);
        if (field.Label.Length > 0 && laid.Lift + sizes.Typeface.Rise(field.Height) > under)
        {
            laid = Laid(sizes, field, 3 + sizes.Typeface.Width(field.Label, sizes.FieldLabels));
        }

        for (var i = 0; i < laid.Lines.Count; i++)
        {
            var at = corner + new PaperPoint(laid.Left, field.Bottom + laid.Lift - i * laid.Pitch);
            yield return new(i == 0 ? field.Tag : field.Tag + "-2", new Text("block.value", laid.Lines[i], at, field.Height));
        }
    }

    private static (IReadOnlyList<string> Lines, double Left, double Lift, double Pitch) Laid(TextSizes sizes, Field field, double inset)
    {
        var left = field.Left + inset;
        var width = (field.Right - left - 1) / Table.Slack;
        var value = field.Value.Length == 0 && field.Label.Length > 0 ? "–" : field.Value;
        var lines = sizes.Typeface.Wrap(value, field.Height, width);
        var room = field.Tag is "STATUS-TEXT" or "OWNER" or "PROJECT" && field.Lift > 4 ? 2 : 1;
        var (lift, pitch) = (field.Lift, 1.5 * field.Height);
        if (Math.Min(lines.Count, room) == 2 && lift - pitch < sizes.Typeface.Hang(field.Height))
        {
            // Two lines that would hang through the foot of the field stand closer and higher in it.
            pitch = 1.4 * field.Height;
            lift = Math.Max(lift, pitch + sizes.Typeface.Hang(field.Height) + 0.15);
        }

        return ([.. lines.Take(room).Select((line, i) => i == room - 1 && lines.Count > room ? Shortened(sizes, string.Join(' ', lines.Skip(i)), field.Height, width) : line)], left, lift, pitch);
    }

    private static string Shortened(TextSizes sizes, string words, double height, double width)
    {
        var kept = words;
        while (kept.Length > 1 && sizes.Typeface.Width(kept + "…", height) > width)
        {
            kept = kept[..^1];
        }

        return kept.TrimEnd() + "…";
    }

    private static IEnumerable<(PaperPoint From, PaperPoint To)> Rules(List<Field> fields, double width)
    {
        foreach (var level in fields.Select(field => field.Bottom).Where(level => level > 0).Distinct())
        {
            yield return (new(0, level), new(width, level));
        }

        foreach (var (left, bottom, top) in fields.Where(field => field.Left > 0).Select(field => (field.Left, field.Bottom, field.Top)).Distinct())
        {
            yield return (new(left, bottom), new(left, top));
        }
    }
}
