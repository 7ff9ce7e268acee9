using DetailGen.Library.Reports;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>Why a value, what a change would bring, and what mends what cannot be had.</summary>
public class ExplainingTests
{
    private const int ChangesPerPreset = 6;

    public static TheoryData<string> Shipped => RangingTests.Shipped;

    [Theory]
    [MemberData(nameof(Shipped))]
    public void What_a_change_would_bring_is_what_it_brings(string name)
    {
        var random = new Random(name.Length * 7 + name[^1]);
        var ranges = DetailLibrary.Range(new(File(name), [], [])).Ranges.Where(range => range.Value.Unit == "mm").ToArray();
        for (var i = 0; i < ChangesPerPreset; i++)
        {
            var (key, range) = ranges[random.Next(ranges.Length)];
            var end = random.Next(2) == 0 ? range.Min!.Value : range.Max!.Value;
            var tried = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{key}={end}mm");
            var supposed = WhatIf(name, [], tried);
            var (was, will) = (Checked(name), Checked(name, tried));
            Assert.Equal((true, true, will.Status), (supposed.WhatIf!.SolvedBefore, supposed.WhatIf.SolvedAfter, supposed.Status));
            var expected = was.Parameters!.Keys.Union(will.Parameters!.Keys)
                .Select(one => (Key: one, From: was.Parameters.GetValueOrDefault(one)?.Text, To: will.Parameters.GetValueOrDefault(one)?.Text)).Where(one => one.From != one.To);
            Assert.Equal(expected.Order(), supposed.WhatIf.Values.Where(value => !value.Key.EndsWith("u-value", StringComparison.Ordinal)).Select(value => (value.Key, value.From, value.To)).Order());
            var verdicts = will.Rules!.Where(rule => was.Rules!.First(other => other.Id == rule.Id).Verdict != rule.Verdict).Select(rule => (rule.Id, rule.Verdict));
            Assert.Equal(verdicts.Order(), supposed.WhatIf.Rules.Where(rule => will.Rules!.Any(other => other.Id == rule.Id)).Select(rule => (rule.Id, rule.To!)).Order());
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Lengths_that_follow_from_others_are_told_to_a_tenth_of_a_millimetre(string name)
    {
        var told = DetailLibrary.Explain(new(File(name), [], null)).Explained;
        Assert.All(told.Where(one => one.Text[1].StartsWith("Follows from", StringComparison.Ordinal)), one => Assert.DoesNotMatch(@"\.\d\d", one.Title));
    }

    /// <summary>Names that only stand for the size itself are no names of their own.</summary>
    private static readonly string[] Itself = ["domain", "stock"];

    [Theory]
    [InlineData("tern-court-parapet-04")]
    [InlineData("tern-court-abutment-01")]
    [InlineData("tern-court-impossible")]
    public void Every_name_that_a_report_prints_is_explained(string name)
    {
        var ranges = DetailLibrary.Range(new(File(name), [], [])).Ranges.Values;
        var stops = ranges.SelectMany(range => (range.Min?.Members ?? []).Concat(range.Max?.Members ?? [])).Concat(ranges.SelectMany(range => range.Against ?? []).SelectMany(against => against.Value));
        var report = Checked(name);
        var clashes = report.Conflict is { } conflict ? conflict.Members.Concat(conflict.Further.SelectMany(further => further.Members)) : [];
        string[] others = [.. (report.Rules ?? []).Where(rule => rule.Verdict is "warn" or "fail" or "waived").Select(rule => rule.Id), .. (report.Checks ?? []).Select(check => check.Id), .. (report.Targets ?? []).Select(target => target.Key)];
        var names = stops.Concat(clashes).Select(member => member.Id).Concat(others).Concat(["site.exposure", "materials.roof.membrane", "wall.plaster"]).Except(Itself).Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.True(names.Count > 3);
        Assert.All(names, one =>
        {
            var explained = DetailLibrary.Explain(new(File(name), [], one));
            Assert.Null(explained.Errors);
            Assert.NotEmpty(Assert.Single(explained.Explained).Text);
            Assert.Equal(report.Conflict is null ? 0 : 1, explained.Status);
        });
    }

    [Fact]
    public void A_change_that_cannot_be_had_is_told_with_what_clashes()
    {
        var supposed = WhatIf("tern-court-parapet-01", [], "upstand.height=100mm");
        Assert.Equal((true, false, 1), (supposed.WhatIf!.SolvedBefore, supposed.WhatIf.SolvedAfter, supposed.Status));
        Assert.Equal(["given.upstand.height", "upstand-min"], supposed.Conflict!.Members.Select(member => member.Id).Order(StringComparer.Ordinal));
        Assert.Empty(supposed.WhatIf.Values);
    }

    [Fact]
    public void A_repair_that_is_tried_mends()
    {
        var repair = Checked("tern-court-impossible").Conflict!.Repairs[0];
        var supposed = WhatIf("tern-court-impossible", [], [.. repair.Set.Select(set => $"{set.Key}={set.Value}")]);
        Assert.Equal((false, true, 0), (supposed.WhatIf!.SolvedBefore, supposed.WhatIf.SolvedAfter, supposed.Status));
        Assert.Contains(supposed.WhatIf.Values, value => (value.Key, value.From, value.To) == (repair.Set.First().Key, null, repair.Set.First().Value));
    }

    [Fact]
    public void What_is_tried_stands_in_for_what_is_set_and_a_fault_in_it_is_told()
    {
        Assert.Empty(WhatIf("tern-court-parapet-01", ["upstand.height=180mm"], "upstand.height=180mm").WhatIf!.Values);
        var change = Assert.Single(WhatIf("tern-court-parapet-01", ["upstand.height=180mm"], "upstand.height=200mm").WhatIf!.Values, value => value.Key == "upstand.height");
        Assert.Equal(("180 mm", "200 mm"), (change.From, change.To));
        var wrong = WhatIf("tern-court-parapet-01", [], "upstand.heigth=200mm");
        Assert.Equal(2, wrong.Status);
        Assert.NotEmpty(wrong.Errors!);
    }

    [Fact]
    public void Two_things_that_clash_are_two_conflicts_and_both_changes_together_draw()
    {
        string[] set = ["wall.cavity=40mm", "weep.spacing=1200mm"];
        var conflict = Checked("tern-court-parapet-01", set).Conflict!;
        Assert.Equal(2, conflict.Members.Count);
        Assert.Equal(2, Assert.Single(conflict.Further).Members.Count);
        Assert.False(conflict.MayBeMore);
        var repair = conflict.Repairs[0];
        Assert.Equal(["wall.cavity", "weep.spacing"], repair.Set.Keys);
        var folder = Directory.CreateTempSubdirectory("detailgen-");
        try
        {
            var drawn = DetailLibrary.Draw(new([File("tern-court-parapet-01")], [.. repair.Set.Select(one => $"{one.Key}={one.Value}")], folder.FullName, ["svg"]));
            Assert.Equal(0, drawn.Status);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_key_is_explained_with_its_range_and_the_sources_of_what_stops_it()
    {
        var explained = Assert.Single(DetailLibrary.Explain(new(File("tern-court-parapet-01"), [], "wall.cavity")).Explained);
        Assert.Contains("Not below 50 mm: the wall cavity must be at least 50 mm [cavity-min].", explained.Text);
        Assert.Contains(explained.Sources, source => source.Contains("NHBC Good Craftsmanship Guide", StringComparison.Ordinal));
    }

    [Fact]
    public void A_value_is_explained_for_every_key_that_has_it()
    {
        var report = DetailLibrary.Explain(new(File("tern-court-parapet-01"), [], "150mm"));
        var expected = Checked("tern-court-parapet-01").Parameters!.Where(parameter => parameter.Value.Text == "150 mm").Select(parameter => parameter.Key);
        Assert.Equal("value", report.Kind);
        Assert.Equal(expected, report.Explained.Select(one => one.Id));
    }

    [Fact]
    public void A_part_is_explained_with_what_goes_wrong_without_it_its_sizes_and_their_rules()
    {
        var coping = DetailLibrary.Explain(new(File("tern-court-parapet-01"), [], "coping")).Explained.Single(part => part.Id == "coping");
        Assert.Contains(coping.Text, line => line.StartsWith("Without it: ", StringComparison.Ordinal));
        Assert.Contains(coping.Text, line => line.Contains("coping.drip-clearance = 40 mm", StringComparison.Ordinal));
        Assert.Contains(coping.Text, line => line.StartsWith("Rule: ", StringComparison.Ordinal) && line.EndsWith("[coping-drip-distance].", StringComparison.Ordinal));
        Assert.NotEmpty(coping.Sources);
    }

    private static string File(string name) => Path.Combine(Repository.Root, "presets", "details", name + ".yaml");

    private static DetailReport Checked(string name, params string[] set) => DetailLibrary.Check(new([File(name)], set)).Details[0];

    private static ExplainReport WhatIf(string name, string[] set, params string[] tried) => DetailLibrary.Explain(new(File(name), set, null) { WhatIf = tried });
}
