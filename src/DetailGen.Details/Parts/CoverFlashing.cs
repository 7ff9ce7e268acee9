using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>The cover flashing: tucked into a bed joint or chase of the wall, down its face, over the head of the upstand and down in front of it.</summary>
/// <param name="Bed">Underside of the joint or chase, mm.</param>
/// <param name="Face">Wall face in which it is, mm; left of the upstand where that stands free.</param>
internal sealed record CoverFlashing(double Bed, double Face)
{
    public void Build(Site site, Upstand upstand)
    {
        var tuck = site.Length("flashing.chase");
        var outer = upstand.Outer(site);
        var front = outer + site.Length("roof.membrane") + site.Length("flashing.clearance");
        var foot = upstand.Head(outer) - site.Length("flashing.lap");
        site.Lay(new(
            "flashing", "Cover flashing", "flashing", Element.Wall, Roles.WaterBarrier, Stage.Head,
            [new(Face - tuck, Bed), new(Face, Bed), new(Face, upstand.Head(Face)), new(front, upstand.Head(front)), new(front, foot)],
            site.Length("flashing.thickness"))
        {
            Over = [Upstand.MembraneId],
            Seat = Seat.Face,
            Parameters = ["flashing.lap", "flashing.chase"],
        });
        site.Add(new(
            "flashing.gap", "Clearance behind the flashing", "flashing", Element.Wall,
            Region.Polygon(new(outer, foot), new(front, foot), new(front, upstand.Head(front)), new(outer, upstand.Head(outer))),
            Roles.Air, Precedence.Air, Stage.Left)
        {
            Parameters = ["flashing.clearance"],
        });
    }

    /// <summary>
    /// The bar that holds a sheet's edge on the wall, under the flashing; the edge is at <paramref name="top"/>, mm. What is poured or spread grips the wall itself, and a bar
    /// screwed through it would crack it. Common practice, no source.
    /// </summary>
    public static void BuildTermination(Site site, double face, double top)
    {
        if (!site.Sizes.HasMaterial("upstand.termination"))
        {
            return;
        }

        var on = face + site.Length("roof.membrane");
        site.Add(new(
            "upstand.termination", "Termination bar", "upstand.termination", Element.Roof,
            Region.Box(on, top - 25, on + 3, top - 5), Roles.Fixing, Precedence.Sheet, Stage.Waterproofing)
        {
            Presence = Presence.Local,
            Repeat = new(250),
        });
    }
}
