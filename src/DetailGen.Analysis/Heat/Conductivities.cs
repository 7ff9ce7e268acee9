using DetailGen.Physics.Layers;
using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>
/// Conductivity of each piece in the plane of the section: materials have their own, an air layer its thickness over its resistance, and members that repeat out
/// of the plane share with what lies between them, side by side: λ = f·λ(member) + (1 − f)·λ(between), f = width / centres.
/// </summary>
/// <remarks>Side by side is the arrangement of members and field across the heat flow; an air layer conducts λ = d / R
/// (ISO 10211:2017, equivalent conductivity of cavities, clause number still to be read).</remarks>
internal static class Conductivities
{
    /// <summary>Members of one repeat stand on each other when no more than this lies between; mm.</summary>
    private const double Touching = 1;

    /// <param name="parts">Cut parts with their regions on the level roof.</param>
    internal static IEnumerable<Solid> Of(IReadOnlyList<(Part Part, Region Region)> parts)
    {
        foreach (var (part, region) in parts)
        {
            if (part.Repeat is not { Width: > 0, Centres: > 0 } repeat || part.IsAir)
            {
                yield return new(part, region, part.Material.Conductivity is { } own && !part.IsAir ? own : Air(part.Element, region.Bounds));
                continue;
            }

            var share = Math.Min(1, repeat.Width / repeat.Centres);
            var member = part.Material.Conductivity ?? throw new InvalidOperationException($"{part.Id} has no conductivity.");
            double With(double between) => (share * member) + ((1 - share) * between);
            var rest = region;
            foreach (var (leaf, around) in parts.Where(other => other.Part.Element == Sections.Element.Wall && other.Part.Roles.HasFlag(Roles.Structure) && part.Element == Sections.Element.Roof))
            {
                // let into a leaf, a joist has masonry beside it
                var inside = rest.Intersect(Region.Box(around.Bounds));
                if (!inside.IsEmpty)
                {
                    rest = rest.Minus(inside);
                    yield return new(part, inside, With(leaf.Material.Conductivity ?? member));
                }
            }

            if (!rest.IsEmpty)
            {
                yield return new(part, rest, With(Air(part.Element, Together(part, region, parts))));
            }
        }
    }

    // Firring and joist stand over each other, and the air beside them is one layer.
    private static Bounds Together(Part part, Region region, IReadOnlyList<(Part Part, Region Region)> parts)
    {
        var box = region.Bounds;
        for (var grown = true; grown;)
        {
            var before = box;
            box = parts.Where(other => other.Part.Repeat == part.Repeat && other.Part.Element == part.Element && other.Region.Bounds.Meets(before, Touching))
                .Aggregate(before, (all, other) => all.With(other.Region.Bounds));
            grown = box != before;
        }

        return box;
    }

    private static double Air(Sections.Element element, Bounds box)
    {
        var (thickness, flow) = element == Sections.Element.Wall ? (box.Width, Flow.Horizontal) : (box.Height, Flow.Upwards);
        return thickness / 1000 / AirLayer.Resistance(thickness, flow); // the same resistance as in the schedule and before the solver
    }
}
