using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Curves;

/// <summary>Draws figures against one size: axes under each other over one scale, made of the same items as a sheet.</summary>
public static class CurvePicture
{
    private const double Width = 180;
    private const double Margin = 8;
    private const double Left = 30; // to the axes: title and figures of the upright axis
    private const double Tall = 58; // of one axis
    private const double Between = 8;
    private static readonly double Text = TextSizes.Usual.Notes;
    private static readonly double Title = TextSizes.Usual.Titles;
    private const double Pitch = 4.25;
    private const double Bound = 2.4; // of the mark of a size that is sold

    /// <summary>A picture of one page, as high as it needs.</summary>
    public static Scene Compose(CurveText text, Typeface typeface, LayerMap map, Identity identity, bool forCopies = false)
    {
        PaperBox Plot(int axis) => new(Left, -((axis + 1) * Tall) - (axis * Between), Width - Margin, -(axis * (Tall + Between)));
        var across = Ticks.Over(text.Stations.Min(station => station.Value), text.Stations.Max(station => station.Value), 8);
        var items = new List<Item>();
        for (var i = 0; i < text.Axes.Count; i++)
        {
            items.AddRange(Axis(text, typeface, text.Axes[i], across, Plot(i)));
        }

        var foot = Plot(text.Axes.Count - 1);
        items.AddRange(Across(text, across, foot));
        items.AddRange(Words(text, typeface, foot.Bottom - 16, out var bottom));
        var head = text.Subtitle.Count * Pitch;
        items.Add(new Text("title.view", text.Title, new(Margin, head + 8), Title));
        items.Add(new Paragraph("note.text", text.Subtitle, new(Margin, head + 2.5), Text, Pitch));
        var height = Math.Ceiling(head + 8 + Title + Margin - bottom + Margin);
        PaperPoint up = new(0, height - (head + 8 + Title + Margin));
        Page page = new(1, "view", Width, height, [], [.. items.Select(item => Moving.By(item, up))]);
        return new(map.Used(page.Items, "A4", forCopies), [], [page], identity) { Typeface = typeface };
    }

    private static IEnumerable<Item> Axis(CurveText text, Typeface typeface, CurveAxis axis, Ticks across, PaperBox plot)
    {
        var up = Ticks.Over(axis.Values.Concat(axis.Limits.Select(limit => limit.Value)).Min(), axis.Values.Concat(axis.Limits.Select(limit => limit.Value)).Max(), 5);
        PaperPoint At(double x, double y) => new(Share(x, across, plot.Left, plot.Right), Share(y, up, plot.Bottom, plot.Top));
        foreach (var value in up.Values)
        {
            var y = At(across.Least, value).Y;
            yield return Frame.Line("analysis.model", new(plot.Left, y), new(plot.Right, y));
            yield return new Text("analysis.figure", up.Written(value), new(plot.Left - 2, y - (Text / 2)), Text, Align.Right);
        }

        foreach (var value in across.Values)
        {
            var x = At(value, up.Least).X;
            yield return Frame.Line("analysis.model", new(x, plot.Bottom), new(x, plot.Top));
        }

        yield return Frame.Box("table.inner", plot);
        yield return new Text("note.text", axis.Title, new(Margin + Text, (plot.Bottom + plot.Top) / 2), Text, Align.Centre, 90);
        PaperPoint[] points = [.. text.Stations.Select((station, i) => At(station.Value, axis.Values[i]))];
        for (var i = 1; i < points.Length; i++)
        {
            // a thin line leads over what cannot be chosen
            yield return Frame.Line(text.Stations[i].GoesOn ? "analysis.line" : "analysis.model", points[i - 1], points[i]);
        }

        foreach (var point in points)
        {
            yield return new Dot("analysis.line", point, 1.2);
        }

        foreach (var item in Limits(typeface, axis, points, value => At(across.Least, value).Y, plot))
        {
            yield return item;
        }

        if (text.Drawn is { } drawn && drawn >= across.Least && drawn <= across.Most)
        {
            var x = At(drawn, up.Least).X;
            yield return new Stroke("centre", [new(x, plot.Bottom), new(x, plot.Top)]);
        }
    }

    // The words stand above their line or below it, at the end where the curve and other words leave the most white.
    private static IEnumerable<Item> Limits(Typeface typeface, CurveAxis axis, PaperPoint[] points, Func<double, double> at, PaperBox plot)
    {
        var taken = new List<PaperBox>();
        foreach (var limit in axis.Limits)
        {
            var y = at(limit.Value);
            var width = typeface.Width(limit.Words, Text) * 1.06;
            PaperBox Box(bool above, bool right) => right ? new(plot.Right - 2 - width, above ? y + 0.8 : y - 0.8 - Text, plot.Right - 2, above ? y + 0.8 + Text : y - 0.8)
                : new(plot.Left + 2, above ? y + 0.8 : y - 0.8 - Text, plot.Left + 2 + width, above ? y + 0.8 + Text : y - 0.8);
            PaperBox[] boxes = [Box(true, true), Box(false, true), Box(true, false), Box(false, false)];
            double White(PaperBox box) => taken.Exists(other => other.Meets(box)) || box.Top > plot.Top || box.Bottom < plot.Bottom ? -1
                : points.Min(point => double.Hypot(Math.Max(0, Math.Max(box.Left - point.X, point.X - box.Right)), Math.Max(0, Math.Max(box.Bottom - point.Y, point.Y - box.Top))));
            var best = boxes.MaxBy(White);
            taken.Add(best);
            yield return new Stroke("analysis.limit", [new(plot.Left, y), new(plot.Right, y)]);
            yield return new Text("note.text", limit.Words, new(best.Left, best.Bottom), Text);
        }
    }

    private static IEnumerable<Item> Across(CurveText text, Ticks across, PaperBox plot)
    {
        double At(double value) => Share(value, across, plot.Left, plot.Right);
        foreach (var value in across.Values)
        {
            yield return new Text("analysis.figure", across.Written(value), new(At(value), plot.Bottom - 3.4 - Text), Text, Align.Centre);
        }

        foreach (var value in text.Stocked)
        {
            yield return Mark(new(At(value), plot.Bottom));
        }

        yield return new Text("note.text", text.Across, new((plot.Left + plot.Right) / 2, plot.Bottom - 11), Text, Align.Centre);
    }

    // A triangle under the axis.
    private static Solid Mark(PaperPoint tip) => new("analysis.figure", [tip, tip - new PaperPoint(Bound / 2, Bound), tip + new PaperPoint(Bound / 2, -Bound)], []);

    private static List<Item> Words(CurveText text, Typeface typeface, double top, out double bottom)
    {
        var items = new List<Item>();
        var y = top;
        void Sign(string words, params ReadOnlySpan<Item> sign)
        {
            foreach (var item in sign)
            {
                items.Add(Moving.By(item, new(Left, y - 2)));
            }

            items.Add(new Text("key", words, new(Left + 19, y - 3.2), Text));
            y -= Pitch + 0.5;
        }

        Sign("calculated values, each with the other sizes that go with it", Frame.Line("analysis.line", new(0, 0), new(16, 0)), new Dot("analysis.line", new(4, 0), 1.2), new Dot("analysis.line", new(12, 0), 1.2));
        if (text.Stations.Skip(1).Any(station => !station.GoesOn))
        {
            Sign("between values of which those between cannot be chosen", Frame.Line("analysis.model", new(0, 0), new(16, 0)));
        }

        if (text.Stocked.Count > 0)
        {
            Sign("sizes that are sold", Mark(new(8, Bound / 2)));
        }

        if (text.Drawn is not null)
        {
            Sign("as the detail is drawn", new Stroke("centre", [new(0, 0), new(16, 0)]));
        }

        if (text.Axes.Any(axis => axis.Limits.Count > 0))
        {
            Sign("what a rule or target asks", new Stroke("analysis.limit", [new(0, 0), new(16, 0)]));
        }

        y -= 2;
        foreach (var note in text.Notes)
        {
            var lines = typeface.Wrap(note, Text, (Width - (2 * Margin)) / Table.Slack);
            items.Add(new Paragraph("block.notes", lines, new(Margin, y - 3.2), Text, Pitch));
            y -= (lines.Count * Pitch) + 1;
        }

        bottom = y;
        return items;
    }

    private static double Share(double value, Ticks ticks, double from, double to) => from + ((value - ticks.Least) / (ticks.Most - ticks.Least) * (to - from));
}
