using DetailGen.Details.Solving;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

public class CheckLinesTests
{
    private static readonly Office Shipped = Office.Of(null).Value;

    [Theory]
    [InlineData("tie-material", "one of stainless steel, copper", "stainless steel")]
    [InlineData("parapet-no-pe-dpc", "not polyethylene VCL, low density film", "bitumen DPC")]
    [InlineData("coping-slope-direction", "roof", "roof")]
    [InlineData("tray-step", "≥ 150", "150")]
    [InlineData("tie-embed", "≥ 50", "62.5")] // of each leaf: a tie of 275 mm over a cavity of 150 mm
    public void What_a_rule_asks_is_told_in_words_or_figures_and_not_as_code(string rule, string required, string drawn)
    {
        var line = LineOf(rule);
        Assert.Equal((required, drawn), (line.Required, line.Drawn));
    }

    [Theory]
    [InlineData("rsi-up")]
    [InlineData("rse")]
    public void What_nothing_can_break_is_counted_and_not_listed(string rule)
    {
        var (lines, further) = CheckLines.Of([.. Verdicts.Where(verdict => verdict.Rule.Id == rule)], [], []);
        Assert.Empty(lines);
        Assert.Equal(1, further);
    }

    private static IReadOnlyList<Verdict> Verdicts => DetailWork.Do(
        PresetFiles.Read(Repository.Path("presets", "details", "tern-court-parapet-01.yaml"), [], Shipped).Value, Shipped).Worked!.Solved.Verdicts;

    private static Drawing.Sheets.CheckLine LineOf(string rule) => Assert.Single(CheckLines.Of([.. Verdicts.Where(verdict => verdict.Rule.Id == rule)], [], []).Lines);
}
