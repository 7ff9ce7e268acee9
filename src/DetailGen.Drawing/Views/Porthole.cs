using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>
/// What is seen of a drawing through a round hole. Parts are drawn a little beyond it, with square ends as at a break line, and then cut: fills follow the faces of a part, and a round end would bend them.
/// </summary>
/// <param name="disc">The hole, mm on paper.</param>
internal sealed class Porthole(Region disc)
{
    /// <summary>How far beyond the hole is drawn, mm; the ends of fills stay within.</summary>
    private const double Beyond = 8;

    /// <summary>Pieces of lines shorter than this are dropped, mm.</summary>
    private const double Least = 0.3;

    private readonly Area _area = Area.Of(disc);

    /// <summary>What of the window is to be drawn.</summary>
    internal Bounds Within(Bounds window) => disc.Bounds.Grow(Beyond) is var box
        ? new(Math.Max(window.Left, box.Left), Math.Max(window.Bottom, box.Bottom), Math.Min(window.Right, box.Right), Math.Min(window.Top, box.Top))
        : default;

    internal IEnumerable<Item> Seen(Item item) => item switch
    {
        Stroke stroke => Strokes(stroke),
        Solid solid => Cut(solid.Outline, solid.Holes).Select(piece => solid with { Outline = piece.Outline, Holes = piece.Holes }),
        Hatch hatch => Cut(hatch.Outline, hatch.Holes).Select(piece => hatch with { Outline = piece.Outline, Holes = piece.Holes }),
        Grains grains => grains.Centres.Where(at => Holds(at, grains.Diameter)).ToArray() is { Length: > 0 } centres ? [grains with { Centres = centres }] : [],
        Dot dot => Holds(dot.Centre, dot.Diameter) ? [dot] : [],
        Ring ring => Holds(ring.Centre, ring.Diameter) ? [ring] : [],
        _ => throw new ArgumentException($"An item of kind {item.GetType().Name} is not part of a drawn section.", nameof(item)),
    };

    /// <summary>What is seen of a part; of a sheet that comes in more than once, the longest stretch of its line.</summary>
    internal DrawnPart Seen(DrawnPart part)
    {
        PaperPoint[] line = part.IsSheet ? Longest(part.Line) : [];
        return part with { Visible = part.IsSheet && line.Length == 0 ? Region.Empty : part.Visible.Intersect(disc), Line = line };
    }

    private PaperPoint[] Longest(IReadOnlyList<PaperPoint> line) => line.All(_area.Contains) ? [.. line] : _area.Clip(line, Least).MaxBy(Planes.Length) ?? [];

    private IEnumerable<Item> Strokes(Stroke stroke) => stroke.Points.All(_area.Contains)
        ? [stroke]
        : _area.Clip(stroke.Closed ? [.. stroke.Points, stroke.Points[0]] : stroke.Points, Least).Select(run => stroke with { Points = run, Closed = false });

    private bool Holds(PaperPoint at, double diameter) => _area.Contains(at) && _area.EdgeDistance(at) >= diameter / 2;

    private IEnumerable<(PaperPoint[] Outline, IReadOnlyList<IReadOnlyList<PaperPoint>> Holes)> Cut(IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes) =>
        holes.Aggregate(Of(outline), (rest, hole) => rest.Minus(Of(hole))).Intersect(disc).Pieces.Select(piece => (Points(piece.Outline), (IReadOnlyList<IReadOnlyList<PaperPoint>>)[.. piece.Holes.Select(Points)]));

    private static Region Of(IReadOnlyList<PaperPoint> ring) => Region.Polygon([.. ring.Select(corner => new Point(corner.X, corner.Y))]);

    private static PaperPoint[] Points(IReadOnlyList<Point> ring) => [.. ring.Select(corner => new PaperPoint(corner.X, corner.Y))];
}
