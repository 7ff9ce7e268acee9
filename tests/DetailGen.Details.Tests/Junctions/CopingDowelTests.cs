using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

public class CopingDowelTests
{
    [Theory]
    [InlineData("stone", "roof")]
    [InlineData("concrete", "outside")]
    [InlineData("stone", "both")]
    public void The_dowel_that_the_coping_s_note_promises_is_in_the_middle_of_its_stone(string kind, string fall)
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", $"coping.kind={kind}", $"coping.fall-to={fall}");
        var (dowel, stone) = (section["coping.dowel"], section["coping"]);
        Assert.Contains("dowelled", stone.Words.Note, StringComparison.Ordinal);
        Assert.Equal(Presence.Local, dowel.Presence);
        Assert.Equal(dowel.Region.Area, dowel.Region.Intersect(stone.Region).Area, 0.01);
        Assert.InRange(dowel.Region.Area, 0.98 * Math.PI * 25, Math.PI * 25); // a bar of 10 mm, from its end
        var middle = dowel.Region.Bounds;
        var x = (middle.Left + middle.Right) / 2;
        var cut = Assert.Single(stone.Region.Cut(new(x, -10_000), new(x, 10_000)));
        Assert.Equal((cut.From.Y + cut.To.Y) / 2, (middle.Bottom + middle.Top) / 2, 0.01);
    }

    [Fact]
    public void A_metal_coping_has_none() => Assert.DoesNotContain(Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "coping.kind=metal").Parts, part => part.Id == "coping.dowel");
}
