using DetailGen.Details.Presets;
using DetailGen.Details.Solving;

namespace DetailGen.Details.Tests.Rules;

public class SolidWallTests
{
    private static readonly PresetContext Context = PresetContext.Load();

    // A wish for a low parapet and a stock width of coping once made the wall under a slab 90 mm thick, and nothing said so.
    [Theory]
    [InlineData("set: { coping.kind: metal, roof.fall-towards: wall }\nprefer: { parapet.height: 250 mm }", Judgement.Pass)]
    [InlineData("set: { wall.block: 140 mm }", Judgement.Warn)]
    public void A_solid_wall_under_a_roof_is_190_mm_or_warns(string wanted, Judgement judgement)
    {
        var read = PresetReader.ReadText($"detail: d\njunction: parapet\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\n{wanted}\n", "wall.yaml", [], Context);
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(read.Value, ShippedRules.Catalogue));
        Assert.Equal(judgement, solved.Verdicts.Single(verdict => verdict.Rule.Id == "solid-wall-thickness").Judgement);
    }
}
