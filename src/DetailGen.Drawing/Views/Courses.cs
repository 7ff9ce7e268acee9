using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>A part of masonry taken apart into units and joints.</summary>
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

    /// <summary>The id under which a part's joints are drawn.</summary>
    public static string JointsOf(string partId) => partId + "/bed";

    public static Coursed Lay(Part part, Region region, Region clear, OnPaper paper, PaperPoint seed)
    {
        if (part.Coursing is not { Height: > 0 } coursing || part.Material.IsCast)
        {
            return new(clear, [], []);
        }

        var joint = coursing.Joint / paper.Scale;
        var box = region.Bounds;
        var beds = coursing.Beds((box.Bottom - joint) * paper.Scale, box.Top * paper.Scale).Select(bed => bed / paper.Scale);
        var row = Rows.Joint(part);
        if (joint < LeastJoint)
        {
            var area = Area.Of(region);
            return new(clear, [.. beds.SelectMany(bed => Ticks(area, bed + joint / 2, row, part))], []);
        }

        var levels = beds.Where(bed => bed + joint > box.Bottom + 0.3 * joint && bed < box.Top - 0.3 * joint).ToArray();
        var (whole, open) = (Area.Of(region), Area.Of(clear));
        var edges = levels.SelectMany(bed => new[] { bed, bed + joint }).SelectMany(y => Spans(whole, y).Select(span =>
            new Edge(new(span.From, y), new(span.To, y), row, Rows.JointWidth, part.BuildOrder, JointsOf(part.Id))));
        var grains = levels.SelectMany(bed => Mortar(open, bed, joint)).SelectMany(patch => Strewn.Marks(
            FillTable.Named("mortar-bed").Scatters[0], patch, Rows.Mortar(part), part.Id, "mortar-bed", seed, new(1, 0)));
        return new(clear.Minus(Region.Union(levels.Select(bed => Region.Box(box.Left - 1, bed, box.Right + 1, bed + joint)))), [.. edges], [.. grains]);
    }

    // Where a joint is clear over its whole height: beside a tie or a sheet in it the mortar stays white.
    private static IEnumerable<Area> Mortar(Area clear, double bed, double joint)
    {
        IEnumerable<(double From, double To)> spans = Spans(clear, bed + joint / 2);
        foreach (var y in new[] { bed + 0.02, bed + joint - 0.02 })
        {
            spans = spans.SelectMany(span => Spans(clear, y).Select(other => (From: Math.Max(span.From, other.From), To: Math.Min(span.To, other.To)))).Where(span => span.To > span.From).ToArray();
        }

        return spans.Select(span => Area.Of([new(span.From, bed), new(span.To, bed), new(span.To, bed + joint), new(span.From, bed + joint)], []));
    }

    private static IEnumerable<(double From, double To)> Spans(Area area, double y)
    {
        var (left, right) = (area.Box.Left - 1, area.Box.Right + 1);
        return area.Inside(new(left, y), new(right, y)).Select(span => (left + span.From * (right - left), left + span.To * (right - left)));
    }

    private static IEnumerable<Edge> Ticks(Area area, double y, string row, Part part)
    {
        foreach (var (from, to) in Spans(area, y))
        {
            var tick = Math.Min(Tick, (to - from) / 2);
            yield return new(new(from, y), new(from + tick, y), row, Rows.JointWidth, part.BuildOrder, JointsOf(part.Id));
            yield return new(new(to - tick, y), new(to, y), row, Rows.JointWidth, part.BuildOrder, JointsOf(part.Id));
        }
    }
}
