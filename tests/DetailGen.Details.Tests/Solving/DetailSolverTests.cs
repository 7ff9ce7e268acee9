using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;

namespace DetailGen.Details.Tests.Solving;

public class DetailSolverTests
{
    public static TheoryData<string, string, string> Pairings => new()
    {
        { "parapet", "cavity", "timber" }, { "parapet", "cavity", "slab" }, { "parapet", "solid", "timber" }, { "parapet", "solid", "slab" },
        { "abutment", "cavity", "timber" }, { "abutment", "cavity", "slab" }, { "abutment", "solid", "timber" }, { "abutment", "solid", "slab" },
    };

    private static Details.Presets.Preset Usual(params IReadOnlyList<string> set) => Trial.Preset(Trial.Parapet, Trial.CavityWall, Trial.TimberRoof, set);

    // What sheets usually measure goes before rules on other things, and after rules and wishes on the sheets themselves.
    [Theory]
    [InlineData("must", "", "2 mm")]
    [InlineData("should", "", "2 mm")]
    [InlineData("advise", "", "2 mm")]
    [InlineData("should", "roof.membrane=1.8 mm", "2 mm")]
    [InlineData("advise", "roof.membrane=1.8 mm", "1.8 mm")]
    public void A_sheet_is_as_thick_as_a_rule_or_a_wish_on_it_asks(string severity, string wish, string thick)
    {
        var own = Trial.With($$"""
            - { id: own-membrane, require: roof.membrane >= 2 mm, severity: {{severity}}, enforcement: warning, text: Thick., reason: Ours., hint: Take it., source: { document: Ours, confidence: read, read-kind: primary } }
            """);
        var preset = Usual().Own();
        Assert.Equal(thick, (wish.Length > 0 ? preset.Wishing(wish) : preset).Solve(own).Find("roof.membrane")!.Text);
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void Every_pairing_solves_without_a_set_and_breaks_no_hard_rule(string junction, string wall, string roof)
    {
        var solved = Trial.Preset(Find(junction), Find(wall), Find(roof)).Solve();
        Assert.DoesNotContain(solved.Verdicts, verdict => verdict.Judgement is Judgement.Fail or Judgement.Warn);
        Assert.Contains(solved.Verdicts, verdict => verdict.Judgement == Judgement.ToConfirm);
    }

    [Fact]
    public void What_is_set_stays_and_says_so()
    {
        var value = Usual("wall.cavity=200 mm").Solve().Find("wall.cavity")!;
        Assert.Equal(("200 mm", WhyKind.Given), (value.Text, value.Why.Kind));
    }

    [Fact]
    public void A_wish_is_met_where_no_rule_speaks_against_it()
    {
        var value = Usual().Wishing("parapet.height=500 mm").Solve().Find("parapet.height")!;
        Assert.Equal(("500 mm", WhyKind.Preferred), (value.Text, value.Why.Kind));
    }

    [Fact]
    public void A_wish_is_given_up_before_a_rule_and_the_rule_is_named()
    {
        var value = Usual().Wishing("upstand.height=100 mm").Solve().Find("upstand.height")!;
        Assert.Equal(("150 mm", WhyKind.Rule, "upstand-min"), (value.Text, value.Why.Kind, value.Why.Rule));
    }

    [Fact]
    public void Where_the_roof_rises_from_the_wall_the_upstand_is_higher_by_the_rise()
    {
        // 3 m at 1:40 is 75 mm
        var value = Usual("roof.fall-towards=wall").Solve().Find("upstand.height")!;
        Assert.Equal(("225 mm", "upstand-high-end"), (value.Text, value.Why.Rule));
    }

    // A low parapet binds the tray, the ties and the boards together through the coping and the courses: none of that is a reason that anybody would give.
    [Fact]
    public void The_reason_of_a_size_is_what_speaks_of_it_not_what_stands_behind_that()
    {
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", "parapet.height=525 mm", "upstand.height=125 mm") with { Rules = [new NamedPack("uk", Trial.At)] };
        var solved = preset.Where("building.work", "recovering").Waiving("upstand-min").Waiving("tie-top-parapet").Solve(ProvenTests.Whole);
        Assert.EndsWith("(top-ties-clear-of-the-tray).", solved.Find("tie.top-distance")!.Why.Text, StringComparison.Ordinal);
        Assert.Equal("ins-upstand-path", solved.Find("roof.insulation")!.Why.Rule);
        Assert.EndsWith("(thicker-boards-below).", solved.Find("roof.board-lower")!.Why.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1:40", "95 mm")] // common practice, no source: 20 mm at the thin end, and the fall over 3 m
    [InlineData("1:80", "57.5 mm")]
    public void The_firring_keeps_its_thin_end(string fall, string firring) =>
        Assert.Equal(firring, Usual($"roof.fall={fall}").Solve().Find("roof.firring")!.Text);

    // A masonry support maker's table of tie lengths by cavity, citing PD 6697:2019; read in a secondary text
    [Theory]
    [InlineData("50 mm", "200 mm")]
    [InlineData("75 mm", "200 mm")]
    [InlineData("80 mm", "225 mm")]
    [InlineData("125 mm", "250 mm")]
    [InlineData("150 mm", "275 mm")]
    [InlineData("175 mm", "300 mm")]
    [InlineData("200 mm", "325 mm")]
    public void Ties_follow_the_cavity(string cavity, string tie) => Assert.Equal(tie, Usual($"wall.cavity={cavity}").Solve().Find("tie.length")!.Text);

    // Approved Documents L 2021 and their kin in Scotland and Wales, as the catalogue of rules has them
    [Theory]
    [InlineData("england", "dwelling", "new", "u-roof-new-dwelling-en", 0.16)]
    [InlineData("england", "dwelling", "extension", "u-roof-ext-en", 0.15)]
    [InlineData("england", "dwelling", "recovering", "u-roof-renov-en", 0.16)]
    [InlineData("england", "dwelling", "alteration", "u-roof-renov-en", 0.16)]
    [InlineData("england", "school", "new", "u-roof-nondom-en", 0.18)]
    [InlineData("england", "office", "extension", "u-roof-nondom-en", 0.18)]
    [InlineData("scotland", "dwelling", "new", "u-roof-sc", 0.12)]
    [InlineData("scotland", "retail", "new", "u-roof-sc-nd", 0.16)]
    [InlineData("wales", "dwelling", "new", "u-roof-wales", 0.15)]
    [InlineData("ireland", "dwelling", "new", "", 0)]
    public void The_limit_of_the_roof_follows_nation_use_and_work(string nation, string use, string work, string rule, double limit)
    {
        var solved = Usual().Where("site.nation", nation).Where("building.use", use).Where("building.work", work).Solve();
        string[] apply = [.. solved.Verdicts.Where(verdict => verdict.Judgement != Judgement.NotApplicable).Select(verdict => verdict.Rule.Id)
            .Where(id => id.StartsWith("u-roof-", StringComparison.Ordinal) && id is not ("u-roof-notional" or "u-roof-unlisted"))];
        Assert.Equal(rule.Length == 0 ? [] : [rule], apply);
        Assert.All(apply, id => Assert.Equal((decimal)limit, solved.Verdict(id).Right!.Number));
        Assert.All(apply, id => Assert.Equal(Judgement.Pass, solved.Verdict(id).Judgement));
    }

    [Fact]
    public void A_verdict_has_both_sides()
    {
        var verdict = Usual("upstand.height=180 mm").Solve().Verdict("upstand-min");
        Assert.Equal((180m, ">=", 150m, "mm"), (verdict.Left!.Number, verdict.Op, verdict.Right!.Number, verdict.Unit));
    }

    [Fact]
    public void A_broken_soft_must_warns_with_its_confidence()
    {
        var solved = Usual("parapet.height=900 mm").Solve();
        Assert.Equal(Judgement.Warn, solved.Verdict("parapet-cavity-h-250").Judgement);
        Assert.Contains(solved.Warnings, warning => warning.Contains("parapet-cavity-h-250", StringComparison.Ordinal) && warning.Contains("from memory", StringComparison.Ordinal));
        Assert.Equal(Judgement.ToConfirm, solved.Verdict("parapet-beyond-table").Judgement);
    }

    [Fact]
    public void A_waived_rule_binds_no_more_and_shows()
    {
        var solved = Usual("upstand.height=100 mm").Waiving("upstand-min").Waiving("tray-above-roof").Solve();
        Assert.Equal(Judgement.Waived, solved.Verdict("upstand-min").Judgement);
        Assert.Equal(Judgement.Waived, solved.Verdict("upstand-tray-level").Judgement); // by its alias
        Assert.Equal("100 mm", solved.Find("upstand.height")!.Text);
    }

    [Fact]
    public void A_rule_on_what_the_detail_lacks_does_not_apply()
    {
        var solved = Trial.Preset(Trial.Abutment, Trial.SolidWall, Trial.SlabRoof).Solve();
        Assert.All((string[])["coping-drip-distance", "cavity-min", "tie-length", "joist-spacing", "wind-ballast"],
            id => Assert.Equal(Judgement.NotApplicable, solved.Verdict(id).Judgement));
    }

    [Fact]
    public void Ballast_is_laid_for_its_mass()
    {
        // gravel: its density decides, and 80 kg/m² is asked
        var solved = Usual("roof.finish=ballast").Solve();
        Assert.Equal(Judgement.Pass, solved.Verdict("wind-ballast").Judgement);
        Assert.True(solved.Verdict("wind-ballast").Left!.Number >= 80);
    }

    [Fact]
    public void A_key_that_the_choices_take_away_is_told_what_it_needs()
    {
        var fault = Assert.Single(DetailSolver.Check(Usual("wall.cavity-insulation=80 mm"), Trial.Shipped).Faults);
        Assert.Equal(RuleMessages.KeyNeeds(Trial.At, "wall.cavity-insulation", "wall.fill = partial"), fault);
        Assert.True(DetailSolver.Check(Usual("wall.cavity-insulation=80 mm", "wall.fill=partial"), Trial.Shipped).IsGood);
    }

    [Fact]
    public void A_waiver_of_no_rule_is_told_the_nearest() =>
        Assert.Equal(RuleMessages.UnknownRule(Trial.At, "upstand-mni", "upstand-min"), Assert.Single(DetailSolver.Check(Usual().Waiving("upstand-mni"), Trial.Shipped).Faults));

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("en-GB")]
    public void The_answer_is_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            var solved = Usual("wall.cavity=200 mm").To("roof.u-value", 0.14m).Solve();
            var text = string.Join("\n", solved.Values.Select(value => $"{value.Key} {value.Text} {value.Why.Text}"));
            Assert.Equal("542.5 mm", solved.Find("coping.width")!.Text); // 102.5 + 200 + 100 and 70 on either side
            Assert.Equal(Invariant(), text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string Invariant()
    {
        var now = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        var solved = Usual("wall.cavity=200 mm").To("roof.u-value", 0.14m).Solve();
        CultureInfo.CurrentCulture = now;
        return string.Join("\n", solved.Values.Select(value => $"{value.Key} {value.Text} {value.Why.Text}"));
    }

    internal static Component Find(string id) => Trial.All.First(component => component.Id == id);
}
