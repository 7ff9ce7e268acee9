using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;

namespace DetailGen.Details.Tests.Solving;

/// <summary>The shipped constructions and junctions with the shipped rules.</summary>
public class ShippedDetailTests
{
    private static readonly Catalogue Whole =
        Catalogue.Of(Components.Load().All, StockLibrary.Load().All, MaterialLibrary.Load().Ids, [Trial.PackOf("uk")]).Value;

    public static TheoryData<string, string, string> Pairings => [.. Shipped.Pairings];

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_pairing_solves_with_nothing_set_and_breaks_no_rule(string junction, string wall, string roof)
    {
        var solved = Held(Shipped.Preset(junction, wall, roof)).Solve(Whole);
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn);
        Assert.DoesNotContain(solved.Warnings, warning => warning == SolvingWords.NotTheBest);
        Assert.True(solved.Verdicts.Count(verdict => verdict.Judgement == Judgement.Pass) >= 20);
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_pairing_can_reach_a_target_for_the_roof(string junction, string wall, string roof)
    {
        var solved = Held(Shipped.Preset(junction, wall, roof)).To("roof.u-value", 0.12m).Solve(Whole);
        Assert.True(solved.Heat.First(heat => heat.Element == "roof").Transmittance <= 0.12m);
    }

    private static Preset Held(Preset preset) => preset with { Rules = [new NamedPack("uk", Trial.At)] };
}
