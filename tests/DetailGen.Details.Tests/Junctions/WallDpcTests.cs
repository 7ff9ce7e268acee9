using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What keeps rain in a solid parapet from running down behind its flashing.</summary>
public class WallDpcTests
{
    private const string Id = "wall.dpc";

    [Theory]
    [InlineData("warm-timber-deck", "wall.block=140 mm")]
    [InlineData("warm-timber-deck", "wall.block=215 mm", "upstand.height=250 mm", "parapet.height=900 mm")]
    [InlineData("warm-concrete-deck", "wall.block=300 mm", "roof.finish=ballast")]
    [InlineData("warm-concrete-deck", "parapet.height=623 mm", "coping.kind=metal")]
    public void A_solid_parapet_under_a_flashing_is_cut_off_right_through_in_the_bed_of_the_flashing(string roof, params string[] set)
    {
        var section = Shipped.Build("parapet", "solid-masonry-insulated", roof, [.. set, "upstand.top=flashing"]);
        var dpc = Assert.Single(section.Parts, part => part.Id == Id).Region.Bounds;
        var flashing = section.Parts.Single(part => part.Id == "flashing").Region.Bounds;
        Part[] wall = [.. section.Parts.Where(part => part.Slot == "wall.block" && part.Presence == Presence.Cut)];
        Assert.Equal(wall.Min(part => part.Region.Bounds.Left), dpc.Left, 3);
        Assert.True(dpc.Right > wall.Max(part => part.Region.Bounds.Right), "It shows on the roof side.");
        Assert.True(dpc.Top > flashing.Top && dpc.Bottom < flashing.Top, "It lies over the flashing, in one bed with it.");

        // Joints are drawn from the courses: one of them takes both.
        var coursing = wall.Select(part => part.Coursing).First(one => one is not null)!;
        Assert.Contains(coursing.Beds(dpc.Bottom - 100, dpc.Top + 100), bed => Math.Abs(bed - dpc.Bottom) < 0.01 && bed + coursing.Joint > dpc.Top);
        BuildingLaws.Hold(section);
    }

    [Theory]
    [InlineData("solid-masonry-insulated", "upstand.top=coping")]
    [InlineData("cavity-masonry", "upstand.top=flashing")]
    public void Where_the_membrane_runs_over_the_head_or_a_tray_drains_a_cavity_there_is_none(string wall, string set) =>
        Assert.DoesNotContain(Shipped.Build("parapet", wall, "warm-concrete-deck", set).Parts, part => part.Id == Id);
}
