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

    // The table of heights and thicknesses is one of masonry in courses.
    [Theory]
    [InlineData("solid-masonry-insulated", "wall.block: concrete-rc1", "parapet-solid-h-215")]
    [InlineData("cavity-masonry", "wall.inner-leaf: concrete-rc1", "parapet-cavity-h-250")]
    public void A_cast_parapet_is_for_the_engineer_and_not_for_the_table_of_masonry(string wall, string cast, string table)
    {
        Judgement Of(string materials, string rule)
        {
            var read = PresetReader.ReadText($"detail: d\njunction: parapet\nwall: {wall}\nroof: warm-concrete-deck\nmaterials: {{ {materials} }}\n", "cast.yaml", [], Context);
            return Assert.IsType<Solution.Solved>(DetailSolver.Solve(read.Value, ShippedRules.Catalogue)).Verdicts.Single(verdict => verdict.Rule.Id == rule).Judgement;
        }

        Assert.Equal((Judgement.Pass, Judgement.NotApplicable, Judgement.NotApplicable), (Of("", table), Of("", "parapet-beyond-table"), Of("", "wall-cast-designed")));
        Assert.Equal((Judgement.NotApplicable, Judgement.ToConfirm, Judgement.ToConfirm), (Of(cast, table), Of(cast, "parapet-beyond-table"), Of(cast, "wall-cast-designed")));
    }
}
