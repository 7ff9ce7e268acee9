using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What a coping of stone or concrete rests on.</summary>
public class CopingBedTests
{
    [Theory]
    [InlineData("solid-masonry-insulated", "warm-timber-deck", "wall.insulation=200 mm")]
    [InlineData("solid-masonry-insulated", "warm-concrete-deck", "upstand.top=flashing", "coping.kind=concrete")]
    [InlineData("solid-masonry-insulated", "warm-concrete-deck", "wall.insulation=20 mm", "wall.render=5 mm", "upstand.insulation=0 mm", "upstand.backing=6 mm")]
    [InlineData("cavity-masonry", "warm-timber-deck", "upstand.top=coping")]
    public void Mortar_lies_on_the_masonry_alone_and_a_strip_closes_the_joint_at_each_face_that_does_not_bear(string wall, string roof, params string[] set)
    {
        var section = Shipped.Build("parapet", wall, roof, set);
        var leaves = section.Parts.Where(part => part.Presence == Presence.Cut && part.Roles.HasFlag(Roles.Structure) && part.Element == Element.Wall).Select(part => part.Region.Bounds).ToList();
        var (left, right) = (leaves.Min(leaf => leaf.Left), leaves.Max(leaf => leaf.Right));
        var (bed, coping) = (section["coping.bed"].Region.Bounds, section["coping"].Region.Bounds);
        Assert.Equal((left, right), (Math.Round(bed.Left, 6), Math.Round(bed.Right, 6)));
        Assert.Equal(bed.Top, coping.Bottom, 6);

        Part[] strips = [.. section.Parts.Where(part => part.Slot == "coping.strip" && !part.IsAir)];
        Assert.NotEmpty(strips);
        Assert.All(strips, strip => Assert.True(strip.Region.Bounds.Right <= left || strip.Region.Bounds.Left >= right, strip.Id));
        Assert.Contains("masonry alone", strips[0].Words.Note, StringComparison.Ordinal);
        BuildingLaws.Hold(section);
    }

    [Theory]
    [InlineData("cavity-masonry", "upstand.top=flashing")]
    [InlineData("solid-masonry-insulated", "coping.kind=metal")]
    public void Where_masonry_bears_all_of_it_or_a_board_does_there_is_no_strip(string wall, string set) =>
        Assert.DoesNotContain(Shipped.Build("parapet", wall, "warm-concrete-deck", set).Parts, part => part.Slot == "coping.strip");

    [Fact]
    public void What_lies_under_a_coping_goes_by_one_name_whatever_the_coping_is_of()
    {
        string Name(string kind) => Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "coping.kind=" + kind)["coping.dpc"].Name;
        Assert.Equal(Name("stone"), Name("metal"));
    }

    [Theory]
    [InlineData("parapet", "cavity-masonry", "yes")]
    [InlineData("abutment", "cavity-masonry", "no")]
    [InlineData("abutment", "solid-masonry-insulated", "yes")]
    public void Packing_beside_a_joist_is_told_by_where_it_lies_for_a_leaf_parts_it_from_the_walls_insulation(string junction, string wall, string tied)
    {
        var packing = Shipped.Build(junction, wall, "warm-timber-deck", "roof.joists=along", "roof.tied-to-wall=" + tied)["roof.edge-packing"];
        Assert.EndsWith("between wall and joist, full depth", packing.Words.Note, StringComparison.Ordinal);
    }
}
