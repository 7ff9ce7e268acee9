using DetailGen.Details.Parts;
using DetailGen.Sections;

namespace DetailGen.Details.Constructions;

/// <summary>Ballast on a separating fleece, or paving on supports with a margin of gravel at the upstand.</summary>
internal static class RoofFinish
{
    /// <summary>Width of the gravel margin, which keeps outlets and the foot of the upstand in reach; mm, common practice, no source.</summary>
    private const double Margin = 300;

    public static void Build(Site site, PlacedRoof roof, PlacedRoofLayer placed, RoofEnds ends)
    {
        var plane = roof.Plane;
        var fleece = site.Length("roof.fleece");
        var face = plane.Line(ends.Finish, ends.End, placed.Bottom);
        // The fleece goes over the lap of the upstand, and stops at the foot of its fillet.
        var foot = ends.Finish + site.Sizes.LengthOrZero("upstand.fillet");
        site.Lay(
            "roof.fleece", "Separating fleece", "roof.fleece", Element.Roof, Roles.Separation, Stage.Finish,
            [new(foot, plane.At(foot) + placed.Bottom), .. face.Skip(1)], fleece, ["upstand.membrane"], Seat.Between, runsOn: true, "roof.fleece");
        if (site.Sizes.Is("roof.finish", "ballast"))
        {
            site.Add(PlacedRoof.Blank(placed, plane.Band(ends.Wall, ends.End, placed.Bottom, placed.Top), Precedence.Fill, Stage.Finish));
            return;
        }

        var slab = placed.Top - site.Length("roof.paving");
        var start = ends.Finish + Margin;
        site.Add(PlacedRoof.Blank(placed, plane.Band(start, ends.End, slab, placed.Top), Precedence.Board, Stage.Finish) with
        {
            Id = "roof.paving",
            Name = "Paving",
            Slot = "roof.paving",
            Parameters = ["roof.paving"],
        });
        site.Add(PlacedRoof.Blank(placed, plane.Band(ends.Wall, start, placed.Bottom, placed.Top), Precedence.Fill, Stage.Finish) with
        {
            Id = "roof.finish-margin",
            Name = "Gravel margin",
            Slot = "roof.finish",
        });
        for (var (left, number) = (start, 1); left < ends.End; left += 400, number++)
        {
            site.Add(PlacedRoof.Blank(placed, plane.Band(left, Math.Min(left + 60, ends.End), placed.Bottom, slab), Precedence.Board, Stage.Finish) with
            {
                Id = $"roof.paving-support.{number}",
                Name = "Paving support",
                Slot = "roof.paving-support",
                Roles = Roles.Support,
                Again = number > 1,
                Repeat = new(400, 60),
            });
            site.Add(PlacedRoof.Blank(placed, plane.Band(left, Math.Min(left + 400, ends.End), placed.Bottom, slab), Precedence.Air, Stage.Left) with
            {
                Id = $"roof.paving-void.{number}",
                Name = "Drained space under the paving",
                Roles = Roles.Air | Roles.Drainage,
                Again = number > 1,
            });
        }
    }
}
