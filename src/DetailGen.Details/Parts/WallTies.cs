using DetailGen.Details.Constructions;
using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>Ties between the leaves at bed joints.</summary>
internal static class WallTies
{
    /// <summary>Ties at the given bed joints (underside, mm); centred on the cavity, their drips in the middle of what is clear of it.</summary>
    public static void Build(Site site, IEnumerable<double> beds, TrayLine tray)
    {
        var number = 1;
        foreach (var bed in beds)
        {
            site.Add(new($"tie.{number}", "Wall tie", "tie", Element.Wall, Tie(site, bed).Union(Drip(site, bed, tray)), Roles.Fixing, Precedence.Sheet, Stage.WallBelow)
            {
                Presence = Presence.Local,
                Parameters = ["tie.length", "tie.horizontal-spacing", "tie.vertical-spacing"],
                Repeat = new(site.Length("tie.horizontal-spacing")),
            });
            number++;
        }
    }

    /// <summary>
    /// Rows of ties above a tray: the top row, and as many more, evenly spaced in whole courses, as leave no greater distance than asked between them and to the first row below the tray.
    /// None where the top row is itself the first below the tray.
    /// </summary>
    /// <param name="top">Underside of the bed joint of the top row, mm.</param>
    /// <param name="tray">Upper edge of the tray, mm; the lowest row lies a course above it.</param>
    /// <param name="below">The first row below the tray, mm.</param>
    public static IEnumerable<double> RowsAbove(Site site, double top, double tray, double below)
    {
        if (top <= below + 1)
        {
            yield break;
        }

        yield return top;
        var most = site.Length("tie.vertical-spacing");
        var drop = top - Math.Max(tray + Courses.Brick, below + most);
        var more = (int)Math.Ceiling(drop / most - 1e-6);
        for (var row = 1; row <= more; row++)
        {
            yield return top - (Courses.Brick * Math.Round(drop * row / more / Courses.Brick));
        }
    }

    /// <summary>From row to row in whole courses of blocks, the nearest to what is asked; mm.</summary>
    public static double RowSpacing(Site site) => Math.Max(1, Math.Round(site.Length("tie.vertical-spacing") / Courses.Block)) * Courses.Block;

    /// <summary>
    /// Rows of ties downwards from a bed joint, in joints that both leaves share. A row that would lie in what the roof builds into the wall, or in a bed that a
    /// made-up course leaves out, moves up to the next joint, or else on down past it.
    /// </summary>
    /// <param name="from">Underside of the highest bed joint, mm.</param>
    /// <param name="foot">Where the wall ends, mm.</param>
    public static IEnumerable<double> RowsBelow(Site site, double from, double foot)
    {
        const double Clear = 20;
        var rows = RowSpacing(site);
        var bed = from;
        while (IsBuiltIn(bed))
        {
            bed -= Courses.Block;
        }

        while (bed > foot + Clear)
        {
            yield return bed;
            var next = bed - rows;
            while (IsBuiltIn(next) && next + Courses.Block < bed)
            {
                next += Courses.Block;
            }

            next = IsBuiltIn(next) ? bed - rows : next;
            while (IsBuiltIn(next))
            {
                next -= Courses.Block;
            }

            bed = next;
        }

        bool IsBuiltIn(double at)
        {
            var row = Tie(site, at).Bounds.Grow(Clear);
            return at > foot && site.Blanks.Any(blank => blank.Coursing?.LeavesOut(at) == true
                || (blank.Stage == Stage.RoofStructure && blank.Precedence != Precedence.Fill && blank.Region.Bounds.Meets(row) && !blank.Region.Intersect(Region.Box(row)).IsEmpty));
        }
    }

    private static double Middle(Site site) => (site.Face(Faces.CavityLeft) + site.Face(Faces.CavityRight)) / 2;

    private static Region Tie(Site site, double bed) =>
        Region.Box(Middle(site) - (site.Length("tie.length") / 2), bed + 3, Middle(site) + (site.Length("tie.length") / 2), bed + 7);

    // Where it falls clear of both leaves and of a board on one of them. Above a tray that keeps the cavity dry there is no board.
    private static Region Drip(Site site, double bed, TrayLine tray)
    {
        var at = tray.DryAbove && bed > tray.At(Middle(site)) ? Middle(site) : (site.Face(Faces.ClearLeft) + site.Face(Faces.ClearRight)) / 2;
        return Region.Box(at - 3, bed - 4, at + 3, bed + 7);
    }
}
