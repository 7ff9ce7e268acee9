using DetailGen.Sections;

namespace DetailGen.Details.Parts;

/// <summary>
/// Mortar round what is built into a coursed leaf. Where a slab or joist leaves less of a unit than a mason can cut, the bed is made up with mortar instead: under it,
/// over it, and behind its end.
/// </summary>
internal static class MemberSeat
{
    public const string Slot = "roof.seat";

    /// <summary>Call when wall and roof structure have been brought.</summary>
    public static void Build(Site site)
    {
        var leaves = site.Blanks.Where(blank => blank.Coursing is not null).ToArray();
        var members = site.Blanks.Where(blank => blank is { Stage: Stage.RoofStructure, Precedence: Precedence.Member, Presence: Presence.Cut }).ToArray();
        var mortar = new List<Region>();
        foreach (var leaf in leaves)
        {
            foreach (var built in members.Select(member => member.Region.Intersect(leaf.Region)).Where(region => !region.IsEmpty))
            {
                mortar.AddRange(Around(leaf.Region.Bounds, leaf.Coursing!, built.Bounds));
            }
        }

        var number = 1;
        foreach (var region in mortar.Where(region => !region.IsEmpty))
        {
            site.Add(new(
                number == 1 ? Slot : $"{Slot}.{number}", "Mortar at the seat", Slot, Element.Wall, region, Roles.Support, Precedence.Board, Stage.RoofStructure)
            {
                Again = number > 1,
            });
            number++;
        }
    }

    // Levels of beds are their undersides: a unit stands from a joint's thickness above one to the next.
    private static IEnumerable<Region> Around(Bounds leaf, Coursing coursing, Bounds built)
    {
        double Bed(double level) => coursing.Datum + (Math.Floor((level - coursing.Datum) / coursing.Height) * coursing.Height);
        var below = Bed(built.Bottom);
        if (built.Bottom - below - coursing.Joint < Coursing.LeastUnit)
        {
            yield return Region.Box(leaf.Left, Math.Max(leaf.Bottom, below), leaf.Right, built.Bottom);
        }

        var above = Bed(built.Top) + coursing.Height;
        if (above - built.Top < Coursing.LeastUnit)
        {
            yield return Region.Box(leaf.Left, built.Top, leaf.Right, Math.Min(leaf.Top, above + coursing.Joint));
        }

        if (built.Left - leaf.Left < Coursing.LeastUnit)
        {
            yield return Region.Box(leaf.Left, built.Bottom, built.Left, built.Top);
        }
    }
}
