using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Parapet;

/// <summary>A wall that rises above the roof at its edge: roof, insulated upstand, tray and flashing or membrane to the head, coping.</summary>
internal sealed class Parapet : IJunction
{
    public string Id => "parapet";

    public bool Turned => false;

    public Plan Build(Site site, PlacedWall wall, IReadOnlyList<RoofLayer> roofLayers)
    {
        var sizes = site.Sizes;
        var toCoping = sizes.Is("upstand.top", "coping");
        var cavity = wall.Cavity is not null;
        var face = site.Face(Faces.RoofSide);
        var depth = Upstand.Depth(site);
        var outer = face + depth;
        var upstandFace = outer + site.Length("roof.membrane");
        var roof = PlacedRoof.Place(site, roofLayers, upstandFace);
        var ceiling = site.Level(Levels.Ceiling);
        var wallHead = site.Length("parapet.wall-head");
        var head = site.Length("parapet.head");
        site.SetFace(Faces.HeadRoofSide, toCoping ? upstandFace : face);
        site.SetLevel(Levels.WallHead, wallHead);
        site.SetLevel(Levels.UpstandTop, toCoping ? head : site.Length("upstand.height"));
        site.SetLevel(Levels.CopingTop, site.Length("parapet.height"));

        var reach = Extents.Reach(site, wall);
        var ends = new RoofEnds(
            face, face - site.Sizes.LengthOrZero("roof.bearing"), Upstand.FieldStart(site, outer), outer, Extents.RoofEnd(site, upstandFace, reach));
        var foot = ceiling - reach;
        var lifted = sizes.HasMaterial("wall.head-membrane");

        TrayLine? line = null;
        if (cavity)
        {
            line = Tray(site);
            site.SetLevel(Levels.TrayOutlet, site.Length("tray.outlet"));
        }

        wall.Build(site, new(foot, wallHead, head, foot, head, Stage.Cladding, ceiling, wallHead, Ribbon: true), line);
        roof.Build(site, ends);
        MemberSeat.Build(site);
        if (lifted)
        {
            site.Lay(new(
                "wall.head-membrane", "Secondary membrane", "wall.head-membrane", Element.Wall, Roles.WaterBarrier, Stage.Waterproofing,
                [new(0, head), new(face, head)], site.Length("parapet.head-membrane"))
            {
                Parameters = ["parapet.head-membrane"],
            });
        }

        var upstand = toCoping
            ? new Upstand(face, head, null, [new(lifted ? site.Face(Faces.BearingEnd) : 0, head)])
            : new Upstand(face, site.Length("upstand.height") - site.Length("upstand.termination"), sizes.Number("upstand.head-fall"), [new(face, site.Length("upstand.height"))]);
        upstand.Build(site, roof, ends.End);
        var bed = toCoping ? double.NaN : site.Length("flashing.bed");
        if (!toCoping)
        {
            new CoverFlashing(bed, face).Build(site, upstand);
            CoverFlashing.BuildTermination(site, face, site.Length("upstand.height"));
            if (!cavity)
            {
                WallDpc.Build(site, bed);
            }
        }

        if (line is not null)
        {
            var drains = sizes.Is("tray.discharge", "outside") ? wall.Layers.First(placed => placed.Layer.As == WallBehaviour.Leaf) : wall.Bearing;
            new CavityTray(line.Line, (drains.Left, drains.Right), site.Length("tray.outlet")).Build(site);
        }

        BuildHead(site, wall, cavity, wallHead, head);
        IReadOnlyList<string> beneath = [.. lifted ? ["wall.head-membrane"] : Array.Empty<string>(), .. toCoping ? [Upstand.MembraneId] : Array.Empty<string>()];
        Coping.Build(site, new(head, toCoping ? outer : face, beneath, [.. wall.Layers.Where(placed => placed.Layer.As == WallBehaviour.Leaf)]));
        roof.BuildFinish(site, ends);
        RestraintStrap.Build(site, ends.End);
        BoardAnchors.Build(site, wall, downwards: true);
        if (line is not null)
        {
            WallTies.Build(site, TieBeds(site, line, foot), line);
        }

        return ParapetPlan.Make(site, wall, roof, upstand, ends, foot, head, line, toCoping);
    }

    // Towards the roof the tray starts in the outer leaf and passes through the inner; towards outside it passes through both, so that the leaf
    // above the roof is cut off from the room as well.
    private static TrayLine Tray(Site site)
    {
        var (left, right) = (site.Face(Faces.CavityLeft), site.Face(Faces.CavityRight));
        var low = site.Length("tray.outlet");
        var high = low + site.Length("tray.step");
        var face = site.Face(Faces.RoofSide);
        return site.Sizes.Is("tray.discharge", "outside")
            ? new([new(-CavityTray.Projection, low), new(left, low), new(right, high), new(face + (site.Sizes.Is("upstand.top", "coping") ? 0 : CavityTray.Projection), high)], true)
            : new([new(left - site.Length("tray.embedment"), high), new(left, high), new(right, low), new(face + CavityTray.Projection, low)], true);
    }

    private static void BuildHead(Site site, PlacedWall wall, bool cavity, double wallHead, double head)
    {
        if (cavity)
        {
            var bearing = site.Length("coping.plate-bearing");
            site.Add(new(
                "coping.plate", "Support plate", "coping.plate", Element.Wall,
                Region.Box(site.Face(Faces.CavityLeft) - bearing, head - site.Length("coping.plate"), site.Face(Faces.CavityRight) + bearing, head),
                Roles.Support, Precedence.Member, Stage.WallHead)
            {
                Parameters = ["coping.plate", "coping.plate-bearing"],
            });
        }

        if (site.Sizes.HasLength("parapet.head-insulation"))
        {
            site.Add(new(
                "parapet.head-insulation", "Insulation over the wall head", "parapet.head-insulation", Element.Wall,
                Region.Box(site.Face(Faces.BearingEnd), wallHead, site.Face(Faces.RoofSide), head), Roles.Insulation | Roles.Support, Precedence.Board, Stage.WallHead)
            {
                Parameters = ["parapet.head-insulation"],
            });
            return;
        }

        var number = 1;
        foreach (var leaf in wall.Layers.Where(placed => placed.Layer.As == WallBehaviour.Leaf))
        {
            site.Add(new(
                number == 1 ? "coping.bed-lower" : $"coping.bed-lower.{number}", "Mortar bed", "coping.bed", Element.Wall,
                Region.Box(leaf.Left, wallHead, leaf.Right, head), Roles.Support, Precedence.Fill, Stage.WallHead)
            {
                Again = true,
                Parameters = ["coping.bed"],
            });
            number++;
        }
    }

    // Above the tray both leaves are laid in brick courses; below it the rows lie at block courses, so that they meet beds of both leaves.
    private static IEnumerable<double> TieBeds(Site site, TrayLine tray, double foot)
    {
        var top = site.Level(Levels.WallHead) - site.Length("tie.top-distance");
        var below = tray.Lowest - Courses.Block;
        return WallTies.RowsAbove(site, top, tray.Lowest + site.Length("tray.step"), below).Concat(WallTies.RowsBelow(site, below, foot));
    }
}
