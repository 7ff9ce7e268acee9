using DetailGen.Details.Constructions;
using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// The insulated upstand: vapour control layer up the face behind it and over its head, insulation, backing, fillet, membrane. Its head either ends
/// at the wall under a flashing, or runs on over the wall under a coping.
/// </summary>
/// <param name="Wall">Face against which it stands, mm.</param>
/// <param name="HeadAtWall">Level of the head, on the vapour control layer, at that face; mm.</param>
/// <param name="HeadRatio">The head falls 1:n towards the roof; null for level.</param>
/// <param name="MembraneEnd">Where the upstand membrane begins: its last points before the head's corner at the wall, from its edge on.</param>
internal sealed record Upstand(double Wall, double HeadAtWall, double? HeadRatio, IReadOnlyList<Point> MembraneEnd)
{
    public const string MembraneId = "upstand.membrane";

    /// <summary>What may lie on the deck before the vapour control layer and lap under it.</summary>
    public const string AirSealId = "upstand.air-seal";

    public static double Depth(Site site) =>
        site.Length("roof.vcl") + site.Length("upstand.insulation") + site.Length("upstand.backing");

    /// <summary>
    /// Where the field membrane begins, mm: at the foot of the fillet, under the lap of the upstand; coats of one poured mass pass into each other within their thickness,
    /// so that no step of twice that thickness stands in the way of the water, and begin after the lap. Common practice, no source.
    /// </summary>
    public static double FieldStart(Site site, double outer) =>
        outer + site.Length("upstand.fillet") + site.Sizes.LengthOrZero("membrane.joint");

    /// <summary>Level of the head on the vapour control layer, mm.</summary>
    public double Head(double x) => HeadAtWall - (HeadRatio is { } n ? (x - Wall) / n : 0);

    public double Outer(Site site) => Wall + Depth(site);

    public void Build(Site site, PlacedRoof roof, double roofEnd)
    {
        BuildVapourControl(site, roof, roofEnd);
        var plane = roof.Plane;
        var outer = Outer(site);
        var inner = outer - site.Length("upstand.backing");
        AddBoard(site, "upstand.insulation", "Upstand insulation", Wall, inner, Roles.Insulation, roof);
        AddBoard(site, "upstand.backing", "Backing board", inner, outer, Roles.Support, roof);
        var leg = site.Length("upstand.fillet");
        double Floor(double x) => plane.At(x) + roof.Base;
        var toe = new Point(outer + leg, Floor(outer + leg));
        var throat = new Point(outer, Floor(outer) + leg);
        if (leg > 0)
        {
            site.Add(new(
                "upstand.fillet", "Fillet", "upstand.fillet", Element.Roof, Region.Polygon(new(outer, Floor(outer)), toe, throat),
                Roles.Support, Precedence.Board, Stage.Upstand)
            {
                Parameters = ["upstand.fillet"],
            });
        }

        // The field sheet is held down under the lap that then goes over bar and fixings. Poured, the two run into each other.
        var end = toe.X + site.Length("membrane.lap");
        var joined = site.Sizes.HasLength("membrane.joint");
        BuildRestraint(site, roof, toe.X);
        FieldFixing.Build(site, roof, end);
        site.Lay(new(
            MembraneId, "Upstand membrane", MembraneId, Element.Roof, Roles.WaterBarrier, Stage.Waterproofing,
            [.. MembraneEnd, new(Wall, HeadAtWall), new(outer, Head(outer)), throat, toe, .. plane.Line(toe.X, end, roof.Base).Skip(1)],
            site.Length("roof.membrane"))
        {
            Over = joined ? ["wall.head-membrane"] : ["roof.membrane", "wall.head-membrane"],
            Seat = Seat.Face,
            RunsOn = joined,
            Parameters = ["upstand.height", "membrane.lap", "roof.membrane"],
        });
    }

    // From the face of the backing over the head of the upstand, down the face behind it and out over the deck; over the head it lies under the line that carries the membrane.
    private void BuildVapourControl(Site site, PlacedRoof roof, double roofEnd)
    {
        var placed = roof.Find(RoofBehaviour.VapourControl)!;
        var outer = Outer(site);
        var returned = site.Length("vcl.return") - Depth(site);
        IReadOnlyList<Point> edge = returned > 0 ? [new(outer, Head(outer) - returned)] : [];
        site.Lay(new(
            placed.Layer.Slot, placed.Layer.Name, placed.Layer.Slot, Element.Roof, placed.Layer.Roles, Stage.VapourControl,
            [.. edge, new(outer, Head(outer)), new(Wall, HeadAtWall), .. roof.Plane.Line(Wall, roofEnd, placed.Bottom)],
            placed.Thickness)
        {
            Over = [AirSealId],
            RunsOn = true,
            Parameters = [placed.Layer.Thickness, "vcl.return"],
        });
    }

    private void AddBoard(Site site, string id, string name, double left, double right, Roles roles, PlacedRoof roof)
    {
        if (site.Length(id) > 0)
        {
            var outline = Region.Polygon([.. roof.Plane.Line(left, right, roof.Base), new(right, Head(right)), new(left, Head(left))]);
            site.Add(new(id, name, id, Element.Roof, outline, roles, Precedence.Board, Stage.Upstand)
            {
                Parameters = [id, "upstand.height"],
                Axis = new(0, 1),
            });
        }
    }

    // Sheets of one layer shrink; what is bonded in layers or poured needs no bar.
    private static void BuildRestraint(Site site, PlacedRoof roof, double toe)
    {
        if (!site.Sizes.HasMaterial("upstand.restraint"))
        {
            return;
        }

        var top = roof.Find(RoofBehaviour.Membrane)!.Top;
        var (left, right) = (toe + 20, toe + 50);
        var floor = roof.Plane.At((left + right) / 2) + top;
        var bar = Region.Box(left, floor, right, floor + 3).Union(Region.Box(toe + 32.5, roof.Anchored(toe + 35), toe + 37.5, floor + 3));
        site.Add(new("upstand.restraint", "Restraint bar", "upstand.restraint", Element.Roof, bar, Roles.Fixing, Precedence.Sheet, Stage.Waterproofing)
        {
            Presence = Presence.Local,
            Parameters = ["upstand.restraint-centres"],
            Repeat = new(site.Length("upstand.restraint-centres")),
        });
    }
}
