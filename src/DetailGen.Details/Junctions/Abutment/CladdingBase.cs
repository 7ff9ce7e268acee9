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
    /// <remarks>It stands before insulation and render are set on it.</remarks>
    public static void BuildProfile(Site site, Upstand upstand, double face, double foot)
    {
        var weather = site.Face(Faces.Weather);
        var sheets = site.Length("roof.membrane") + site.Length("flashing.thickness");
        var (outside, over) = Flashing(site, upstand);
        var front = outside - site.Length("flashing.thickness");
        var drip = !over ? Drip : front < weather + 5 ? 0 : Math.Min(Drip, foot - Metal - upstand.Head(weather) - sheets - 4);
        IReadOnlyList<Point> nose = drip >= 1 ? [new(weather, foot - Metal - drip)] : [];
        site.Lay(new(
            "wall.base-profile", "Drip profile", "wall.base-profile", Element.Wall, Roles.Drainage | Roles.Fixing, Stage.CladdingAbove,
            [new(face, foot - Metal), new(weather, foot - Metal), .. nose], Metal)
        {
            Over = ["flashing"],
            Parameters = ["wall.insulation-base"],
        });
    }

    /// <param name="face">Face of the blockwork, mm.</param>
    /// <param name="foot">Underside of insulation and render, mm.</param>
    public static void BuildSeal(Site site, Upstand upstand, double face, double foot)
    {
        var (outside, over) = Flashing(site, upstand);

        // It starts within the flashing, which is cut out of it, so that nothing of it comes to lie in the clearance behind.
        double Under(double x) => upstand.Head(x) + (site.Length("flashing.thickness") / 2);
        var end = over ? site.Face(Faces.Weather) : outside;
        site.Add(new(
            "wall.base-seal", "Compressible strip", "wall.base-seal", Element.Wall,
            Region.Polygon(new(face, Under(face)), new(end, Under(end)), new(end, foot), new(face, foot)),
            Roles.Insulation, Precedence.Fill, Stage.CladdingAbove)
        {
            Parameters = ["wall.insulation-base"],
        });
    }

    // Where the flashing's outer face is, mm, and whether it comes out under the drip.
    private static (double Outside, bool Over) Flashing(Site site, Upstand upstand)
    {
        var outside = upstand.Outer(site) + site.Length("roof.membrane") + site.Length("flashing.clearance") + site.Length("flashing.thickness");
        return (outside, outside + 3 > site.Face(Faces.Weather));
    }
}
