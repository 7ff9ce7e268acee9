using DetailGen.Details.Solving;
using DetailGen.Library.Schedules;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>
/// The solver sums resistances in whole numbers on the safe side, the schedule in floating point from the section as built; neither project sees the other,
/// so each has its own table of air layers. What one promises the other must report.
/// </summary>
public class TransmittanceAgreementTests
{
    public static TheoryData<string> Details =>
        [.. Directory.EnumerateFiles(Repository.Path("presets", "details"), "tern-court-*-0*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Details))]
    public void The_report_is_never_worse_than_the_solver_promised_and_hardly_better(string name) => Agrees(Work(name));

    // The screws of a field that needs few, many, some of a metal that conducts well, and ties and dabs of unusual spacing.
    [Theory]
    [InlineData("parapet-02", "membrane.fixing=mechanical")]
    [InlineData("parapet-02", "membrane.fixing=mechanical", "membrane.fixings=9")]
    [InlineData("parapet-02", "membrane.fixing=mechanical", "materials.membrane-fixing=stainless", "membrane.fixings=2")]
    [InlineData("parapet-02", "membrane.fixing=mechanical", "materials.membrane-fixing=stainless", "membrane.fixings=3")]
    [InlineData("abutment-02", "membrane.fixing=mechanical", "membrane.fixings=7")]
    [InlineData("parapet-01", "materials.tie=copper", "tie.horizontal-spacing=600 mm")]
    [InlineData("parapet-04", "materials.wall.anchor=stainless")]
    [InlineData("parapet-04", "materials.wall.anchor=steel", "wall.anchors=9")]
    [InlineData("parapet-01", "materials.tie=copper", "wall.dab-width=150 mm", "wall.dab-centres=400 mm")]
    public void So_it_is_with_fixings_that_count(string name, params string[] set) => Agrees(Work($"tern-court-{name}.yaml", set));

    // Joists are left to the air in the solver; the report takes the mean of both limits. Dabs come near. Nothing else lies between the two.
    private static void Agrees(Worked worked)
    {
        Assert.NotEmpty(worked.Solved.Heat);
        foreach (var promised in worked.Solved.Heat)
        {
            var reported = worked.Buildups.Single(stack => stack.Buildup.Id == promised.Element);
            var most = reported.IsBridged ? 1.02 : 1.001;
            Assert.InRange((double)promised.Transmittance, reported.UValue, reported.UValue * most);
        }
    }

    // A sheet once told 0.092 on its check list and 0.091 on its schedule, of one roof.
    [Theory]
    [InlineData("abutment-01", "roof.insulation=260mm", "roof")]
    [InlineData("parapet-01", "roof.joists=across", "roof")]
    [InlineData("parapet-01", "wall.lining=board-on-dabs", "wall")]
    public void A_check_list_tells_the_value_that_the_schedule_reports(string name, string set, string element)
    {
        var worked = Work($"tern-court-{name}.yaml", [set]);
        var reported = worked.Buildups.Single(stack => stack.Buildup.Id == element).UValue;
        var told = worked.Solved.Verdicts.Where(verdict => verdict.Judgement != Judgement.NotApplicable && verdict.Rule.Id.StartsWith($"u-{element}", StringComparison.Ordinal) && verdict.Left is not null).ToList();
        Assert.NotEmpty(told);
        Assert.All(told, verdict =>
        {
            Assert.Equal(reported, (double)verdict.Left!.Number!.Value, 1e-6);
            Assert.Equal($"{ScheduleTable.UValue(reported)} W/m²K", verdict.Left.Text);
            Assert.Equal(reported <= (double)verdict.Right!.Number!.Value ? Judgement.Pass : Judgement.Warn, verdict.Judgement);
        });
    }

    // The solver misses by what joists carry, the schedule does not: the rule is kept, and no warning says otherwise.
    [Fact]
    public void A_rule_that_the_reported_value_keeps_is_kept()
    {
        var worked = Work("tern-court-parapet-02.yaml", ["site.nation=wales", "roof.insulation=150mm", "roof.deck=25mm", "roof.joist-centres=300mm"]);
        var promised = worked.Solved.Heat.Single(heat => heat.Element == "roof").Transmittance;
        Assert.InRange(0.15, worked.Buildups.Single(stack => stack.Buildup.Id == "roof").UValue, (double)promised);
        Assert.Equal(Judgement.Pass, worked.Solved.Verdicts.Single(verdict => verdict.Rule.Id == "u-roof-wales").Judgement);
        Assert.DoesNotContain(worked.Solved.Warnings, warning => warning.StartsWith("u-roof-wales", StringComparison.Ordinal));
    }

    // The values of a wall with dabs and of roofs whose fixings count, each with the fixings that go with it or denser ones.
    [Theory]
    [InlineData("parapet-01", "wall.u-value=0.16")]
    [InlineData("parapet-01", "wall.u-value=0.2", "wall.lining=board-on-dabs", "wall.cavity=200 mm")]
    [InlineData("parapet-01", "wall.u-value=0.15", "wall.dab-width=150 mm", "wall.dab-centres=300 mm")]
    [InlineData("parapet-01", "wall.u-value=0.19", "wall.lining=board-on-dabs", "wall.cavity=200 mm", "tie.horizontal-spacing=450 mm", "tie.vertical-spacing=225 mm")]
    [InlineData("parapet-01", "wall.u-value=0.18", "materials.tie=copper")]
    [InlineData("parapet-02", "roof.u-value=0.15", "membrane.fixing=mechanical")]
    [InlineData("parapet-02", "roof.u-value=0.15", "membrane.fixing=mechanical", "membrane.fixings=9")]
    [InlineData("parapet-02", "roof.u-value=0.15", "membrane.fixing=mechanical", "materials.membrane-fixing=stainless", "membrane.fixings=1")]
    [InlineData("abutment-02", "roof.u-value=0.13", "membrane.fixing=mechanical")]
    [InlineData("parapet-04", "wall.u-value=0.2", "materials.wall.anchor=stainless", "wall.anchors=8")]
    public void A_target_holds_in_the_value_that_is_reported_with_dabs_and_fixings(string name, string target, params string[] set)
    {
        var worked = Work($"tern-court-{name}.yaml", [$"target.{target}", .. set]);
        var told = Targets.Told(worked).Single(one => target.StartsWith(one.Key + "=", StringComparison.Ordinal));
        Assert.Equal("pass", told.Verdict);
        Assert.Equal(worked.Buildups.Single(stack => target.StartsWith(stack.Buildup.Id, StringComparison.Ordinal)).UValue, told.Reached!.Value, 1e-9);
    }

    [Theory]
    [InlineData("parapet-01", "along")]
    [InlineData("parapet-01", "across")]
    [InlineData("parapet-04", null)]
    [InlineData("abutment-02", null)]
    public void A_tight_target_holds_in_the_value_that_is_reported(string name, string? joists)
    {
        string[] set = joists is null ? ["target.roof.u-value=0.11"] : ["target.roof.u-value=0.11", $"roof.joists={joists}"];
        var worked = Work($"tern-court-{name}.yaml", set);
        Assert.InRange(worked.Buildups.Single(stack => stack.Buildup.Id == "roof").UValue, 0, 0.11);
    }

    private static Worked Work(string name, string[]? set = null)
    {
        var office = Office.Of(null).Value;
        return DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", name), set ?? [], office).Value, office).Worked!;
    }
}
