using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>Ballast on a separating fleece, or paving on supports with a margin of gravel at the upstand.</summary>
internal static class RoofFinish
{
    /// <summary>Width of the gravel margin, which keeps outlets and the foot of the upstand in reach; mm, common practice, no source.</summary>
    private const double Margin = 300;

    /// <summary>Width of a support, of which each corner of a slab has a quarter, and metal and foot of the trim that holds the gravel back; mm, common practice, no source.</summary>
    private const double Support = 150, Trim = 2, TrimFoot = 40;

    /// <summary>How much of the roof before the upstand a drawing has to show for its finish to be read: of paving a whole slab, and the joint and support after it; mm.</summary>
    public static double Shown(Site site) => IsPaved(site) ? Margin + site.Length("roof.paving-size") + site.Length("roof.paving-joint") + Support : 0;

    public static void Build(Site site, PlacedRoof roof, PlacedRoofLayer placed, RoofEnds ends)
    {
        var plane = roof.Plane;
        var fleece = site.Length("roof.fleece");
        var face = plane.Line(ends.Finish, ends.End, placed.Bottom);
        // The fleece goes over the membrane and the lap of the upstand, and stops at the foot of its fillet: where the faces of field and slope meet, clear of what is poured there.
        var fillet = site.Sizes.LengthOrZero("upstand.fillet");
        var foot = ends.Finish + fillet + ((fillet > 0 ? Math.Sqrt(2) - 1 : 1) * site.Length("roof.membrane"));
        site.Lay(new(
            "roof.fleece", "Separating fleece", "roof.fleece", Element.Roof, Roles.Separation, Stage.Finish, [new(foot, plane.At(foot) + placed.Bottom), .. face.Skip(1)], fleece)
        {
            Over = [roof.Find(RoofBehaviour.Membrane)!.Layer.Slot, Upstand.MembraneId],
            RunsOn = true,
            Parameters = ["roof.fleece"],
        });
        if (IsPaved(site))
        {
            BuildPaving(site, plane, placed, ends);
        }
        else
        {
            site.Add(PlacedRoof.Blank(placed, plane.Band(ends.Wall, ends.End, placed.Bottom, placed.Top), Precedence.Fill, Stage.Finish) with { Name = "Ballast" });
        }
    }

    private static bool IsPaved(Site site) => site.Sizes.Is("roof.finish", "paving");

    // From the margin on: slabs with open joints, under each joint a row of supports, and between them the space in which the water runs.
    private static void BuildPaving(Site site, RoofPlane plane, PlacedRoofLayer placed, RoofEnds ends)
    {
        var under = placed.Top - site.Length("roof.paving");
        var (size, joint) = (site.Length("roof.paving-size"), site.Length("roof.paving-joint"));
        var start = plane.Datum + Margin;
        BuildMargin(site, plane, placed, ends.Wall, start, under);
        for (var (left, number) = (start, 1); left < ends.End; left += size + joint, number++)
        {
            var again = number == 1 ? "" : $".{number}";
            var (from, to) = (Math.Max(start, left - ((joint + Support) / 2)), Math.Min(ends.End, left - ((joint - Support) / 2)));
            site.Add(PlacedRoof.Blank(placed, plane.Band(from, to, placed.Bottom, under), Precedence.Board, Stage.Finish) with
            {
                Id = "roof.paving-support" + again,
                Name = "Paving support",
                Slot = "roof.paving-support",
                Roles = Roles.Support,
                Presence = Presence.Local,
                Repeat = new(size + joint, Support),
                Again = number > 1,
            });
            site.Add(PlacedRoof.Blank(placed, plane.Band(left, Math.Min(left + size, ends.End), under, placed.Top), Precedence.Board, Stage.Finish) with
            {
                Id = "roof.paving" + again,
                Name = "Paving slab",
                Slot = "roof.paving",
                Parameters = ["roof.paving", "roof.paving-size", "roof.paving-joint"],
                Again = number > 1,
            });
        }

        site.Add(PlacedRoof.Blank(placed, plane.Band(start, ends.End, placed.Bottom, placed.Top), Precedence.Air, Stage.Left) with
        {
            Id = "roof.paving-void",
            Name = "Drained space under the paving and in its joints",
            Roles = Roles.Air | Roles.Drainage,
        });
    }

    private static void BuildMargin(Site site, RoofPlane plane, PlacedRoofLayer placed, double wall, double end, double under)
    {
        site.Lay(new(
            "roof.paving-trim", "Perforated trim", "roof.paving-trim", Element.Roof, Roles.Support | Roles.Drainage, Stage.Finish,
            [.. plane.Line(end - TrimFoot, end, placed.Bottom), new(end, plane.At(end) + under)], Trim)
        {
            Over = ["roof.fleece"],
            Seat = Seat.Face,
        });
        site.Add(PlacedRoof.Blank(placed, plane.Band(wall, end, placed.Bottom, placed.Top), Precedence.Fill, Stage.Finish) with
        {
            Id = "roof.finish-margin",
            Name = "Gravel margin",
            Slot = "roof.finish",
        });
    }
}
