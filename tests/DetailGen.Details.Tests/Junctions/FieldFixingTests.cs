using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>How a membrane is held in the field.</summary>
public class FieldFixingTests
{
    private const string Id = "roof.membrane-fixing";

    public static TheoryData<string, string, string> Pairings => [.. Shipped.Pairings];

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_membrane_that_is_fixed_mechanically_shows_a_fixing_that_goes_through_nothing_but_what_it_holds(string junction, string wall, string roof)
    {
        foreach (var fall in new[] { "away", "wall" })
        {
            var section = Shipped.Build(junction, wall, roof, "membrane.fixing=mechanical", $"roof.fall-towards={fall}");
            var fixing = Assert.Single(section.Parts, part => part.Id == Id);
            var (lap, membrane) = (section.Parts.Single(part => part.Id == "upstand.membrane"), section.Parts.Single(part => part.Id == "roof.membrane"));
            Assert.Equal(Presence.Local, fixing.Presence);
            Assert.True(fixing.Region.Bounds.Left > lap.Region.Bounds.Right, "The fixing keeps off the lap at the upstand.");
            Assert.InRange(fixing.Region.Intersect(membrane.Region).Area, 0, 40);
            Assert.DoesNotContain(section.Parts, part => part.Id.StartsWith("roof.insulation", StringComparison.Ordinal) && Math.Abs(part.Region.Bounds.Right - fixing.Region.Bounds.Middle.X) < 25);
            Assert.Contains("4 a square metre", fixing.Words.Note, StringComparison.Ordinal);
            BuildingLaws.Hold(section);
        }
    }

    [Theory]
    [InlineData("adhered")]
    [InlineData("loose")]
    public void A_membrane_that_is_bonded_or_weighed_down_has_none(string fixing) =>
        Assert.DoesNotContain(Shipped.Build("parapet", "cavity-masonry", "warm-concrete-deck", $"membrane.fixing={fixing}").Parts, part => part.Id == Id);
}
