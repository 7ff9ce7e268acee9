using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Rules;

namespace DetailGen.Details.Tests.Solving;

public class ComparisonWordsTests
{
    [Theory]
    [InlineData(">=", "1:80", 80.0, "1:80 or steeper")]
    [InlineData("<=", "1:10", 10.0, "1:10 or shallower")]
    [InlineData(">", "1:80", 80.0, "steeper than 1:80")]
    [InlineData("<", "1:80", 80.0, "shallower than 1:80")]
    [InlineData("=", "1:40", 40.0, "1:40")]
    [InlineData(">=", "5°", 11.430, "5° (1:11.4) or steeper")]
    [InlineData(">=", "150 mm", 150.0, "at least 150 mm")]
    [InlineData("<=", "0.16 W/m²K", 0.16, "at most 0.16 W/m²K")]
    [InlineData("!=", "2", 2.0, "anything but 2")]
    [InlineData("in", "stone, concrete", null, "one of stone, concrete")]
    [InlineData("not in", "stone, concrete", null, "none of stone, concrete")]
    [InlineData("=", "there", null, "there")]
    public void What_is_wanted_reads_one_way(string op, string text, double? number, string words) => Assert.Equal(words, ComparisonWords.Wanted(Wanting(op, new Side((decimal?)number, text))));

    [Fact]
    public void Nothing_is_wanted_where_nothing_was_compared() => Assert.Null(ComparisonWords.Wanted(Wanting(null, null)));

    // Of falls the steeper is the greater, whatever the figure after the colon says; the words agree with the verdicts of every shipped rule on falls.
    [Fact]
    public void The_words_agree_with_the_verdicts_on_falls()
    {
        var steeper = 0;
        foreach (var fall in (string[])["1:40", "1:60", "1:70"])
        {
            var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(Junctions.Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", $"roof.fall={fall}") with { Rules = [new("uk", new("test", 1, 1))] }, ShippedRules.Catalogue));
            foreach (var verdict in solved.Verdicts.Where(one => ComparisonWords.Wanted(one)?.EndsWith(" or steeper", StringComparison.Ordinal) == true && one.Left!.Number is not null))
            {
                Assert.Equal(verdict.Left!.Number <= verdict.Right!.Number, verdict.Judgement == Judgement.Pass);
                steeper++;
            }
        }

        Assert.True(steeper > 3);
    }

    private static Verdict Wanting(string? op, Side? right) =>
        new(ShippedRules.Catalogue.Packs[0].Rules[0], Judgement.Warn, right is null ? null : new Side(right.Number, "here"), op, right, null, "");
}
