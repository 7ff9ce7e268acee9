using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>
/// The paper while it fills: what is drawn, what is taken. All coordinates that go in have the outside on the left; a mirrored view turns them round on the way to the items,
/// so that a mirrored sheet has the mirrored layout and text stays readable.
/// </summary>
internal sealed class Surface
{
    private readonly List<Item> _items = [];
    private List<Item>? _group;

    internal Surface(AnnotatedView view)
    {
        Mirrored = view.Mirrored;
        Scale = view.Scale;
        Sizes = view.TextSizes;
        Zone = Turn(view.Zone);
        Shapes = [.. view.Parts.Select(part => new Shape(part, view.Mirrored)).Where(shape => !shape.IsEmpty).OrderBy(shape => shape.Id, StringComparer.Ordinal)];
        foreach (var shape in Shapes)
        {
            ById.Add(shape.Id, shape);
        }

        var solids = Shapes.Where(shape => shape.Look != Look.Open).ToArray();
        Drawn = solids.Length == 0 ? new(0, 0, 0, 0) : solids.Select(shape => shape.Box).Aggregate((a, b) => a.With(b));
        Keep(view.Lines);
        DrawnWithBreaks = Hard.Select(line => Around(line.From, line.To)).Aggregate(Drawn, (a, b) => a.With(b));
        SheetLines = [.. view.SheetLines.SelectMany(PiecesOf)];
        Hard.AddRange(SheetLines);
        Edges = new(view.Drawn.SelectMany(PiecesOf));
        Texts.AddRange(view.Taken.Select(Turn));
    }

    private void Keep(IReadOnlyList<Stroke> lines) => Hard.AddRange(lines.SelectMany(PiecesOf));

    internal IEnumerable<(PaperPoint From, PaperPoint To)> PiecesOf(Stroke line)
    {
        for (var i = line.Closed ? 0 : 1; i < line.Points.Count; i++)
        {
            yield return (Turn(line.Points[i == 0 ? line.Points.Count - 1 : i - 1]), Turn(line.Points[i]));
        }
    }

    internal bool Mirrored { get; }

    internal double Scale { get; }

    internal TextSizes Sizes { get; }

    internal PaperBox Zone { get; }

    internal Shape[] Shapes { get; }

    internal SortedDictionary<string, Shape> ById { get; } = new(StringComparer.Ordinal);

    /// <summary>Around all that is drawn of the parts.</summary>
    internal PaperBox Drawn { get; }

    internal PaperBox DrawnWithBreaks { get; }

    /// <summary>What no leader may run along.</summary>
    internal DrawnLines Edges { get; }

    /// <summary>Lines of the sheet that reach into the zone.</summary>
    internal IReadOnlyList<(PaperPoint From, PaperPoint To)> SheetLines { get; }

    /// <summary>Boxes of text that stands.</summary>
    internal List<PaperBox> Texts { get; } = [];

    /// <summary>Lines that neither text nor leader may meet.</summary>
    internal List<(PaperPoint From, PaperPoint To)> Hard { get; } = [];

    /// <summary>Witness lines: text keeps off, a leader may cross at 30° or more.</summary>
    internal List<(PaperPoint From, PaperPoint To)> Soft { get; } = [];

    /// <summary>Oblique strokes at the ends of dimension lines, and ticks to their figures: text keeps off, leaders may cross.</summary>
    internal List<(PaperPoint From, PaperPoint To)> Strokes { get; } = [];

    /// <summary>How far text keeps off such a stroke, which is drawn half a millimetre wide; mm.</summary>
    internal const double StrokeGap = 0.65;

    /// <summary>Ends of leaders and dots of stack notes.</summary>
    internal List<PaperPoint> Tips { get; } = [];

    internal IReadOnlyList<Item> Items => _items;

    internal List<Unplaced> Unplaced { get; } = [];

    /// <summary>Sizes for which there was no white, to be told by the note of a part.</summary>
    internal List<(string PartId, string Words)> Told { get; } = [];

    internal PaperPoint Turn(PaperPoint point) => Mirrored ? new(-point.X, point.Y) : point;

    internal PaperBox Turn(PaperBox box) => Mirrored ? new(-box.Right, box.Bottom, -box.Left, box.Top) : box;

    /// <summary>Model mm to paper, the outside on the left.</summary>
    internal PaperPoint At(Sections.Point model) => new(model.X / Scale, model.Y / Scale);

    internal static PaperBox Around(PaperPoint a, PaperPoint b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    /// <summary>What is added inside makes one group.</summary>
    internal void Group(string row, string name, Action draw, string? partId = null)
    {
        _group = [];
        draw();
        var items = _group;
        _group = null;
        _items.Add(new Group(row, name, items) { PartId = partId });
    }

    internal void Add(Item item) => (_group ?? _items).Add(item);

    internal void Line(string row, params IReadOnlyList<PaperPoint> points) => Add(new Stroke(row, [.. points.Select(Turn)]));

    internal void Outline(string row, params IReadOnlyList<PaperPoint> points) => Add(new Stroke(row, [.. points.Select(Turn)], true));

    internal void Black(string row, params IReadOnlyList<PaperPoint> points) => Add(new Solid(row, [.. points.Select(Turn)], []));

    internal void Dot(string row, PaperPoint at, double diameter) => Add(new Dot(row, Turn(at), diameter));

    /// <summary>A dimension, with its lines as they are drawn; figure and witness lines are its placer's.</summary>
    internal void Size(Dimension dimension)
    {
        Add(dimension);
        var picture = Scenes.Dimensions.Picture(dimension, Sizes.Typeface);
        Keep([picture.Line]);
        Strokes.AddRange(picture.Ends.OfType<Stroke>().Concat(picture.Tick is { } tick ? new[] { tick } : []).SelectMany(PiecesOf));
    }

    /// <summary>One line of text whose box begins at <paramref name="left"/>.</summary>
    /// <param name="asked">Height of the letters where it is not that of notes.</param>
    internal void Words(string row, string words, double left, double baseLine, double? asked = null, bool bold = false)
    {
        var height = asked ?? Sizes.Notes;
        var width = Sizes.Typeface.Width(words, height, bold);
        var text = new Text(row, words, new(Mirrored ? -left - width : left, baseLine), height, Align.Left, 0, bold);
        Add(text);
        Texts.Add(Turn(Sizes.Typeface.Box(text)));
    }

    /// <summary>Words that read upwards, in the middle of a place.</summary>
    internal void Upright(string row, string words, PaperPoint middle, double height)
    {
        // The base line runs on paper right of the letters on either sheet.
        var text = new Text(row, words, Turn(middle) + new PaperPoint(Sizes.Typeface.Rise(height) / 2, 0), height, Align.Centre, 90);
        Add(text);
        Texts.Add(Turn(Sizes.Typeface.Box(text)));
    }

    /// <summary>Whether text in the box would stand clear of all that is there.</summary>
    internal bool Free(PaperBox box, double gap = 1.5, double textGap = 2, double softGap = 1)
    {
        if (!Zone.Holds(box))
        {
            return false;
        }

        var (grown, soft) = (box.Grow(gap), box.Grow(softGap));
        foreach (var text in Texts)
        {
            if (Lines.Gap(box, text) < textGap - 1e-9)
            {
                return false;
            }
        }

        foreach (var (from, to) in Hard)
        {
            if (Lines.Meets(grown, from, to))
            {
                return false;
            }
        }

        foreach (var (from, to) in Soft)
        {
            if (Lines.Meets(soft, from, to))
            {
                return false;
            }
        }

        var offStrokes = box.Grow(StrokeGap);
        foreach (var (from, to) in Strokes)
        {
            if (Lines.Meets(offStrokes, from, to))
            {
                return false;
            }
        }

        foreach (var shape in Shapes)
        {
            // Words may stand within air, and not across its edge.
            if (shape.Look == Look.Open ? shape.EdgeMeets(soft) : shape.Meets(grown))
            {
                return false;
            }
        }

        return true;
    }
}
