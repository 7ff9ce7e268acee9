using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

public class CandidatesTests
{
    private static readonly SheetFormat[] Formats = [SampleSheets.A4, SampleSheets.A3, SampleSheets.A3 with { Paper = "A2" }, SampleSheets.A3 with { Paper = "A1" }];

    [Fact]
    public void Where_nothing_is_said_a_larger_sheet_comes_before_a_scale_at_which_laps_are_not_read() =>
        Assert.Equal(
            ["A3 5", "A3 10", "A2 5", "A2 10", "A1 5", "A1 10", "A3 5", "A3 10", "A3 20"],
            Tried(null, null).Take(9));

    [Fact]
    public void A_given_paper_stays_whatever_the_scale() =>
        Assert.All(Candidates.For(new("A2", null, false, false), Formats, _ => true).First(), candidate => Assert.Equal("A2", candidate.Format.Paper));

    [Fact]
    public void A_given_scale_stays_while_any_paper_from_the_given_one_on_holds_it() =>
        Assert.Equal(["A2 10", "A1 10", "A2 20"], Tried("A2", 10).Take(3));

    [Fact]
    public void A_paper_smaller_than_the_given_one_is_never_tried() => Assert.DoesNotContain(Tried("A3", 5), candidate => candidate.StartsWith("A4", StringComparison.Ordinal));

    private static IEnumerable<string> Tried(string? paper, double? scale) =>
        Candidates.For(new(paper, scale, false, false), Formats, _ => true).SelectMany(set => set).Select(candidate => FormattableString.Invariant($"{candidate.Format.Paper} {candidate.Scale}"));
}
