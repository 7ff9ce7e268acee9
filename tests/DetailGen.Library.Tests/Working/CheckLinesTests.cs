using DetailGen.Details.Rules;
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
        var (lines, further) = CheckLines.Of([.. Verdicts.Where(verdict => verdict.Rule.Id == rule)], [], [], []);
        Assert.Empty(lines);
        Assert.Equal(1, further);
    }

    // Eight names of what a membrane is not filled a column of the sheet from top to foot.
    [Fact]
    public void What_a_material_is_not_is_counted_where_it_passes_and_where_it_is_broken_another_is_asked_for()
    {
        var rule = Verdicts.Single(verdict => verdict.Rule.Id == "fit-roof-membrane");
        Assert.True(rule.Right!.Text.Length > 100);
        var (lines, further) = CheckLines.Of([rule], [], [], []);
        Assert.Empty(lines);
        Assert.Equal(1, further);
        var broken = Assert.Single(CheckLines.Of([rule with { Judgement = Judgement.Warn }], [], [], []).Lines);
        Assert.Equal("another", broken.Required);
    }

    [Fact]
    public void What_packs_name_as_foremost_comes_first_of_what_is_to_be_confirmed_and_of_what_passes_and_a_packs_own_choice_before_that_of_the_one_below()
    {
        var confirm = Verdicts.Where(verdict => verdict is { Judgement: Judgement.ToConfirm, Rule.Ask: not null }).Select(verdict => verdict.Rule).Last();
        var passes = Verdicts.Where(verdict => verdict is { Judgement: Judgement.Pass, Rule.Unbreakable: null }).Select(verdict => verdict.Rule).TakeLast(2).ToArray();
        var (lines, _) = CheckLines.Of(Verdicts, [], [], [Pack(passes[0], confirm), Pack(passes[1])]);
        Assert.Equal(confirm.Heading, lines.First(line => line.Verdict == Drawing.Sheets.Verdict.ToConfirm).Name);
        Assert.Equal([passes[1].Heading, passes[0].Heading], lines.Where(line => line.Verdict == Drawing.Sheets.Verdict.Pass).Take(2).Select(line => line.Name));
    }

    [Theory]
    [InlineData("uk", "Parapet up to 600, or leaves over 200", "Design fall", "Upstand", "Flashing lap", "Tray step")]
    public void A_first_sheet_tells_of_stability_falls_and_water_before_the_spacing_of_screws(string pack, params string[] names)
    {
        var (lines, _) = CheckLines.Of(Verdicts, [], [], [.. Shipped.Catalogue.Packs.Where(one => one.Name == pack)]);
        var told = lines.Where(line => line.Verdict == Drawing.Sheets.Verdict.Pass).Select(line => line.Name).ToList();
        Assert.Equal(names, told.Take(20).Where(names.Contains));
    }

    private static RulePack Pack(params Rule[] foremost) =>
        new("own", new("Own", "1", "2026-11-25", null, [.. foremost.Select(rule => new NamedAt(rule.Id, rule.At))], [], [], foremost[0].At), []);

    private static IReadOnlyList<Verdict> Verdicts => DetailWork.Do(
        PresetFiles.Read(Repository.Path("presets", "details", "tern-court-parapet-01.yaml"), [], Shipped).Value, Shipped).Worked!.Solved.Verdicts;

    private static Drawing.Sheets.CheckLine LineOf(string rule) => Assert.Single(CheckLines.Of([.. Verdicts.Where(verdict => verdict.Rule.Id == rule)], [], [], []).Lines);
}
