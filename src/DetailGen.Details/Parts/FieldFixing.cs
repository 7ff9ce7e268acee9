using DetailGen.Details.Constructions;
using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// A fixing of a membrane that is fastened mechanically: its plate lies under the lap of the sheet that covers it, so that nothing goes through the finished membrane, and its
/// screw through the insulation into what carries the roof. One row is drawn, clear of the lap at the upstand.
/// </summary>
internal static class FieldFixing
{
    public const string Id = "roof.membrane-fixing";

    private const string Slot = "membrane-fixing";

    /// <summary>Plate and screw, mm: common practice, no source.</summary>
    private const double Plate = 40, Thick = 2, Screw = 5;

    /// <summary>From the end of the upstand membrane's lap, and from a joint of the boards; mm.</summary>
    private const double Off = 120, OffJoint = 50;

    /// <param name="lapEnd">Where the upstand membrane ends on the field sheet, mm.</param>
    public static void Build(Site site, PlacedRoof roof, double lapEnd)
    {
        if (!site.Sizes.HasMaterial(Slot))
        {
            return;
        }

        var at = lapEnd + Off;
        if (site.Blanks.Any(board => board.Stage == Stage.RoofInsulation && Math.Abs(board.Region.Bounds.Right - at) < OffJoint))
        {
            at += 2 * OffJoint;
        }

        // Each stands for its share of the square metre, in rows a metre apart.
        var top = roof.Plane.At(at) + roof.Find(RoofBehaviour.Membrane)!.Bottom;
        var region = Region.Box(at - Plate / 2, top - Thick, at + Plate / 2, top).Union(Region.Box(at - Screw / 2, roof.Anchored(at), at + Screw / 2, top));
        site.Add(new(Id, "Membrane fixing", Slot, Element.Roof, region, Roles.Fixing, Precedence.Sheet, Stage.Waterproofing)
        {
            Presence = Presence.Local,
            Parameters = ["membrane.fixings"],
            Repeat = new(1000 / site.Sizes.Number("membrane.fixings")),
        });
    }
}
