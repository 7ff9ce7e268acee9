using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions.Abutment;

/// <summary>The foot of external insulation and render above a roof: a drip profile, and a strip that closes the wedge down to the flashing.</summary>
internal static class CladdingBase
{
    /// <summary>Metal of the profile and length of its drip; mm, common practice, no source.</summary>
    private const double Metal = 1, Drip = 8;

    /// <param name="face">Face of the blockwork, mm.</param>
    /// <param name="foot">Underside of insulation and render, mm.</param>
    public static void Build(Site site, Upstand upstand, double face, double foot)
    {
        var weather = site.Face(Faces.Weather);
        site.Lay(
            "wall.base-profile", "Drip profile", "wall.base-profile", Element.Wall, Roles.Drainage | Roles.Fixing, Stage.Cladding,
            [new(face, foot - Metal), new(weather, foot - Metal), new(weather, foot - Metal - Drip)], Metal, [], Seat.Between, runsOn: false,
            "wall.insulation-base");
        var front = upstand.Outer(site) + site.Length("roof.membrane") + site.Length("flashing.clearance");
        // A flashing that comes down just behind the drip would leave a slit there: the strip then goes on to the edge.
        var end = front + site.Length("flashing.thickness") + 3 > weather ? weather : front;
        site.Add(new(
            "wall.base-seal", "Compressible strip", "wall.base-seal", Element.Wall,
            Region.Polygon(new(face, upstand.Head(face)), new(end, upstand.Head(end)), new(end, foot), new(face, foot)),
            Roles.Insulation, Precedence.Fill, Stage.Cladding)
        {
            Parameters = ["wall.insulation-base"],
        });
    }
}
