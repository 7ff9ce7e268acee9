using DetailGen.Details.Rules;

namespace DetailGen.Details.Tests.Rules;

public class KeyNeedsTests
{
    // A reader can set a choice, but not what his construction is made of; and he reads no expressions.
    [Theory]
    [InlineData(null, "Leave it out.")]
    [InlineData("upstand.top = flashing", "It is there only where upstand.top = flashing; set that too, or leave size.key out.")]
    [InlineData("material(roof.membrane).id = asphalt", "It is there only where roof.membrane = asphalt; set that too, or leave size.key out.")]
    [InlineData("has(wall.cavity) and tray.discharge = roof", "It is there only where there is a wall.cavity and tray.discharge = roof; leave size.key out, or take a construction where that is so.")]
    [InlineData("not has(wall.cavity-insulation)", "It is there only where there is no wall.cavity-insulation; leave size.key out, or take a construction where that is so.")]
    public void What_a_size_needs_is_told_in_words(string? when, string hint) => Assert.Equal(hint, RuleMessages.KeyNeeds(new("detail.yaml", 1, 1), "size.key", when).Hint);
}
