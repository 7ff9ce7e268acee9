using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>
/// Takes sheets out of the model, and air that only a sheet parts from the open. A sheet between solids leaves its place to the most conducting one beside it, so
/// that no insulation grows; a sheet at a surface is left out.
/// </summary>
internal static class ThinSheets
{
    /// <summary>A sheet thinner than this is no solid of its own; mm.</summary>
    internal const double Thick = 3;

    /// <summary>Slots up to this width, which several sheets may fill together, are closed where sheets lie in them; mm.</summary>
    private const double Slot = 8;

    /// <summary>What opens less than this to the outside is shut; mm.</summary>
    private const double Opening = 3;

    /// <summary>Air that a thin sheet alone, a strip against the weather, or nothing parts from the outside is outdoor air, and such a strip stands in it.</summary>
    /// <param name="window">Between the cut-off planes.</param>
    internal static IEnumerable<Solid> WithoutOutdoorAir(IReadOnlyList<Solid> solids, Region window)
    {
        var all = Around(solids);
        Solid[] strips = [.. solids.Where(solid => solid.Part.Material.Kind == "sealant" && solid.Part.Roles.HasFlag(Roles.WaterBarrier) && IsOpen(solid.Region, all))];
        var without = strips.Length == 0 ? all : Around(solids.Except(strips));
        Solid[] open = [.. solids.Where(solid => solid.Part.IsAir && IsOpen(solid.Region, without))];
        return solids.Except(open).Except(strips.Where(strip => Array.Exists(open, air => air.Region.Distance(strip.Region) < Thick)));

        bool IsOpen(Region region, Region taken) => region.Grow(Thick + 0.5).Intersect(window).Minus(taken).Pieces.Any(piece => Region.Polygon([.. piece.Outline]).Bounds is var box
            && Math.Max(box.Width, box.Height) > Opening);

        static Region Around(IEnumerable<Solid> solids) => Region.Union(solids.Select(solid => solid.Region)).Grow(Weld.Reach); // so that slits of rounding open nothing
    }

    internal static IReadOnlyList<Solid> Absorbed(IReadOnlyList<Solid> solids)
    {
        Solid[] standing = [.. solids.Where(solid => !solid.Sheet)];
        var covered = Region.Union(standing.Select(solid => solid.Region));
        var left = Region.Union(solids.Where(solid => solid.Sheet).Select(solid => solid.Region)).Intersect(covered.Grow(Slot / 2).Grow(-Slot / 2)).Minus(covered)
            .Grow(-Weld.Reach / 2).Grow(Weld.Reach / 2); // what is narrower is welded shut, and what is wider must be filled, be it a foil of a tenth of a millimetre: it would stand open to the outside
        foreach (var index in Enumerable.Range(0, standing.Length).OrderBy(i => standing[i].Part.IsAir).ThenByDescending(i => standing[i].Conductivity).ThenBy(i => i))
        {
            if (left.IsEmpty)
            {
                break;
            }

            var solid = standing[index];
            if (!solid.Region.Bounds.Meets(left.Bounds, Slot))
            {
                continue;
            }

            var taken = left.Intersect(solid.Region.Grow(Slot));
            if (!taken.IsEmpty)
            {
                standing[index] = solid with { Region = solid.Region.Union(taken) };
                left = left.Minus(taken);
            }
        }

        return standing;
    }
}
