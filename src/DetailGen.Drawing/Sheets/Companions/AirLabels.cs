using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>Words that stand in the air beside a section: clear of what is solid, of each other and of where the drawing breaks off.</summary>
/// <param name="solid">Everything that is solid, paper mm.</param>
/// <param name="within">Where words may stand, paper mm.</param>
/// <param name="taken">Where they may not, such as on break lines.</param>
internal sealed class AirLabels(TextSizes sizes, Region solid, PaperBox within, IReadOnlyList<PaperBox> taken)
{
    private const double Clear = 2.5;
    private const double Step = 2;
    private const double Wanted = 12; // from the surface to the middle of the words that name its air

    private double Title => sizes.Titles;

    private double Text => sizes.Notes;

    private double Pitch => sizes.ByNotes(4.25);

    private static readonly double[] Angles = [45, 30, 60, 15, 75];

    private readonly IReadOnlyList<(PaperPoint From, PaperPoint To)> _edges = [.. solid.Pieces.SelectMany(piece => piece.Holes.Prepend(piece.Outline)).SelectMany(Sides)];
    private readonly List<PaperBox> _taken = [.. taken];

    /// <summary>What is taken, words that were placed among it.</summary>
    internal IReadOnlyList<PaperBox> Taken => _taken;

    /// <summary>The name of an air with what is known of it, nearer to its own surfaces than to those of any other; nothing where it finds no room.</summary>
    internal IReadOnlyList<Item> Name(AirWords words, IReadOnlyList<IReadOnlyList<PaperPoint>> own, IReadOnlyList<IReadOnlyList<PaperPoint>> others)
    {
        var width = Math.Max(sizes.Typeface.Width(words.Title, Title), words.Lines.Select(line => sizes.Typeface.Width(line, Text)).DefaultIfEmpty(0).Max()) * Table.Slack;
        var height = Title + (words.Lines.Count * Pitch) + 1;
        var best = (Cost: double.PositiveInfinity, Box: default(PaperBox));
        for (var left = within.Left; left + width <= within.Right; left += Step)
        {
            for (var bottom = within.Bottom; bottom + height <= within.Top; bottom += Step)
            {
                var box = new PaperBox(left, bottom, left + width, bottom + height);
                var middle = new PaperPoint(left + (width / 2), bottom + (height / 2));
                var near = Distance(middle, own);
                var cost = Math.Abs(near - Wanted);
                if (cost < best.Cost && near < Distance(middle, others) && IsFree(box))
                {
                    best = (cost, box);
                }
            }
        }

        if (double.IsPositiveInfinity(best.Cost))
        {
            return [];
        }

        _taken.Add(best.Box);
        return
        [
            new Text("title.view", words.Title, new(best.Box.Left, best.Box.Top - Title), Title),
            new Paragraph("note.text", words.Lines, new(best.Box.Left, best.Box.Top - Title - Pitch - 0.8), Text, Pitch),
        ];
    }

    /// <summary>Words about a place on a surface, with a line that leads to it through air alone; nothing where there is no such way.</summary>
    internal IReadOnlyList<Item> Point(PaperPoint at, IReadOnlyList<string> lines)
    {
        var width = lines.Max(line => sizes.Typeface.Width(line, Text)) * Table.Slack;
        for (var reach = 6.0; reach <= 60; reach += Step)
        {
            foreach (var angle in Angles.SelectMany(angle => new[] { -angle, angle - 180, angle, 180 - angle }))
            {
                var (cos, sin) = (Math.Cos(angle * Math.PI / 180), Math.Sin(angle * Math.PI / 180));
                var end = at + (reach * new PaperPoint(cos, sin));
                var left = cos > 0 ? end.X + 1 : end.X - 1 - width;
                var first = end.Y - (Text / 2); // the line meets the middle of the first line of text
                var box = new PaperBox(left, first - ((lines.Count - 1) * Pitch) - 0.8, left + width, first + Text);
                if (IsFree(box) && IsOpen(at + (1.2 * new PaperPoint(cos, sin)), end))
                {
                    _taken.Add(box.With(new(Math.Min(at.X, end.X), Math.Min(at.Y, end.Y), Math.Max(at.X, end.X), Math.Max(at.Y, end.Y))));
                    return [new Stroke("note.leader", [at, end]), new Paragraph("note.text", lines, new(left, first), Text, Pitch)];
                }
            }
        }

        return [];
    }

    private bool IsFree(PaperBox box)
    {
        var wide = box.Grow(Clear);
        return within.Holds(box)
            && !_taken.Exists(other => other.Meets(wide)) && _edges.All(edge => PaperLines.Within(edge.From, edge.To, wide) is null)
            && !solid.Contains(new((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2));
    }

    private bool IsOpen(PaperPoint from, PaperPoint to) =>
        _taken.TrueForAll(box => PaperLines.Within(from, to, box) is null) && solid.Cut(new(from.X, from.Y), new(to.X, to.Y)).Count == 0;

    private static double Distance(PaperPoint at, IReadOnlyList<IReadOnlyList<PaperPoint>> lines) =>
        lines.SelectMany(line => line.Zip(line.Skip(1), (from, to) => PaperLines.Distance(at, from, to))).DefaultIfEmpty(double.PositiveInfinity).Min();

    private static IEnumerable<(PaperPoint, PaperPoint)> Sides(IReadOnlyList<Point> ring) =>
        ring.Select((corner, i) => (new PaperPoint(corner.X, corner.Y), new PaperPoint(ring[(i + 1) % ring.Count].X, ring[(i + 1) % ring.Count].Y)));
}
