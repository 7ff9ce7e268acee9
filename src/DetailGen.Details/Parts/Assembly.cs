using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>Makes parts of pieces: cuts each around those that go before it, numbers the work, gives words and materials.</summary>
internal static class Assembly
{
    private static readonly Material Air = new("air", "Air", "air", "", "", null, 0, "tabulated");

    /// <returns>In build order.</returns>
    public static IReadOnlyList<Part> Join(Site site, Wording wording)
    {
        var pieces = site.Pieces;
        var regions = Carve(pieces);
        var order = Enumerable.Range(0, pieces.Count).OrderBy(i => pieces[i].Stage).ThenBy(i => i).ToArray();
        var parts = new List<Part>(pieces.Count);
        foreach (var i in order)
        {
            if (regions[i].IsEmpty)
            {
                continue;
            }

            var piece = pieces[i];
            var material = piece.Roles.HasFlag(Roles.Air) ? Air : site.Sizes.Material(piece.Slot);
            parts.Add(new(piece.Id, piece.Name, material, piece.Element, regions[i], piece.Presence, piece.Roles, parts.Count + 1)
            {
                Slot = piece.Slot,
                Parameters = piece.Parameters,
                Words = wording.For(piece, material),
                Sheet = piece.Sheet,
                Coursing = piece.Coursing,
                Repeat = piece.Repeat,
                Axis = piece.Axis,
                Seed = piece.Seed,
            });
        }

        return parts;
    }

    private static Region[] Carve(IReadOnlyList<Piece> pieces)
    {
        var regions = pieces.Select(piece => piece.Region).ToArray();
        var cut = Enumerable.Range(0, pieces.Count).Where(i => pieces[i].Presence == Presence.Cut)
            .OrderBy(i => pieces[i].Claim).ThenBy(i => i).ToArray();
        for (var k = 1; k < cut.Length; k++)
        {
            var before = cut[..k].Where(j => regions[j].Bounds.Meets(regions[cut[k]].Bounds)).Select(j => regions[j]).ToArray();
            foreach (var other in before)
            {
                regions[cut[k]] = regions[cut[k]].Minus(other);
            }
        }

        return regions;
    }
}
