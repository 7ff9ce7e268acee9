using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>The head of a parapet, as the coping finds it; mm.</summary>
/// <param name="Head">Level on which damp-proof course or packing lies.</param>
/// <param name="RoofFace">Nominal face on the roof side: the wall's, or the backing's where an upstand runs up to the coping.</param>
/// <param name="Beneath">Ids of the sheets that run over the head.</param>
internal sealed record CopingSeat(double Head, double RoofFace, IReadOnlyList<string> Beneath);

/// <summary>The coping: caps wall and upstand, oversails both faces and drips clear of them.</summary>
internal static class Coping
{
    /// <summary>The sloping board under a metal coping, mm, and how far its membrane turns down; common practice, no source.</summary>
    private const double Board = 18, TurnDown = 40;

    public static void Build(Site site, CopingSeat seat)
    {
        if (site.Sizes.Is("coping.kind", "metal"))
        {
            BuildMetal(site, seat);
        }
        else
        {
            BuildMasonry(site, seat);
        }
    }

    /// <summary>Top surface, left to right.</summary>
    private static IReadOnlyList<Point> Top(Site site, double left, double right)
    {
        var high = site.Level(Levels.CopingTop);
        var low = high - site.Length("coping.rise");
        return site.Sizes.Choice("coping.fall-to") switch
        {
            "roof" => [new(left, high), new(right, low)],
            "outside" => [new(left, low), new(right, high)],
            _ => [new(left, low), new((left + right) / 2, high), new(right, low)],
        };
    }

    private static (double Left, double Right) Edges(Site site) =>
        (site.Face(Faces.Weather) - site.Length("coping.overhang"), site.Face(Faces.HeadRoofSide) + site.Length("coping.overhang-inside"));

    private static void BuildMasonry(Site site, CopingSeat seat)
    {
        var (left, right) = Edges(site);
        var top = Top(site, left, right);
        var under = site.Level(Levels.CopingTop) - site.Length("coping.rise") - site.Length("coping.thickness");
        var clear = site.Length("coping.drip-clearance");
        var beyond = site.Length("coping.dpc-projection");
        var (wide, deep) = (site.Length("coping.drip-width"), site.Length("coping.drip-depth"));
        var (weather, roof) = (site.Face(Faces.Weather), site.Face(Faces.HeadRoofSide));
        site.Lay(
            "coping.dpc", "Damp-proof course", "coping.dpc", Element.Wall, Roles.WaterBarrier, Stage.Head,
            [new(weather - beyond, seat.Head), new(roof + beyond, seat.Head)], site.Length("coping.dpc-thickness"), seat.Beneath, Seat.Between, runsOn: false, "coping.dpc-thickness");
        site.Add(new(
            "coping.bed", "Mortar bed", "coping.bed", Element.Wall, Region.Box(weather, seat.Head, roof, under), Roles.Support, Precedence.Fill, Stage.Head)
        {
            Parameters = ["coping.bed"],
        });
        var stone = Region.Polygon([new(left, under), new(right, under), .. top.Reverse()])
            .Minus(Region.Box(weather - clear - wide, under, weather - clear, under + deep))
            .Minus(Region.Box(roof + clear, under, roof + clear + wide, under + deep));
        site.Add(new("coping", "Coping", "coping", Element.Wall, stone, Roles.WaterBarrier | Roles.Finish, Precedence.Board, Stage.Head)
        {
            Parameters = ["coping.width", "coping.thickness", "coping.fall", "coping.overhang", "coping.overhang-inside", "coping.drip-clearance"],
        });
    }

    // From the head upwards: packing, sloping board, membrane turned down both faces, pressed sheet with legs that stand off.
    private static void BuildMetal(Site site, CopingSeat seat)
    {
        var (left, right) = Edges(site);
        var sheet = site.Length("coping.sheet");
        var membrane = site.Length("coping.dpc-thickness");
        var ratio = (double)site.Sizes.Number("coping.fall");
        var slant = Math.Sqrt(1 + (1 / (ratio * ratio)));
        var top = Top(site, left, right);
        IReadOnlyList<Point> Line(double from, double to, double down) =>
        [
            new(from, At(top, from) - down),
            .. top.Where(point => point.X > from && point.X < to).Select(point => new Point(point.X, point.Y - down)),
            new(to, At(top, to) - down),
        ];
        var weather = site.Face(Faces.Weather);
        var roof = seat.RoofFace;
        var legs = seat.Head - site.Length("coping.leg");
        var bare = sheet * slant;
        var board = Line(weather, roof, bare + (membrane * slant));
        site.Lay(
            "coping.dpc", "Membrane under the coping", "coping.dpc", Element.Wall, Roles.WaterBarrier, Stage.Head,
            [new(weather, seat.Head - TurnDown), .. board, new(roof, seat.Head - TurnDown)], membrane, seat.Beneath, Seat.Between, runsOn: false, "coping.dpc-thickness");
        site.Lay(
            "coping", "Coping", "coping", Element.Wall, Roles.WaterBarrier | Roles.Finish, Stage.Head,
            [new(left + sheet, legs), .. Line(left + sheet, right - sheet, bare), new(right - sheet, legs)], sheet, ["coping.dpc"], Seat.Face, runsOn: false,
            "coping.width", "coping.thickness", "coping.fall", "coping.overhang", "coping.overhang-inside", "coping.leg");
        var under = Line(weather, roof, bare + ((membrane + Board) * slant));
        site.Add(new(
            "coping.board", "Sloping board", "coping.board", Element.Wall, Region.Polygon([.. under, .. board.Reverse()]), Roles.Support, Precedence.Board, Stage.Head)
        {
            Axis = (under[1] - under[0]).Unit,
        });
        var packing = Region.Polygon([new(weather, seat.Head), new(roof, seat.Head), .. under.Reverse()]);
        site.Add(new("coping.packing", "Tapered packing", "coping.packing", Element.Wall, packing, Roles.Support, Precedence.Fill, Stage.Head));
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
