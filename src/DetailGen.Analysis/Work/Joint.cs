using DetailGen.Sections;

namespace DetailGen.Analysis.Work;

/// <summary>Where the wall waits for what is built into it.</summary>
/// <param name="Sheet">A sheet that crosses the wall: the wall goes up as far as its line. Null where a level is enough.</param>
/// <param name="Level">The lowest place at which anything is built in, mm.</param>
internal sealed record Joint(IReadOnlyList<Point>? Sheet, double Level)
{
    private const double Hair = 0.5;

    /// <summary>The joint of parts that are built in one stage; null where nothing of them is built into a leaf.</summary>
    internal static Joint? Of(IReadOnlyList<Part> solid, IReadOnlyList<Part> parts)
    {
        Part[] leaves = [.. solid.Where(part => part.Rises && part.Coursing is not null)];
        var level = double.PositiveInfinity;
        IReadOnlyList<Point>? sheet = null;
        foreach (var part in parts)
        {
            foreach (var inside in leaves.Select(leaf => BuiltIn(part, leaf, leaves)).OfType<double>())
            {
                level = Math.Min(level, inside);
                sheet = part.Sheet?.Face ?? sheet;
            }
        }

        return double.IsPositiveInfinity(level) ? null : new(sheet, level);
    }

    /// <summary>All that can be built before.</summary>
    internal Region Below(Section section)
    {
        var boxes = section.Parts.Select(part => part.Region.Bounds).ToArray();
        var (left, right, foot) = (boxes.Min(box => box.Left) - 1, boxes.Max(box => box.Right) + 1, boxes.Min(box => box.Bottom) - 1);
        return Sheet is { } line
            ? Region.Polygon([new(left, line[0].Y), .. line, new(right, line[^1].Y), new(right, foot), new(left, foot)])
            : Region.Box(left, foot, right, Level);
    }

    // It bears in the leaf, or goes right through; what is let in from the face is pointed in later. Over it the leaf goes on. It lies on the bed under its middle: a leg may be chased in.
    private static double? BuiltIn(Part part, Part leaf, Part[] leaves)
    {
        var column = leaf.Region.Bounds;
        if (part.Presence == Presence.Beyond || !part.Region.Bounds.Meets(column, 1))
        {
            return null;
        }

        var inside = part.Region.Intersect(Region.Box(column)).Bounds;
        var across = inside.Width > column.Width - Hair || (part.Roles.HasFlag(Roles.Structure) && inside.Width > Hair);
        return across && leaves.Any(over => over.Region.Bounds is var box && box.Left < column.Right - Hair && box.Right > column.Left + Hair && box.Top > inside.Top + Hair) ? part.Region.Cut(new(inside.Middle.X, inside.Bottom - 1), new(inside.Middle.X, inside.Top + 1))[0].From.Y : null;
    }
}
