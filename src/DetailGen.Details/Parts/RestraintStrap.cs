using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// The strap that holds the wall to a timber roof, turned round the back of the leaf that the roof meets; a slab holds it without one. Over joists along the wall
/// it lies flat, let into their tops, with noggings between them; joists across the wall have it on their side.
/// </summary>
internal static class RestraintStrap
{
    /// <summary>Turn down behind the leaf, level of a strap on the side of a joist below its top, and how far it runs along it; mm, common practice, no source.</summary>
    private const double TurnDown = 100, Below = 30, Along = 1000;

    /// <summary>Width of a nogging; mm, from memory. It is half as deep as the joists.</summary>
    private const double Nogging = 38;

    /// <param name="end">Where the model ends, mm.</param>
    public static void Build(Site site, double end)
    {
        if (!site.Sizes.HasChoice("roof.joists"))
        {
            return;
        }

        if (site.Sizes.Is("roof.joists", "across"))
        {
            BuildOnSide(site, end);
        }
        else
        {
            BuildOnTop(site, end);
        }
    }

    // The narrow side of the strap would look at the deck: seen here is its broad side, and the end that is bent round behind the leaf.
    private static void BuildOnSide(Site site, double end)
    {
        var top = site.Level(Levels.StructureTop) - Below;
        Add(site, Region.Box(Back(site), top - site.Length("strap.width"), Math.Min(site.Face(Faces.RoofSide) + Along, end), top), "strap.thickness");
    }

    private static void BuildOnTop(Site site, double end)
    {
        var (thick, width, centres) = (site.Length("strap.thickness"), site.Length("roof.joist-width"), site.Length("roof.joist-centres"));
        var (back, top) = (Back(site), site.Level(Levels.StructureTop));
        var first = site.Face(Faces.RoofSide) + site.Length("roof.joist-wall-gap");
        var joists = site.Sizes.Number("strap.joists");
        var reach = Math.Min(first + ((joists - 1) * centres) + width, end);
        Add(site, Region.Box(back, top - thick, reach, top).Union(Region.Box(back, top - TurnDown, back + thick, top)), "strap.width");
        var deep = site.Length("roof.joist-depth") / 2;
        for (var number = 1; number < joists; number++)
        {
            var (left, right) = (first + ((number - 1) * centres) + width, Math.Min(first + (number * centres), end));
            site.Add(new(
                number == 1 ? "strap.nogging" : $"strap.nogging.{number}", "Nogging", "strap.nogging", Element.Roof,
                Region.Box(left, top - thick - deep, right, top - thick), Roles.Support, Precedence.Member, Stage.RoofStructure)
            {
                Presence = Presence.Beyond,
                Parameters = ["roof.joist-depth", "strap.joists"],
                Repeat = new(site.Length("strap.spacing"), Nogging),
                Again = number > 1,
            });
        }
    }

    // Without a cavity it turns down in a chase of the leaf.
    private static double Back(Site site) => site.Face(Faces.BearingEnd) - (site.HasFace(Faces.CavityLeft) ? site.Length("strap.thickness") : 0);

    // Its size out of the plane hangs on which side of it is seen.
    private static void Add(Site site, Region region, string deep) =>
        site.Add(new("strap", "Restraint strap", "strap", Element.Wall, region, Roles.Fixing, Precedence.Sheet, Stage.RoofStructure)
        {
            Presence = Presence.Local,
            Parameters = ["strap.spacing", "strap.width", "strap.thickness"],
            Repeat = new(site.Length("strap.spacing"), site.Length(deep)),
        });
}
