using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>
/// Lays a roof that falls level again, with the thicknesses that it has at the face of the upstand: what lies above the top of the structure moves up or down by
/// the fall, the structure stays. So a roof has one thermal transmittance, that of its schedule, and the fall of the roof is no part of a thermal bridge.
/// </summary>
internal static class LevelRoof
{
    /// <summary>Corners up to this far above the top of the structure belong to it, as those of a sheet that lies on it; mm.</summary>
    private const double Slack = 0.5;

    /// <returns>Every part with its region as it would be on a level roof; the parts as they are where nothing tells of a fall.</returns>
    internal static IReadOnlyList<(Part Part, Region Region)> Of(Section section)
    {
        var structure = section.Levels.FirstOrDefault(level => level.Name == "structure-top");
        var face = section.Levels.FirstOrDefault(level => level.Name == "finished-roof")?.At.X;
        return structure is null || face is not { } datum || FieldSheet(section) is not { Sheet.Face: var surface }
            ? [.. section.Parts.Select(part => (part, part.Region))]
            : [.. section.Parts.Select(part => (part, part.Element == Element.Roof ? Laid(part.Region, datum, structure.Y, surface) : part.Region))];
    }

    /// <summary>The sheet that keeps the water off the field of the roof; null where no build-up names one.</summary>
    internal static Part? FieldSheet(Section section) => section.Buildups.Where(buildup => buildup.Id == "roof").SelectMany(buildup => buildup.Layers)
        .Select(layer => section.Parts.FirstOrDefault(part => part.Id == layer.PartId))
        .FirstOrDefault(part => part is { Sheet: not null } && part.Roles.HasFlag(Roles.WaterBarrier));

    /// <summary>Height of an open line that runs towards growing x, drawn on straight beyond its ends; mm.</summary>
    internal static double HeightAt(IReadOnlyList<Point> line, double x)
    {
        var i = 1;
        while (i < line.Count - 1 && x > line[i].X)
        {
            i++;
        }

        var (a, b) = (line[i - 1], line[i]);
        return a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
    }

    private static Region Laid(Region region, double datum, double structure, IReadOnlyList<Point> surface)
    {
        var box = region.Bounds;
        if (box.Right <= datum || box.Top <= structure + Slack)
        {
            return region;
        }

        var zero = HeightAt(surface, datum);
        var beyond = region.Intersect(Region.Box(datum, box.Bottom - 1, box.Right + 1, box.Top + 1));
        var level = beyond.Bend(corner => corner.Y <= structure + Slack ? corner : new(corner.X, corner.Y + zero - HeightAt(surface, corner.X)));
        return region.Minus(beyond).Union(level);
    }
}
