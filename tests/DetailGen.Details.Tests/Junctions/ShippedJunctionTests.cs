namespace DetailGen.Details.Tests.Junctions;

public class ShippedJunctionTests
{
    [Fact]
    public void Every_pairing_builds_with_nothing_set()
    {
        foreach (var (junction, wall, roof) in Shipped.Pairings)
        {
            var section = Shipped.Build(junction, wall, roof);
            Assert.Equal(section.Parts.Count, section.Parts.Select(part => part.Id).Distinct(StringComparer.Ordinal).Count());
            if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
            {
                Picture.Write(section, Path.Combine(folder, $"{junction}-{wall}-{roof}.json"));
            }
        }
    }
}
