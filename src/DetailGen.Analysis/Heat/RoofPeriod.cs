using DetailGen.Sections;

namespace DetailGen.Analysis.Heat;

/// <summary>Members of the roof that repeat in the plane of the section, such as joists along the wall.</summary>
/// <param name="Middle">Of one of them, mm.</param>
/// <param name="Centres">mm.</param>
internal sealed record RoofPeriod(double Middle, double Centres)
{
    /// <summary>Null where nothing repeats in the plane.</summary>
    internal static RoofPeriod? Of(IReadOnlyList<Solid> solids)
    {
        var members = solids.Where(solid => solid.Part is { Element: Element.Roof, Repeat: null, IsAir: false } && solid.Part.Roles.HasFlag(Roles.Structure))
            .GroupBy(solid => solid.Part.Slot).Select(group => group.Select(solid => solid.Region.Bounds).OrderBy(box => box.Left).ToArray())
            .FirstOrDefault(group => group.Length > 1);
        return members is null ? null : new(members[0].Middle.X, members[1].Left - members[0].Left);
    }

    /// <summary>The first plane of symmetry from there on, through a member or half-way between two; mm.</summary>
    internal double PlaneFrom(double x) => Middle + (Math.Ceiling((x - Middle) / (Centres / 2)) * (Centres / 2));

    /// <summary>Continues the roof from where the section ends: bay by bay where members repeat, else as it is there.</summary>
    /// <param name="from">Where it ends, mm.</param>
    /// <param name="to">How far it is wanted, mm; nothing is done where that is nearer.</param>
    internal static IReadOnlyList<Solid> RunOn(IReadOnlyList<Solid> solids, double from, double to, RoofPeriod? period)
    {
        var all = solids;
        for (var (end, step) = (from, period?.Centres ?? 100); end < to; end += step)
        {
            var last = Region.Box(end - step, -1e5, end, 1e5);
            all = [.. all.Select(solid => solid.Region.Bounds.Right <= end - step ? solid : solid with { Region = solid.Region.Union(solid.Region.Intersect(last).Shift(step, 0)) })];
        }

        return all;
    }
}
