using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Details.Tests.Presets;

namespace DetailGen.Details.Tests.Parameters;

public class ComponentReaderTests
{
    [Fact]
    public void A_component_keeps_expressions_as_text_with_their_place()
    {
        var wall = SmallComponents.Component(SmallComponents.Wall);
        Assert.Equal(("plain-wall", ComponentKind.Wall), (wall.Id, wall.Kind));
        Assert.Equal(new Domain(50_000, 300_000, 5_000), wall.Parameters[0].Domain);
        Assert.Equal(Setting.Choice("full"), wall.Parameters[1].Default); // the first of the options
        Assert.Equal(new("wall.cavity + 205 mm", new("component.yaml", 8, 32)), Assert.Single(wall.Derived[0].Cases).As);
        Assert.Equal(["wall.fill = partial", null], wall.Derived[1].Cases.Select(item => item.When?.Text));
        Assert.Equal("wall.cavity >= 50 mm", wall.Claims[0].Require.Text);
        Assert.Equal("leaf", ((MapNode)Assert.Single(wall.Layers!.Items)).Text("as"));
        Assert.Equal("{wall.cavity} {material}", wall.Words[0].Note);
    }

    [Theory]
    [InlineData("unit: length, from: 50 mm", "unit: length, from: 400 mm", "bad-parameter")]
    [InlineData("default: 100 mm", "default: 101 mm", "off-step")]
    [InlineData("default: 100 mm", "default: 100", "missing-unit")]
    [InlineData("step: 5 mm, ", "", "missing-key")]
    [InlineData("unit: choice, options: [full, partial]", "unit: choice", "bad-parameter")]
    [InlineData("kinds: [masonry]", "kinds: [masonery]", "unknown-choice")]
    [InlineData("key: wall.fill", "key: wall.cavity", "duplicate-key")]
    [InlineData("meaning: Width of the cavity., ", "", "missing-key")]
    [InlineData("require: wall", "requires: wall", "unknown-key")]
    [InlineData("as: leaf, ", "", "missing-key")]
    [InlineData("as: leaf", "as: deck", "unknown-choice")] // of a roof
    [InlineData("as: leaf", "as: leaff", "unknown-choice")]
    [InlineData("course: 75 mm", "course: 75", "missing-unit")]
    [InlineData("course: 75 mm", "corse: 75 mm", "unknown-key")]
    [InlineData("roles: [structure", "roles: [structur", "unknown-choice")]
    [InlineData("over: [wall.cavity, 450 mm]", "over: [450 mm]", "too-few")]
    [InlineData("diameter: 4 mm", "diameter: 4", "bad-text")]
    [InlineData("name: Outer leaf, course", "name: [Outer leaf], course", "wrong-type")]
    public void A_fault_in_a_component_is_told(string right, string wrong, string code)
    {
        var text = SmallComponents.Wall.Replace(right, wrong);
        Assert.NotEqual(SmallComponents.Wall, text);
        Assert.Contains(code, ComponentReader.Read(NodeReader.Text(text, "c.yaml", ReadingLimits.Usual)).Faults.Select(fault => fault.Code));
    }

    [Theory]
    [InlineData(49, 50)]
    [InlineData(52, 50)]
    [InlineData(53, 55)]
    [InlineData(999, 100)]
    public void The_nearest_of_a_domain_lies_in_it(long number, long nearest) => Assert.Equal(nearest, new Domain(50, 104, 5).Nearest(number));
}
