using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>Ties between the leaves at bed joints, and the strap that holds the wall to the roof.</summary>
internal static class WallFixings
{
    /// <summary>Ties at the given bed joints (underside, mm); centred on the cavity.</summary>
    public static void BuildTies(Site site, IEnumerable<double> beds)
    {
        var (left, right) = (site.Face(Faces.CavityLeft), site.Face(Faces.CavityRight));
        var middle = (left + right) / 2;
        var half = site.Length("tie.length") / 2;
        var number = 1;
        foreach (var bed in beds)
        {
            var tie = Region.Box(middle - half, bed + 3, middle + half, bed + 7).Union(Region.Box(middle - 3, bed - 4, middle + 3, bed + 7));
            site.Add(new($"tie.{number}", "Wall tie", "tie", Element.Wall, tie, Roles.Fixing, Precedence.Sheet, Stage.WallBelow)
            {
                Presence = Presence.Local,
                Parameters = ["tie.length", "tie.horizontal-spacing", "tie.vertical-spacing"],
                Repeat = new(site.Length("tie.horizontal-spacing")),
                Again = number > 1,
            });
            number++;
        }
    }

    /// <summary>A strap over three joists, turned down behind the leaf that the roof bears on; none for a slab.</summary>
    /// <param name="end">Where the model ends, mm.</param>
    public static void BuildStrap(Site site, double end)
    {
        if (!site.Sizes.Has("roof.joists"))
        {
            return;
        }

        var back = site.Face(Faces.BearingEnd);
        var top = site.Level(Levels.StructureTop) - 40;
        var reach = site.Face(Faces.RoofSide) + (site.Sizes.Is("roof.joists", "across")
            ? 1000
            : site.Length("roof.joist-wall-gap") + (2 * site.Length("roof.joist-centres")) + site.Length("roof.joist-width"));
        reach = Math.Min(reach, end);
        var hook = site.HasFace(Faces.CavityLeft) ? back - 5 : back; // without a cavity it turns down in a chase of the leaf
        var strap = Region.Box(hook, top - 5, reach, top).Union(Region.Box(hook, top - 100, hook + 5, top));
        site.Add(new("strap", "Restraint strap", "strap", Element.Wall, strap, Roles.Fixing, Precedence.Sheet, Stage.RoofStructure)
        {
            Presence = Presence.Local,
            Parameters = ["strap.spacing"],
            Repeat = new(site.Length("strap.spacing"), 30),
        });
    }
}
