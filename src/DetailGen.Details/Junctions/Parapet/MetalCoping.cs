using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>
/// A coping of pressed sheet, from the head upwards: packing that makes the fall, sloping board screwed down to the wall, membrane over the screws and down both faces,
/// clips on the edges of the board, and the sheet, whose legs stand off the wall, end in a drip turned outwards, and snap over the clips. Nothing is fixed through its top.
/// </summary>
internal static class MetalCoping
{
    /// <summary>The sloping board, and how far its membrane turns down; mm, common practice, no source.</summary>
    private const double Board = 18, TurnDown = 50;

    /// <summary>How far the foot of a leg is turned out, at 45 degrees; mm, common practice, no source. The claims on the drip clearance leave it room.</summary>
    private const double Drip = 8;

    /// <summary>Metal of a clip, its play in the drip, and shank of a screw; mm, common practice, no source.</summary>
    private const double Clip = 2, Play = 4, Shank = 5;

    /// <param name="top">Top surface, left to right.</param>
    /// <param name="edges">Outermost edges of the coping, mm.</param>
    public static void Build(Site site, CopingSeat seat, IReadOnlyList<Point> top, (double Left, double Right) edges)
    {
        var sheet = site.Length("coping.sheet");
        var membrane = site.Length("coping.dpc-thickness");
        var ratio = (double)site.Sizes.Number("coping.fall");
        var slant = Math.Sqrt(1 + (1 / (ratio * ratio)));
        IReadOnlyList<Point> Line(double from, double to, double down) =>
        [
            new(from, At(top, from) - down),
            .. top.Where(point => point.X > from && point.X < to).Select(point => new Point(point.X, point.Y - down)),
            new(to, At(top, to) - down),
        ];
        var weather = site.Face(Faces.Weather);
        var roof = seat.RoofFace;
        var edge = seat.Head - TurnDown;
        var bare = sheet * slant;
        var board = Line(weather, roof, bare + (membrane * slant));
        var under = Line(weather, roof, bare + ((membrane + Board) * slant));
        var packing = Region.Polygon([new(weather, seat.Head), new(roof, seat.Head), .. under.Reverse()]);
        site.Add(new("coping.packing", "Tapered packing", "coping.packing", Element.Wall, packing, Roles.Support, Precedence.Fill, Stage.Head));
        site.Add(new(
            "coping.board", "Sloping board", "coping.board", Element.Wall, Region.Polygon([.. under, .. board.Reverse()]), Roles.Support, Precedence.Board, Stage.Head)
        {
            Axis = (under[1] - under[0]).Unit,
        });
        BuildScrews(site, seat, board);
        site.Lay(new(
            "coping.dpc", "Damp-proof course", "coping.dpc", Element.Wall, Roles.WaterBarrier, Stage.Head, [new(weather, edge), .. board, new(roof, edge)], membrane)
        {
            Over = seat.Beneath,
            Parameters = ["coping.dpc-thickness"],
        });

        // The drip ends square to its slope, so that its outer corner is the edge of the coping.
        var legs = seat.Head - site.Length("coping.leg");
        var tip = sheet / Math.Sqrt(2);
        var (left, right) = (edges.Left + tip + Drip, edges.Right - tip - Drip);
        AddClip(site, "coping.clip", seat, [new(left + Play, legs + Drip), new(weather, seat.Head), board[0]]);
        AddClip(site, "coping.clip.2", seat, [board[^1], new(roof, seat.Head), new(right - Play, legs + Drip)]);
        site.Lay(new(
            "coping", "Coping", "coping", Element.Wall, Roles.WaterBarrier | Roles.Finish, Stage.Head,
            [new(left - Drip, legs), new(left, legs + Drip), .. Line(left, right, bare), new(right, legs + Drip), new(right + Drip, legs)], sheet)
        {
            Over = ["coping.dpc"],
            Seat = Seat.Face,
            Parameters = ["coping.width", "coping.thickness", "coping.fall", "coping.overhang", "coping.overhang-inside", "coping.leg"],
        });
    }

    // A flange on the edge of packing and board, over the membrane, and an arm down into the bend of the drip.
    private static void AddClip(Site site, string id, CopingSeat seat, IReadOnlyList<Point> face) => site.Add(new(
        id, "Coping clip", "coping.clip", Element.Wall, Bands.Strip(face, Clip), Roles.Fixing, Precedence.Sheet, Stage.Head)
    {
        Presence = Presence.Local,
        Sheet = new(face, Clip, ["coping.dpc", .. seat.Beneath]),
        Repeat = new(site.Length("coping.bracket-centres")),
        Parameters = ["coping.bracket-centres"],
        Again = id.Length > "coping.clip".Length,
    });

    // One beside each face, a third into the leaf, so that it keeps off a plate over the cavity.
    private static void BuildScrews(Site site, CopingSeat seat, IReadOnlyList<Point> board)
    {
        var (first, last) = (seat.Leaves[0], seat.Leaves[^1]);
        var foot = site.Level(Levels.WallHead) - site.Length("coping.fixing-depth");
        double[] stations = [first.Left + (first.Width / 3), last.Right - (last.Width / 3)];
        for (var i = 0; i < stations.Length; i++)
        {
            var (left, right) = (stations[i] - (Shank / 2), stations[i] + (Shank / 2));
            site.Add(new(
                i == 0 ? "coping.screw" : $"coping.screw.{i + 1}", "Screw of the coping's board", "coping.screw", Element.Wall,
                Region.Box(left, foot, right, Math.Min(At(board, left), At(board, right))), Roles.Fixing, Precedence.Sheet, Stage.Head)
            {
                Presence = Presence.Local,
                Repeat = new(site.Length("coping.bracket-centres")),
                Parameters = ["coping.fixing-depth"],
                Axis = new(0, 1),
                Again = i > 0,
            });
        }
    }

    private static double At(IReadOnlyList<Point> line, double x)
    {
        for (var i = 1; i < line.Count; i++)
        {
            if (x <= line[i].X || i == line.Count - 1)
            {
                var (a, b) = (line[i - 1], line[i]);
                return a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
            }
        }

        return line[0].Y;
    }
}
