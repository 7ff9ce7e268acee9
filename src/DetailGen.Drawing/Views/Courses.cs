using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <param name="Units">What is left for the fill of the units.</param>
/// <param name="Edges">Both edges of each bed joint, or ticks where joints are too thin for two.</param>
/// <param name="Items">Mortar in the joints.</param>
internal sealed record Coursed(Region Units, IReadOnlyList<Edge> Edges, IReadOnlyList<Item> Items);

/// <summary>Bed joints where the model has them.</summary>
internal static class Courses
{
    /// <summary>Thinner joints are ticks at the faces, mm.</summary>
    public const double LeastJoint = 0.8;

    private const double Tick = 1.0;

    public static Coursed Lay(Part part, Region region, Region clear, OnPaper paper, PaperPoint seed)
    {
        if (part.Coursing is not { Height: > 0 } coursing)
        {
            return new(clear, [], []);
        }

        var (height, joint, datum) = (coursing.Height / paper.Scale, coursing.Joint / paper.Scale, coursing.Datum / paper.Scale);
        var box = region.Bounds;
        var beds = Enumerable.Range(
            (int)Math.Floor((box.Bottom - datum - joint) / height), (int)Math.Ceiling((box.Top - box.Bottom) / height) + 3).Select(k => datum + k * height);
        var row = Rows.Joint(part);
        if (joint < LeastJoint)
        {
            var area = Area.Of(region);
            return new(clear, [.. beds.SelectMany(bed => Ticks(area, bed + joint / 2, row, part))], []);
        }

        var mortar = Region.Union(beds.Where(bed => bed + joint > box.Bottom && bed < box.Top).Select(bed => Region.Box(box.Left - 1, bed, box.Right + 1, bed + joint))).Intersect(region);
        var edges = mortar.Pieces.Where(piece => piece.Outline.Max(corner => corner.Y) - piece.Outline.Min(corner => corner.Y) > 0.3 * joint)
            .SelectMany(piece => CutParts.EdgesOf(piece, row, Rows.JointWidth, part)).Where(edge => Math.Abs(edge.A.Y - edge.B.Y) < 0.001);
        var grains = Strewn.Marks(FillTable.Named("mortar-bed").Scatters[0], Area.Of(clear.Intersect(mortar)), $"fill.MO.{(part.Element == Element.Wall ? "wall" : "roof")}", part.Id, "mortar-bed", seed, new(1, 0));
        return new(clear.Minus(mortar), [.. edges.Select(edge => edge with { PartId = part.Id + "/bed" })], [.. grains]);
    }

    private static IEnumerable<Edge> Ticks(Area area, double y, string row, Part part)
    {
        var (left, right) = (new PaperPoint(area.Box.Left - 1, y), new PaperPoint(area.Box.Right + 1, y));
        var span = right - left;
        foreach (var (from, to) in area.Inside(left, right))
        {
            var (a, b) = (left + from * span, left + to * span);
            var tick = new PaperPoint(Math.Min(Tick, (b - a).Length / 2), 0);
            yield return new(a, a + tick, row, Rows.JointWidth, part.BuildOrder, part.Id + "/bed");
            yield return new(b - tick, b, row, Rows.JointWidth, part.BuildOrder, part.Id + "/bed");
        }
    }
}
