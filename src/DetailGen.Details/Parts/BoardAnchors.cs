using DetailGen.Details.Constructions;
using DetailGen.Details.Parameters;
using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// Anchors that hold boards outside a leaf against the wind: a plate on the board under what covers it, a shaft through the board into the leaf. One is drawn
/// in each row of boards, counted from the finished end of the cladding; each stands for its share of the square metre.
/// </summary>
internal static class BoardAnchors
{
    /// <summary>Plate, its thickness, and shaft, mm: common practice, no source.</summary>
    private const double Plate = 60, Thick = 3, Shaft = 8;

    /// <summary>Height of a board, the first row's distance from the end, and how near a shaft comes to a bed joint or to what is built into the leaf; mm, common practice, no source.</summary>
    private const double Board = 500, First = 150, Clear = 20;

    /// <param name="downwards">The cladding ends above, at a head; else below, on its base.</param>
    public static void Build(Site site, PlacedWall wall, bool downwards)
    {
        foreach (var placed in wall.Layers)
        {
            if (placed.Layer is { As: WallBehaviour.Cladding, Fixings: { Into: { } into } fixings } && Buildups.FixingsOf(site, fixings) is { } told)
            {
                Build(site, placed, Behind(wall, placed), fixings, site.Length(into), 1e6 / (told.PerArea * Board), downwards);
            }
        }
    }

    private static PlacedLayer Behind(PlacedWall wall, PlacedLayer cladding) =>
        wall.Layers.SkipWhile(placed => placed != cladding).First(placed => placed.Layer.As == WallBehaviour.Leaf);

    private static void Build(Site site, PlacedLayer cladding, PlacedLayer leaf, LayerFixings fixings, double embedment, double centres, bool downwards)
    {
        var boards = site.Blanks.First(blank => blank.Slot == cladding.Layer.Slot);
        var (foot, top) = (boards.Region.Bounds.Bottom, boards.Region.Bounds.Top);
        var rightwards = leaf.Left >= cladding.Right - 0.001;
        var (outer, end) = rightwards ? (cladding.Left, cladding.Right + embedment) : (cladding.Right, cladding.Left - embedment);
        var inward = rightwards ? Thick : -Thick;
        var cover = site.Blanks.SkipWhile(blank => blank != boards).Skip(1).FirstOrDefault(blank => blank.Stage == boards.Stage);
        var number = 1;
        foreach (var row in Rows(foot, top, downwards))
        {
            var at = Sound(site, leaf, Region.Box(Math.Min(outer, end), row - (Shaft / 2), Math.Max(outer, end), row + (Shaft / 2)), downwards ? -1 : 1);
            if (at < foot + (Plate / 2) || at > top - (Plate / 2))
            {
                continue;
            }

            var region = Box(outer, outer + inward, at, Plate).Union(Box(outer, end, at, Shaft));
            site.AddBefore(cover, new($"{fixings.Slot}.{number}", "Insulation anchor", fixings.Slot, Element.Wall, region, Roles.Fixing, Precedence.Sheet, boards.Stage)
            {
                Presence = Presence.Local,
                Parameters = [.. new[] { fixings.Count, fixings.Into }.OfType<string>()],
                Repeat = new(centres),
            });
            number++;
        }
    }

    private static Region Box(double from, double to, double at, double height) => Region.Box(Math.Min(from, to), at - (height / 2), Math.Max(from, to), at + (height / 2));

    private static IEnumerable<double> Rows(double foot, double top, bool downwards)
    {
        for (var along = First; along < top - foot; along += Board)
        {
            yield return downwards ? top - along : foot + along;
        }
    }

    // An anchor holds in a unit, not in a joint, and clear of straps and of what the roof builds in: it moves on until it does.
    private static double Sound(Site site, PlacedLayer leaf, Region shaft, int way)
    {
        var (bounds, blank) = (shaft.Bounds, site.Blanks.First(one => one.Slot == leaf.Layer.Slot && one.Coursing is not null));
        var at = (bounds.Bottom + bounds.Top) / 2;
        var joints = site.Sizes.Material(blank.Slot).IsCast ? [] : blank.Coursing!.Beds(at - Board, at + Board).Select(bed => (Low: bed, High: bed + blank.Coursing.Joint));
        var reach = Region.Box(Math.Max(bounds.Left, leaf.Left), at - Board, Math.Min(bounds.Right, leaf.Right), at + Board);
        var builtIn = site.Blanks.Where(one => one.Presence == Presence.Local || one.Stage == Stage.RoofStructure).SelectMany(one => one.Region.Intersect(reach).Pieces)
            .Select(piece => (Low: piece.Outline.Min(corner => corner.Y), High: piece.Outline.Max(corner => corner.Y)));
        (double Low, double High)[] taken = [.. joints.Concat(builtIn)];
        for (var moved = 0; moved < Board; moved += 5)
        {
            var tried = at + (way * moved);
            if (!taken.Any(one => one.Low - Clear - (Shaft / 2) < tried && one.High + Clear + (Shaft / 2) > tried))
            {
                return tried;
            }
        }

        return double.NaN;
    }
}
