using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;

namespace DetailGen.Details.Tests.Presets;

public class StarterTests
{
    private static readonly Components All = SmallComponents.Context.Components;

    private static string Text => Starter.Write(
        All.Find(ComponentKind.Junction, "parapet")!.Value, All.Find(ComponentKind.Wall, "plain-wall")!.Value, All.Find(ComponentKind.Roof, "plain-roof")!.Value, "first");

    [Fact]
    public void A_starter_reads_as_it_is() => Assert.True(PresetReader.ReadText(Text, "s.yaml", [], SmallComponents.Context).IsGood);

    [Fact]
    public void A_starter_reads_with_every_size_taken_in()
    {
        var text = Text.Replace("  # wall.", "  wall.").Replace("  # roof.", "  roof.").Replace("  # coping.", "  coping.");
        var preset = PresetReader.ReadText(text, "s.yaml", [], SmallComponents.Context);
        Assert.Empty(preset.Faults);
        Assert.Equal(5, preset.Value.Set.Count);
    }

    [Fact]
    public void Each_size_has_its_range_and_meaning() => Assert.Contains("  # wall.cavity: 100 mm  # 50 mm to 300 mm. Width of the cavity.\n", Text);
}
