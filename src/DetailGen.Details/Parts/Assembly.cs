using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>Makes parts of blanks: cuts each around those that go before it, numbers the work, gives words and materials.</summary>
internal static class Assembly
{
    private static readonly Material Air = new("air", "Air", "air", "", "", null, 0, "tabulated");

    /// <returns>In build order.</returns>
    public static IReadOnlyList<Part> Join(Site site, Wording wording)
    {
        var blanks = site.Blanks;
        var regions = Carve(blanks);
        var order = Enumerable.Range(0, blanks.Count).OrderBy(i => blanks[i].Stage).ThenBy(i => i).ToArray();
        var parts = new List<Part>(blanks.Count);
        foreach (var i in order)
        {
            if (regions[i].IsEmpty)
            {
                continue;
            }

            var blank = blanks[i];
            var material = blank.Roles.HasFlag(Roles.Air) ? Air : site.Sizes.Material(blank.Slot);
            parts.Add(new(blank.Id, blank.Name, material, blank.Element, regions[i], blank.Presence, blank.Roles, parts.Count + 1)
            {
                Slot = blank.Slot,
                Stage = (int)blank.Stage,
                Rises = blank.Stage is Stage.WallBelow or Stage.WallAbove,
                Parameters = blank.Parameters,
                Words = wording.For(blank, material),
                Sheet = blank.Sheet,
                Coursing = blank.Coursing,
                Repeat = blank.Repeat,
                Axis = blank.Axis,
                Seed = blank.Seed,
            });
        }

        return parts;
    }

    private static Region[] Carve(IReadOnlyList<Blank> blanks)
    {
        var regions = blanks.Select(blank => blank.Region).ToArray();
        var cut = Enumerable.Range(0, blanks.Count).Where(i => blanks[i].Presence == Presence.Cut)
            .OrderBy(i => blanks[i].Precedence).ThenBy(i => i).ToArray();
        // bounds as claimed: what is cut away later only makes a blank smaller
        var bounds = regions.Select(region => region.Bounds).ToArray();
        for (var k = 1; k < cut.Length; k++)
        {
            var before = cut[..k].Where(j => Overlap(bounds[j], bounds[cut[k]])).Select(j => regions[j]).ToArray();
            foreach (var other in before)
            {
                if (regions[cut[k]].Overlaps(other))
                {
                    regions[cut[k]] = regions[cut[k]].Minus(other);
                }
            }
        }

        return regions;
    }

    // Two that only touch need no knife.
    private static bool Overlap(Bounds a, Bounds b) => a.Left < b.Right - 1e-6 && b.Left < a.Right - 1e-6 && a.Bottom < b.Top - 1e-6 && b.Bottom < a.Top - 1e-6;
}
