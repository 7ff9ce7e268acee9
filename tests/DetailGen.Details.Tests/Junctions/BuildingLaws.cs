using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What a builder asks of every section: that it can be made.</summary>
internal static class BuildingLaws
{
    private const double Hair = 0.01;

    public static void Hold(Section section)
    {
        ScrewsEndInTheStructure(section);
        StrapsHoldTheWall(section);
        UnitsCanBeCut(section);
        PavingLies(section);
        AnchorsHoldInUnits(section);
        MetalCopingDripsClear(section);
        TheStripUnderCladdingLiesOnTheFlashing(section);
    }

    private static Part[] Of(Section section, string id) =>
        [.. section.Parts.Where(part => part.Id == id || (part.Id.StartsWith(id + ".", StringComparison.Ordinal) && int.TryParse(part.Id[(id.Length + 1)..], out _)))];

    private static void ScrewsEndInTheStructure(Section section)
    {
        foreach (var bar in Of(section, "upstand.restraint").Concat(Of(section, "roof.membrane-fixing")))
        {
            var point = new Point(bar.Region.Bounds.Middle.X, bar.Region.Bounds.Bottom);
            var shank = bar.Region.Intersect(Region.Box(bar.Region.Bounds with { Top = point.Y + 1 })).Bounds.Middle.X;
            var above = section.Parts.Where(part => part.Presence == Presence.Cut && part.Roles.HasFlag(Roles.Structure) && part.Slot is "roof.slab" or "roof.deck");
            var held = above.Sum(part => part.Region.Cut(new(shank, point.Y), new(shank, bar.Region.Bounds.Top)).Sum(piece => (piece.To - piece.From).Length));
            var deck = section.Parts.FirstOrDefault(part => part.Id == "roof.deck");
            Assert.True(deck is null ? held >= 40 - Hair : held >= deck.Region.Cut(new(shank, -1e4), new(shank, 1e4)).Sum(piece => (piece.To - piece.From).Length) - Hair, $"{bar.Id} holds in {held:0.0}.");
        }
    }

    // In a unit and not in a joint, clear of other metal, and under the render.
    private static void AnchorsHoldInUnits(Section section)
    {
        foreach (var anchor in Of(section, "wall.anchor"))
        {
            var leaf = section.Parts.Single(part => part.Id == "wall.block");
            var (held, box) = (anchor.Region.Intersect(leaf.Region), anchor.Region.Intersect(leaf.Region).Bounds);
            Assert.True(box.Width >= 25 - Hair && box.Left >= leaf.Region.Bounds.Left - Hair && box.Right <= leaf.Region.Bounds.Right + Hair, $"{anchor.Id} holds in {box.Width:0.0} mm.");
            Assert.Empty(section.Parts.Where(part => part != anchor && part.Presence == Presence.Local && part.Region.Overlaps(held)).Select(part => part.Id));
            if (!leaf.Material.IsCast)
            {
                Assert.DoesNotContain(leaf.Coursing!.Beds(box.Bottom - 500, box.Top + 500), bed => bed < box.Top && bed + leaf.Coursing.Joint > box.Bottom);
            }

            Assert.Equal(0, anchor.Region.Intersect(section.Parts.Single(part => part.Id == "wall.render").Region).Area, 0.01);
        }
    }

    private static void StrapsHoldTheWall(Section section)
    {
        if (section.Parts.FirstOrDefault(part => part.Id == "strap") is not { } strap)
        {
            return;
        }

        var joists = Of(section, "roof.joist").Where(joist => joist.Region.Overlaps(strap.Region)).ToArray();
        Assert.NotEmpty(joists);
        StrapsLieInABed(section);
        if (joists[0].Repeat is not null)
        {
            // on the side of a joist across
            Assert.Empty(Of(section, "strap.nogging"));
            Assert.All(joists, joist => Assert.True(joist.Region.Bounds.Top > strap.Region.Bounds.Top && joist.Region.Bounds.Bottom < strap.Region.Bounds.Bottom));
            Assert.True(strap.Region.Bounds.Left >= section["roof.vcl"].Region.Bounds.Left - Hair, "The broad side of the strap is seen in the wall.");
            return;
        }

        Assert.All(joists, joist => Assert.InRange(joist.Region.Intersect(strap.Region).Bounds.Height, 0, 8 + Hair));
        var noggings = Of(section, "strap.nogging");
        for (var i = 1; i < joists.Length; i++)
        {
            var between = Assert.Single(noggings, nogging =>
                Math.Abs(nogging.Region.Bounds.Left - joists[i - 1].Region.Bounds.Right) < Hair && Math.Abs(nogging.Region.Bounds.Right - joists[i].Region.Bounds.Left) < Hair);
            Assert.Equal(Presence.Beyond, between.Presence);
            Assert.True(between.Region.Grow(Hair).Overlaps(strap.Region), "The strap lies clear of its nogging.");
        }
    }

    private static void StrapsLieInABed(Section section)
    {
        var flat = section.Parts.FirstOrDefault(part => part.Id == "strap.end") ?? section["strap"];
        var leaf = section.Parts.First(part => part.Coursing is not null && part.Region.Bounds.Contains(new(section["roof.vcl"].Region.Bounds.Left - 30, flat.Region.Bounds.Top)));
        if (leaf.Material.IsCast)
        {
            return;
        }

        var inside = flat.Region.Intersect(Region.Box(leaf.Region.Bounds)).Cut(new(leaf.Region.Bounds.Right - 1, -1e4), new(leaf.Region.Bounds.Right - 1, 1e4)).Single();
        Assert.Contains(leaf.Coursing!.Beds(inside.From.Y - 300, inside.To.Y + 300), bed => bed < inside.From.Y + Hair && bed + leaf.Coursing.Joint > inside.To.Y - Hair);
    }

    // As far as a drawing may show the wall: where the model ends, a unit may end as it likes.
    private static void UnitsCanBeCut(Section section)
    {
        var (foot, head) = (section.Runs.Where(run => run.Heading == Heading.Down).Select(run => run.End), section.Runs.Where(run => run.Heading == Heading.Up).Select(run => run.End));
        foreach (var leaf in section.Parts.Where(part => part.Coursing is not null))
        {
            var (coursing, box) = (leaf.Coursing!, leaf.Region.Bounds);
            double[] beds = [.. coursing.Beds(box.Bottom - coursing.Height, box.Top + coursing.Height)];
            for (var row = 1; row < beds.Length; row++)
            {
                foreach (var unit in leaf.Region.Intersect(Region.Box(box.Left, beds[row - 1] + coursing.Joint, box.Right, beds[row])).Pieces.Select(piece => Region.Polygon([.. piece.Outline])))
                {
                    var ends = foot.Concat(head).Any(end => Math.Abs(unit.Bounds.Bottom - end) < Hair || Math.Abs(unit.Bounds.Top - end) < Hair);
                    Assert.True(ends || !unit.Grow(-9.9).IsEmpty, $"{leaf.Id} has a unit of {unit.Bounds.Width:0.0} by {unit.Bounds.Height:0.0} at {unit.Bounds.Left:0.0}, {unit.Bounds.Bottom:0.0}.");
                }
            }
        }
    }

    private static void PavingLies(Section section)
    {
        var slabs = Of(section, "roof.paving");
        if (slabs.Length == 0)
        {
            return;
        }

        var (supports, upstand) = (Of(section, "roof.paving-support"), section.Levels.Single(level => level.Name == "finished-roof").At.X);
        Assert.True(slabs.Length >= 2, "A drawing shows a joint.");
        Assert.True(slabs[0].Region.Bounds.Left >= upstand + 299, "The slabs keep off the upstand.");
        Assert.All(supports, support => Assert.Equal(Presence.Local, support.Presence));
        for (var i = 1; i < slabs.Length; i++)
        {
            var (left, right) = (slabs[i - 1].Region.Bounds.Right, slabs[i].Region.Bounds.Left);
            Assert.InRange(right - left, 3 - Hair, 15 + Hair);
            var end = slabs[^1].Region.Bounds.Right;
            Assert.Contains(supports, support => support.Region.Bounds.Left < left - 20 && support.Region.Bounds.Right > Math.Min(right + 20, end - Hair));
            var top = slabs[i].Region.Cut(new(right + 1, -1e4), new(right + 1, 1e4)).Single().To.Y;
            Assert.True(section["roof.paving-void"].Region.Contains(new((left + right) / 2, top - 5)), "The joint is not open.");
        }

        Assert.Contains(section.Runs, run => run.Heading == Heading.Along && run.Least > slabs[1].Region.Bounds.Left);
        Assert.All([slabs[0], supports[0], section["roof.finish-margin"]], part => Assert.NotEmpty(part.Words.Note));
    }

    private static void TheStripUnderCladdingLiesOnTheFlashing(Section section)
    {
        if (section.Parts.FirstOrDefault(part => part.Id == "wall.base-seal") is { } strip)
        {
            Assert.Single(strip.Region.Pieces); // none of it behind the flashing
            Assert.All(section.Parts.Where(part => part.Id == "wall.insulation"), cladding => Assert.True(strip.Region.Bounds.Top < cladding.Region.Bounds.Bottom + Hair));
        }
    }

    private static void MetalCopingDripsClear(Section section)
    {
        if (section.Parts.FirstOrDefault(part => part.Id == "coping" && part.Sheet is not null) is not { } coping)
        {
            return;
        }

        var (box, overall) = (coping.Region.Bounds, section.Measures.Single(measure => measure.Id == "coping.width"));
        Assert.Equal(overall.Value, box.Width, 0.01);

        // The feet stand out from the legs on both sides, and nothing of the wall comes near them.
        var legs = coping.Region.Intersect(Region.Box(box with { Bottom = box.Bottom + 12, Top = box.Bottom + 16 })).Bounds;
        Assert.True(legs.Left - box.Left >= 6 && box.Right - legs.Right >= 6, "The drips are not turned out.");
        var feet = coping.Region.Intersect(Region.Box(box with { Top = box.Bottom + 12 }));
        Assert.All(section.Parts.Where(part => part.Presence == Presence.Cut && part != coping && !part.IsAir), part => Assert.True(part.Region.Distance(feet) > 2, part.Id));

        Assert.All(["coping.clip", "coping.clip.2", "coping.screw", "coping.screw.2"], id => Assert.Equal(Presence.Local, section[id].Presence));
        Assert.All(["coping.clip", "coping.screw", "coping.packing"], id => Assert.NotEmpty(section[id].Words.Note));
        Assert.All(Of(section, "coping.screw"), screw =>
        {
            var ground = section.Parts.Where(part => part.Presence == Presence.Cut && part.Material.Kind == "masonry" && part.Coursing is not null);
            Assert.True(ground.Sum(part => part.Region.Intersect(screw.Region).Area) / screw.Region.Bounds.Width >= 19, "The board is not held in the wall.");
            Assert.True(screw.Region.Bounds.Top < box.Top && screw.Region.Distance(coping.Region) > 0, "A screw goes through the coping.");
        });
    }
}
