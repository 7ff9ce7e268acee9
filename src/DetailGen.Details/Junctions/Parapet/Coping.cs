using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>The head of a parapet, as the coping finds it; mm.</summary>
/// <param name="Head">Level on which damp-proof course or packing lies.</param>
/// <param name="RoofFace">Nominal face on the roof side: the wall's, or the backing's where an upstand runs up to the coping.</param>
/// <param name="Beneath">Ids of the sheets that run over the head.</param>
/// <param name="Leaves">The leaves that carry it, lesser x first.</param>
internal sealed record CopingSeat(double Head, double RoofFace, IReadOnlyList<string> Beneath, IReadOnlyList<PlacedLayer> Leaves);

/// <summary>The coping: caps wall and upstand, oversails both faces and drips clear of them.</summary>
internal static class Coping
{
    public static void Build(Site site, CopingSeat seat)
    {
        var (left, right) = Edges(site);
        if (site.Sizes.Is("coping.kind", "metal"))
        {
            MetalCoping.Build(site, seat, Top(site, left, right), (left, right));
        }
        else
        {
            BuildMasonry(site, seat, Top(site, left, right), (left, right));
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

    /// <summary>Strip that closes the joint at the face of what does not bear, and the least of such a face that is left unbedded; mm, common practice, no source.</summary>
    private const double Strip = 15, LeastBeside = 5;

    /// <summary>A dowel in the joint between two stones, and the length of a stone; mm, from memory.</summary>
    private const double Dowel = 10, Stone = 600;

    private static void BuildMasonry(Site site, CopingSeat seat, IReadOnlyList<Point> top, (double Left, double Right) edges)
    {
        var under = site.Level(Levels.CopingTop) - site.Length("coping.rise") - site.Length("coping.thickness");
        var clear = site.Length("coping.drip-clearance");
        var beyond = site.Length("coping.dpc-projection");
        var (wide, deep) = (site.Length("coping.drip-width"), site.Length("coping.drip-depth"));
        var (weather, roof) = (site.Face(Faces.Weather), site.Face(Faces.HeadRoofSide));
        site.Lay(new(
            "coping.dpc", "Damp-proof course", "coping.dpc", Element.Wall, Roles.WaterBarrier, Stage.Head,
            [new(weather - beyond, seat.Head), new(roof + beyond, seat.Head)], site.Length("coping.dpc-thickness"))
        {
            Over = seat.Beneath,
            Parameters = ["coping.dpc-thickness"],
        });
        BuildBed(site, seat, under, (weather, roof));
        var stone = Region.Polygon([new(edges.Left, under), new(edges.Right, under), .. top.Reverse()])
            .Minus(Region.Box(weather - clear - wide, under, weather - clear, under + deep))
            .Minus(Region.Box(roof + clear, under, roof + clear + wide, under + deep));
        site.Add(new("coping", "Coping", "coping", Element.Wall, stone, Roles.WaterBarrier | Roles.Finish, Precedence.Board, Stage.Head)
        {
            Parameters = ["coping.width", "coping.thickness", "coping.fall", "coping.overhang", "coping.overhang-inside", "coping.drip-clearance"],
        });
        BuildDowel(site, stone, (weather + roof) / 2, under);
    }

    // Round enough on any paper.
    private static Region Bar(Point centre, double diameter)
    {
        const int Corners = 24;
        return Region.Polygon([.. Enumerable.Range(0, Corners).Select(corner => Math.SinCos(2 * Math.PI * corner / Corners)).Select(turn => new Point(centre.X + (diameter / 2 * turn.Cos), centre.Y + (diameter / 2 * turn.Sin)))]);
    }

    // Seen from its end, in the middle of the joint: half way up the stone over the middle of the wall.
    private static void BuildDowel(Site site, Region stone, double x, double under)
    {
        var y = (under + stone.Cut(new(x, under - 1), new(x, stone.Bounds.Top + 1))[^1].To.Y) / 2;
        site.Add(new("coping.dowel", "Dowel in the coping's joint", "coping.dowel", Element.Wall, Bar(new(x, y), Dowel), Roles.Fixing, Precedence.Sheet, Stage.Head)
        {
            Presence = Presence.Local,
            Repeat = new(Stone),
        });
    }

    // Mortar lies on the masonry alone. Over insulation and render beside it the joint stays open behind a strip: they would give way under the stone, and it would tip.
    private static void BuildBed(Site site, CopingSeat seat, double under, (double Weather, double Roof) face)
    {
        var (left, right) = (seat.Leaves[0].Left, seat.Leaves[^1].Right);
        left = left - face.Weather < LeastBeside ? face.Weather : left;
        right = face.Roof - right < LeastBeside ? face.Roof : right;
        site.Add(new("coping.bed", "Mortar bed", "coping.bed", Element.Wall, Region.Box(left, seat.Head, right, under), Roles.Support, Precedence.Fill, Stage.Head)
        {
            Parameters = ["coping.bed"],
        });
        var number = 0;
        foreach (var (from, to) in new[] { (left, face.Weather), (right, face.Roof) }.Where(side => side.Item1 != side.Item2))
        {
            var inner = Math.Abs(to - from) < Strip + LeastBeside ? from : to + (Math.Sign(from - to) * Strip);
            Add("coping.strip", "Strip under the coping", inner, to, Roles.WaterBarrier, Precedence.Fill, Stage.Head);
            if (inner != from)
            {
                Add("coping.joint", "Open joint under the coping", from, inner, Roles.Air, Precedence.Air, Stage.Left);
            }

            number++;
        }

        void Add(string id, string name, double one, double other, Roles roles, Precedence precedence, Stage stage) => site.Add(new(
            number == 0 ? id : $"{id}.{number + 1}", name, "coping.strip", Element.Wall,
            Region.Box(Math.Min(one, other), seat.Head, Math.Max(one, other), under), roles, precedence, stage)
        {
            Again = number > 0,
            Parameters = ["coping.bed"],
        });
    }
}
