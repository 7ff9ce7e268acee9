using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>Level marks of the roof side in one column: arrow head on the level, value over the line, name under it.</summary>
internal static class Levels
{
    /// <summary>Least distance between two marks whose name stands under the line.</summary>
    private const double Spread = 8;

    private const double Head = 2;
    private const double Stem = 3.1;
    private const double Same = 0.05;

    /// <summary>Widest mark, mm.</summary>
    internal static double Width(AnnotationRequest request) =>
        Shown(request.Section).Select(level => WordsWidth(level, request.DatumAbove, request.View.TextSizes) + 2).DefaultIfEmpty(0).Max();

    private static double WordsWidth(Level level, double? datumAbove, TextSizes sizes) =>
        Math.Max(Letters.Width(Value(level, datumAbove), sizes.Notes), sizes.ByNotes(Head) + 1 + Letters.Width(level.Text, sizes.Notes)) * 1.03;

    /// <param name="column">x of the arrow heads.</param>
    /// <param name="dimensions">How far the dimensions of the side reach.</param>
    /// <param name="witnessed">Levels that a witness line of a dimension already reaches, with its end.</param>
    internal static void Place(Surface surface, AnnotationRequest request, double column, double dimensions, IReadOnlyList<(double At, double End)> witnessed)
    {
        var last = double.MinValue;
        foreach (var level in Shown(request.Section).OrderBy(level => level.Y).ThenBy(level => level.Name, StringComparer.Ordinal))
        {
            var y = level.Y / surface.Scale;
            var (at, width) = (Math.Max(y, last + surface.Sizes.ByNotes(Spread)), WordsWidth(level, request.DatumAbove, surface.Sizes) + 1);
            while (Top(at) <= surface.Zone.Top && !IsFree(surface, new(column, at, column + width, Top(at))))
            {
                at += Step;
            }

            if (Top(at) > surface.Zone.Top)
            {
                surface.Unplaced.Add(new("level", level.Name, "The column of levels is full."));
                continue;
            }

            last = at;
            surface.Group("dim.level", "level " + level.Name, () => Draw(surface, request, level, new(column, at), Start(surface, level, dimensions, witnessed), dimensions));
        }

        double Top(double at) => at + surface.Sizes.ByNotes(Stem + 4);
    }

    /// <summary>Off what the sheet itself has there, such as a centring mark, mm.</summary>
    private const double Clear = 1;

    private const double Step = 0.5;

    private static bool IsFree(Surface surface, PaperBox mark) =>
        mark.Grow(Clear) is var box && surface.Hard.TrueForAll(line => !Lines.Meets(box, line.From, line.To)) && surface.Texts.TrueForAll(text => !text.Meets(box));

    internal static string Value(Level level, double? datumAbove)
    {
        var metres = Math.Round(level.Y / 1000, 3, MidpointRounding.AwayFromZero);
        var sign = metres == 0 ? '±' : metres > 0 ? '+' : '\u2212';
        var value = sign + Math.Abs(metres).ToString("0.000", CultureInfo.InvariantCulture);
        return datumAbove is { } datum ? string.Create(CultureInfo.InvariantCulture, $"{value} ({datum + metres:0.000} AOD)") : value;
    }

    private static IEnumerable<Level> Shown(Section section) =>
        section.Levels.Where(level => level.Shown).GroupBy(level => Math.Round(level.Y, 1)).Select(same => same.OrderBy(level => level.Name == "finished-roof" ? 0 : 1).First());

    /// <summary>Where the line to the mark begins: after the dimensions that have a witness line there, else off the drawing.</summary>
    private static PaperPoint Start(Surface surface, Level level, double dimensions, IReadOnlyList<(double At, double End)> witnessed)
    {
        var y = level.Y / surface.Scale;
        var ends = witnessed.Where(one => Math.Abs(one.At - y) < Same).Select(one => one.End).ToArray();
        var right = surface.At(level.At).X;
        foreach (var shape in surface.Shapes.Where(shape => shape.Look != Look.Open))
        {
            foreach (var nudge in (ReadOnlySpan<double>)[-0.05, 0.05])
            {
                foreach (var (_, high) in shape.Spans(y + nudge, true))
                {
                    right = Math.Max(right, high);
                }
            }
        }

        // Through a figure it would be read as a strike: then it begins beyond the dimensions.
        var start = new PaperPoint(ends.Length > 0 ? ends.Max() : right + 1, y);
        var reach = Math.Max(dimensions, witnessed.Select(one => one.End).DefaultIfEmpty(right + 1).Max());
        return reach > start.X && surface.Texts.Exists(text => Lines.Meets(text.Grow(0.5), start, start with { X = reach })) ? start with { X = reach } : start;
    }

    private static void Draw(Surface surface, AnnotationRequest request, Level level, PaperPoint tip, PaperPoint start, double dimensions)
    {
        const string Row = "dim.level";
        var value = Value(level, request.DatumAbove);
        var (head, stem, width) = (surface.Sizes.ByNotes(Head), surface.Sizes.ByNotes(Stem), WordsWidth(level, request.DatumAbove, surface.Sizes) + 1);
        var lift = tip.Y - start.Y;

        // Rising only beyond the dimensions, whose figures it would strike through.
        var rise = Math.Min(Math.Max(tip.X - 3 - lift, dimensions), tip.X - 3);
        PaperPoint[] way = lift > 0.01
            ? [start, new(rise, start.Y), new(tip.X - 3, tip.Y), new(tip.X + head, tip.Y)]
            : [start, new(tip.X + head, tip.Y)];
        if (way.Length == 4 && way[1].X < start.X)
        {
            way = [start, new(tip.X - 3, tip.Y), new(tip.X + head, tip.Y)];
        }

        surface.Line(Row, way);
        PaperPoint left = tip + new PaperPoint(-head, head), right = tip + new PaperPoint(head, head);
        var datum = level.Y is > -0.5 and < 0.5;
        if (level.Finished || datum)
        {
            surface.Outline(Row, tip, left, right);
        }
        else
        {
            surface.Line(Row, left, tip, right);
        }

        if (datum)
        {
            surface.Black(Row, tip, surface.Mirrored ? left : right, tip + new PaperPoint(0, head));
        }

        var top = tip + new PaperPoint(0, stem);
        surface.Line(Row, tip + new PaperPoint(0, head), top, top + new PaperPoint(width, 0));
        surface.Words(Row, value, tip.X + 0.5, top.Y + surface.Sizes.ByNotes(0.9));
        surface.Words(Row, level.Text, tip.X + head + 0.6, tip.Y + surface.Sizes.ByNotes(0.35));
        for (var i = 0; i + 1 < way.Length; i++)
        {
            surface.Soft.Add((way[i], way[i + 1]));
        }

        surface.Hard.Add((tip, top));
        surface.Hard.Add((top, top + new PaperPoint(width, 0)));
        surface.Hard.Add((left, right));
    }
}
