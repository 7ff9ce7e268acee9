using DetailGen.Details.Constructions;
using DetailGen.Details.Parts;

namespace DetailGen.Details.Junctions.Abutment;

/// <summary>
/// A roof against a wall that goes on above it. The wall stands turned round: its weather face looks at the roof, its room face at the higher room.
/// </summary>
internal sealed class Abutment : IJunction
{
    /// <summary>Height of the tray's leg on the inner leaf; mm, common practice, no source.</summary>
    private const double TrayLeg = 50;

    public string Id => "abutment";

    public bool Turned => true;

    public Plan Build(Site site, PlacedWall wall, IReadOnlyList<RoofLayer> roofLayers)
    {
        var free = site.Sizes.Is("roof.tied-to-wall", "no");
        var face = site.Face(Faces.RoofSide);
        var kerb = free ? new Kerb(face + site.Length("roof.deck-gap"), site.Length("upstand.kerb")) : null;
        var stands = kerb?.Face ?? face;
        var outer = stands + Upstand.Depth(site);
        var upstandFace = outer + site.Length("roof.membrane");
        var roof = PlacedRoof.Place(site, roofLayers, upstandFace);
        var ceiling = site.Level(Levels.Ceiling);
        site.SetFace(Faces.HeadRoofSide, face);
        site.SetLevel(Levels.UpstandTop, site.Length("upstand.height"));
        var upstand = kerb is null
            ? new Upstand(stands, site.Length("upstand.height") - site.Length("upstand.termination"), site.Sizes.Number("upstand.head-fall"), [new(face, site.Length("upstand.height"))])
            : kerb.Upstand(site);

        var bed = site.Length("flashing.bed");
        var cavity = wall.Cavity is not null;
        var tray = cavity ? Tray(site) : null;
        var clad = site.Sizes.HasLength("wall.insulation-base");
        var high = Math.Max(bed, tray is null ? 0 : tray.Line[0].Y + TrayLeg);
        var reach = Extents.Reach(site, wall);
        var top = high + Courses.Block + reach;
        var foot = ceiling - reach;
        var underside = clad ? site.Length("wall.insulation-base") : foot;
        if (clad)
        {
            CladdingBase.BuildProfile(site, upstand, face, underside);
        }

        wall.Build(site, new(foot, top, top, underside, top, Stage.CladdingAbove, top, bed, Ribbon: false), tray);
        var ends = new RoofEnds(stands, face - site.Length("roof.bearing"), Upstand.FieldStart(site, outer), outer, Extents.RoofEnd(site, upstandFace, reach)) { Edge = face };
        roof.Build(site, ends);
        MemberSeat.Build(site);
        kerb?.BuildSeal(site, roof, face);
        upstand.Build(site, roof, ends.End);
        kerb?.Build(site, roof, upstand, face);
        new CoverFlashing(bed, face).Build(site, upstand);
        if (kerb is null)
        {
            CoverFlashing.BuildTermination(site, face, site.Length("upstand.height"));
        }

        if (tray is not null)
        {
            site.SetLevel(Levels.TrayOutlet, bed);
            var leaf = wall.Bearing;
            var leg = tray.Line[0];
            new CavityTray([new(leg.X, leg.Y + TrayLeg), .. tray.Line], (leaf.Left, leaf.Right), bed).Build(site);
        }

        if (clad)
        {
            CladdingBase.BuildSeal(site, upstand, face, underside);
        }

        roof.BuildFinish(site, ends);
        if (!free)
        {
            RestraintStrap.Build(site, ends.End);
        }

        BoardAnchors.Build(site, wall, downwards: false);

        if (tray is not null)
        {
            WallTies.Build(site, TieBeds(site, tray, bed, foot, top), tray);
        }

        return AbutmentPlan.Make(site, wall, roof, upstand, ends, foot, top, high, tray);
    }

    // Fixed to the leaf on the room side, down across the cavity and right through the leaf that looks at the roof.
    private static TrayLine Tray(Site site)
    {
        var low = site.Length("flashing.bed");
        var (left, right) = (site.Face(Faces.CavityLeft), site.Face(Faces.CavityRight));
        return new([new(left, low + site.Length("tray.step")), new(right, low), new(site.Face(Faces.RoofSide) + CavityTray.Projection, low)], false);
    }

    // At block courses that both leaves share, clear of the tray.
    private static IEnumerable<double> TieBeds(Site site, TrayLine tray, double bed, double foot, double top)
    {
        const double Clear = 20;
        var rows = WallTies.RowSpacing(site);
        var above = new List<double>();
        for (var row = bed + (Math.Ceiling((tray.Line[0].Y + TrayLeg + Clear - bed) / Courses.Block) * Courses.Block); row < top - Clear; row += rows)
        {
            above.Add(row);
        }

        return above.Concat(WallTies.RowsBelow(site, bed - Courses.Block, foot));
    }
}
