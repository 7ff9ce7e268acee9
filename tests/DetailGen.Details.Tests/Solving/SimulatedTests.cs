using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Rules;

namespace DetailGen.Details.Tests.Solving;

public class SimulatedTests
{
    private static readonly PresetContext Context = PresetContext.Load();

    // A check list told 0.9516 where the thermal sheet beside it told 0.952.
    [Theory]
    [InlineData("0.9516", Judgement.Pass, "0.952")]
    [InlineData("0.75", Judgement.Pass, "0.75")]
    [InlineData("0.7496", Judgement.Fail, "0.7496")]
    [InlineData("0.7412", Judgement.Fail, "0.741")]
    public void A_temperature_factor_has_three_decimals_unless_they_hide_that_it_is_missed(string factor, Judgement judgement, string told)
    {
        var figure = decimal.Parse(factor, System.Globalization.CultureInfo.InvariantCulture);
        var read = PresetReader.ReadText("detail: d\njunction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck\n", "d.yaml", [], Context);
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(read.Value, ShippedRules.Catalogue));
        var verdict = new Simulated(figure, 0.1m).Judge(solved).Verdicts.Single(one => one.Judgement != Judgement.NotApplicable && one.Rule.Simulate?.Key == "junction.frsi");
        Assert.Equal((judgement, told, figure), (verdict.Judgement, verdict.Left!.Text, verdict.Left.Number!.Value));
    }
}
