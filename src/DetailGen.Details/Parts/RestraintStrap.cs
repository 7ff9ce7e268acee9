using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// The strap that holds the wall to a timber roof; a slab holds it without one. In the leaf that the roof meets it lies flat in a bed joint and is turned down behind.
/// Over joists along the wall it goes on flat, let into their tops, with noggings between them and a packing to the wall; for joists across the wall it is twisted on to the side of one.
/// Where no course brings a bed there, units are cut and a bed is made up.
/// </summary>
internal static class RestraintStrap
{
    /// <summary>Turn down behind the leaf, length of the twist, how far it runs along the side of a joist, and how near it comes to the joist's edges; mm, common practice, no source.</summary>
    private const double TurnDown = 100, Twist = 60, Along = 1000, Edge = 15;

    /// <summary>A bed so near takes the strap without a cut; mm.</summary>
    private const double Near = 2;

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

    // The narrow side of the strap would look at the deck: seen on the joist is its broad side.
    private static void BuildOnSide(Site site, double end)
    {
        var (thick, half) = (site.Length("strap.thickness"), site.Length("strap.width") / 2);
        var (face, top) = (site.Face(Faces.RoofSide), site.Level(Levels.StructureTop));
        var off = half + Edge - (thick / 2);
        var under = InBed(site, top - site.Length("roof.joist-depth") + off, top - off - thick);
        var middle = under + (thick / 2);
        var along = Math.Min(face + Along, end);
        Add(site, "strap", Region.Polygon(
            new(face, middle - (thick / 2)), new(face + Twist, middle - half), new(along, middle - half),
            new(along, middle + half), new(face + Twist, middle + half), new(face, middle + (thick / 2))), "strap.thickness");
        Add(site, "strap.end", Flat(site, face, under), "strap.width");
    }

    private static void BuildOnTop(Site site, double end)
    {
        var (thick, width, centres) = (site.Length("strap.thickness"), site.Length("roof.joist-width"), site.Length("roof.joist-centres"));
        var (face, under) = (site.Face(Faces.RoofSide), site.Level(Levels.StructureTop) - thick);
        InBed(site, under, under);
        var first = face + site.Length("roof.joist-wall-gap");
        var joists = site.Sizes.Number("strap.joists");
        Add(site, "strap", Flat(site, Math.Min(first + ((joists - 1) * centres) + width, end), under), "strap.width");
        var deep = site.Length("roof.joist-depth") / 2;
        AddTimber(site, "strap.packing", "Packing under the strap", face, first, Presence.Local, again: true);
        for (var number = 1; number < joists; number++)
        {
            var (left, right) = (first + ((number - 1) * centres) + width, Math.Min(first + (number * centres), end));
            AddTimber(site, number == 1 ? "strap.nogging" : $"strap.nogging.{number}", "Nogging", left, right, Presence.Beyond, number > 1);
        }

        void AddTimber(Site site, string id, string name, double left, double right, Presence presence, bool again) =>
            site.Add(new(id, name, "strap.nogging", Element.Roof, Region.Box(left, under - deep, right, under), Roles.Support, Precedence.Member, Stage.RoofStructure)
            {
                Presence = presence,
                Parameters = ["roof.joist-depth", "strap.joists"],
                Repeat = new(site.Length("strap.spacing"), Nogging),
                Again = again,
            });
    }

    // Through the leaf and down behind it; without a cavity it turns down in a chase of the leaf.
    private static Region Flat(Site site, double reach, double under)
    {
        var thick = site.Length("strap.thickness");
        var back = site.Face(Faces.BearingEnd) - (site.HasFace(Faces.CavityLeft) ? thick : 0);
        return Region.Box(back, under, reach, under + thick).Union(Region.Box(back, under + thick - TurnDown, back + thick, under + thick));
    }

    // Underside of the strap: in the middle of the highest bed within reach, or of one that is made up; a wall that is cast has none, and takes it anywhere.
    private static double InBed(Site site, double low, double high)
    {
        var (left, right) = (site.Face(Faces.BearingEnd), site.Face(Faces.RoofSide));
        var leaf = site.Blanks.First(blank => blank.Coursing is not null && blank.Region.Contains(new((left + right) / 2, low)));
        if (site.Sizes.Material(leaf.Slot).IsCast)
        {
            return high;
        }

        var inJoint = (leaf.Coursing!.Joint - site.Length("strap.thickness")) / 2;
        var near = Math.Min(Near, inJoint);
        double[] within = [.. leaf.Coursing.Beds(low - leaf.Coursing.Height, high).Select(bed => bed + inJoint).Where(level => level > low - near && level < high + near)];
        if (within.Length > 0)
        {
            return Math.Clamp(within[^1], low, high);
        }

        site.MakeUpBed(leaf, high - inJoint);
        return high;
    }

    // Its size out of the plane hangs on which side of it is seen.
    private static void Add(Site site, string id, Region region, string deep) =>
        site.Add(new(id, "Restraint strap", "strap", Element.Wall, region, Roles.Fixing, Precedence.Sheet, Stage.RoofStructure)
        {
            Presence = Presence.Local,
            Parameters = ["strap.spacing", "strap.width", "strap.thickness"],
            Repeat = new(site.Length("strap.spacing"), site.Length(deep)),
            Again = id != "strap",
        });
}
