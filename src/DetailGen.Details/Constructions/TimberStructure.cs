using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>Joists with their firrings, the packing between wall and first joist, and the void: along the wall, or across it and bearing on it.</summary>
internal static class TimberStructure
{
    public static void Build(Site site, PlacedRoof roof, PlacedRoofLayer joists, RoofEnds ends)
    {
        var firring = roof.Find(RoofBehaviour.Firring)!;
        if (site.Sizes.Is("roof.joists", "across"))
        {
            BuildAcross(site, roof, joists, firring, ends);
        }
        else
        {
            BuildAlong(site, roof, joists, firring, ends);
        }
    }

    private static void BuildAcross(Site site, PlacedRoof roof, PlacedRoofLayer joists, PlacedRoofLayer firring, RoofEnds ends)
    {
        var repeat = new Repeat(site.Length("roof.joist-centres"), site.Length("roof.joist-width"));
        var joist = Region.Box(ends.Bearing, joists.Bottom, ends.End, joists.Top);
        site.Add(PlacedRoof.Blank(joists, joist, Precedence.Member, Stage.RoofStructure) with
        {
            Id = joists.Layer.Slot + ".1",
            Repeat = repeat,
            Parameters = [joists.Layer.Thickness, "roof.joist-width", "roof.joist-centres", "roof.joist-bearing"],
        });
        var gap = site.Length("roof.deck-gap");
        site.Add(PlacedRoof.Blank(firring, roof.Plane.Above(ends.Edge + gap, ends.End, firring.Bottom, firring.Top), Precedence.Member, Stage.RoofStructure) with
        {
            Id = firring.Layer.Slot + ".1",
            Repeat = repeat,
            Parameters = PlacedRoof.Taper(firring),
        });
        site.Add(Packing(site, roof.Plane.Above(ends.Edge, ends.Edge + gap, firring.Bottom, firring.Top)));
    }

    private static void BuildAlong(Site site, PlacedRoof roof, PlacedRoofLayer joists, PlacedRoofLayer firring, RoofEnds ends)
    {
        var gap = site.Length("roof.joist-wall-gap");
        var width = site.Length("roof.joist-width");
        var centres = site.Length("roof.joist-centres");
        site.Add(Packing(site, roof.Plane.Above(ends.Edge, ends.Edge + gap, joists.Bottom, firring.Top)));
        var left = ends.Edge + gap;
        for (var number = 1; left < ends.End; number++)
        {
            var right = Math.Min(left + width, ends.End);
            site.Add(PlacedRoof.Blank(joists, Region.Box(left, joists.Bottom, right, joists.Top), Precedence.Member, Stage.RoofStructure) with
            {
                Id = $"{joists.Layer.Slot}.{number}",
                Parameters = [joists.Layer.Thickness, "roof.joist-width", "roof.joist-centres"],
                Axis = new(0, 1),
            });
            site.Add(PlacedRoof.Blank(firring, roof.Plane.Above(left, right, firring.Bottom, firring.Top), Precedence.Member, Stage.RoofStructure) with
            {
                Id = $"{firring.Layer.Slot}.{number}",
                Parameters = PlacedRoof.Taper(firring),
            });
            var next = Math.Min(left + centres, ends.End);
            site.Add(new(
                number == 1 ? "roof.void" : $"roof.void.{number}", "Void between joists", joists.Layer.Slot, Element.Roof,
                roof.Plane.Above(right, next, joists.Bottom, firring.Top), Roles.Air, Precedence.Air, Stage.Left)
            {
                Again = number > 1,
            });
            left += centres;
        }
    }

    private static Blank Packing(Site site, Region region) =>
        new("roof.edge-packing", "Packing between wall and joist", "roof.edge-packing", Element.Roof, region, Roles.Insulation, Precedence.Fill, Stage.RoofStructure)
        {
            Parameters = [site.Sizes.Is("roof.joists", "across") ? "roof.deck-gap" : "roof.joist-wall-gap"],
            Axis = new(0, 1),
        };
}
