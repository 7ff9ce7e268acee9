using DetailGen.Details.Solving;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>How external insulation is held on its wall.</summary>
public class BoardAnchorsTests
{
    private const string Wall = "solid-masonry-insulated";

    public static TheoryData<string, string> Places => [.. from junction in Shipped.Junctions from roof in Shipped.Roofs select (junction, roof)];

    [Theory]
    [MemberData(nameof(Places))]
    public void Anchors_go_through_the_boards_into_the_wall_and_stand_for_as_many_as_are_asked_for(string junction, string roof)
    {
        foreach (var (block, insulation, embedment) in new[] { ("215", 120, 50), ("140", 300, 100), ("190", 60, 25) })
        {
            var section = Shipped.Build(junction, Wall, roof, $"wall.block={block} mm", $"wall.insulation={insulation} mm", $"wall.anchor-embedment={embedment} mm", "wall.anchors=9");
            var (boards, leaf) = (section.Parts.Single(part => part.Id == "wall.insulation"), section.Parts.Single(part => part.Id == "wall.block"));
            var anchors = section.Parts.Where(part => part.Slot == "wall.anchor").ToArray();
            Assert.True(anchors.Length >= 2);
            Assert.All(anchors, anchor =>
            {
                Assert.Equal(Presence.Local, anchor.Presence);
                Assert.Equal(insulation + embedment, anchor.Region.Bounds.Width, 0.01);
                Assert.Equal(insulation, anchor.Region.Intersect(boards.Region).Bounds.Width, 0.01);
                Assert.Equal(1e6 / 9 / 500, anchor.Repeat!.Centres, 1e-9);
                Assert.Contains($"9 a square metre, {embedment} mm into the wall", anchor.Words.Note, StringComparison.Ordinal);
            });
            BuildingLaws.Hold(section);
        }
    }

    [Fact]
    public void Boards_that_are_bonded_alone_have_none() =>
        Assert.DoesNotContain(Shipped.Build("parapet", Wall, "warm-concrete-deck", "wall.insulation-fixing=bonded").Parts, part => part.Slot == "wall.anchor");

    [Fact]
    public void An_anchor_that_would_come_out_on_the_room_side_is_refused()
    {
        var contradiction = Assert.IsType<Solution.Contradiction>(Shipped.Solve(Shipped.Preset("abutment", Wall, "warm-concrete-deck", "wall.block=100 mm", "wall.anchor-embedment=80 mm")));
        Assert.Contains("anchors-end-in-the-wall", contradiction.Members.Select(member => member.Id));
    }
}
