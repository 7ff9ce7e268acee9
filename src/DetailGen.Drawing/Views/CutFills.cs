using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>The fills of all cut parts of a view.</summary>
/// <param name="Items">Fill strokes and marks.</param>
/// <param name="Solids">Parts that are black all over; they come after the outlines.</param>
/// <param name="Solid">Ids of these.</param>
/// <param name="Joints">Edges of bed joints, thin.</param>
/// <param name="Same">Neighbours that had to share a variant.</param>
internal sealed record FilledParts(
    IReadOnlyList<Item> Items, IReadOnlyList<Item> Solids, IReadOnlySet<string> Solid, IReadOnlyList<Edge> Joints,
    IReadOnlyDictionary<string, double> Angles, IReadOnlyDictionary<string, int> Variants, IReadOnlyList<(string, string)> Same);

/// <summary>Fills the cut parts: cut back from bands, different from their neighbours, joints at the courses.</summary>
internal static class CutFills
{
    /// <summary>What bands leave of a black part in slivers thinner than this is left white, mm.</summary>
    private const double LeastBlack = 0.35;

    public static FilledParts Fill(CutParts cut, IReadOnlyList<LaidSheet> laid, IReadOnlyList<LocalPart> locals, OnPaper paper, RegionMemory memory)
    {
        var covers = laid.Select(sheet => memory.Minus(sheet.Cover, sheet.Filled)).ToArray();
        var overs = locals.Select(local => local.Opening ? local.Region : memory.Grow(local.Region, SheetStyles.FillClear)).ToArray();
        var fills = cut.Parts.ToDictionary(entry => entry.Part.Id, entry => PartFill.Of(entry.Part), StringComparer.Ordinal);
        var (variants, same) = Variants.Colour(fills, Edges.Touching(cut.Edges));

        var (items, solids, joints) = (new List<Item>(), new List<Item>(), new List<Edge>());
        var solid = new HashSet<string>(StringComparer.Ordinal);
        var angles = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (part, region) in cut.Parts)
        {
            var least = SheetStyles.LeastOf(part, paper.Scale);
            var outline = LocalParts.Thickened(region, least);
            var ground = covers.Aggregate(outline, memory.Minus);
            ground = least > 0 ? memory.Grow(memory.Grow(ground, -LeastBlack / 2), LeastBlack / 2) : ground;
            var clear = overs.Aggregate(ground, memory.Minus);
            var axis = AxisOf(part, region, paper);
            var seed = SeedOf(part, paper);
            var coursed = Courses.Lay(part, region, clear, paper, seed);
            joints.AddRange(coursed.Edges);
            items.AddRange(coursed.Items);
            var filling = Filler.Fill(new FillJob(
                part.Id, PartFill.Of(part), Rows.Fill(part), Rows.Solid(part), outline, ground, coursed.Units, axis, seed, variants[part.Id], paper.Scale)
            {
                Repeat = part.Repeat,
            });
            (filling.Solid ? solids : items).AddRange(filling.Items);
            if (filling.Solid)
            {
                solid.Add(part.Id);
            }

            if (filling.Angle is { } angle)
            {
                angles[part.Id] = angle;
            }
        }

        return new(items, solids, solid, joints, angles, variants, same);
    }

    // The axis that the builder names is that of the layer; a board laid to a fall follows its own long edge.
    private static PaperPoint AxisOf(Part part, Region region, OnPaper paper)
    {
        var axis = paper.Direction(part.Axis);
        PaperPoint best = axis;
        double length = 0;
        foreach (var piece in region.Pieces)
        {
            for (int i = 0, j = piece.Outline.Count - 1; i < piece.Outline.Count; j = i++)
            {
                var edge = new PaperPoint(piece.Outline[i].X - piece.Outline[j].X, piece.Outline[i].Y - piece.Outline[j].Y);
                var along = Planes.Dot(edge, axis);
                if (Math.Abs(along) > length && Math.Abs(along) > 0.94 * edge.Length)
                {
                    (best, length) = (Planes.Unit(Math.Sign(along) * edge), Math.Abs(along));
                }
            }
        }

        return best;
    }

    private static PaperPoint SeedOf(Part part, OnPaper paper)
    {
        var bounds = part.Region.Bounds;
        return paper.At(part.Seed ?? new Point(bounds.Left, bounds.Bottom));
    }
}
