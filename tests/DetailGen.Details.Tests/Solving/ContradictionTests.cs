using CsCheck;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Junctions;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Solving;

public class ContradictionTests
{
    private static Preset Usual(params IReadOnlyList<string> set) => Trial.Preset(Trial.Parapet, Trial.CavityWall, Trial.TimberRoof, set);

    [Fact]
    public void A_size_against_a_rule_names_both_and_the_least_that_works()
    {
        var contradiction = Usual("weep.spacing=1200 mm").Fail();
        Assert.Equal([(MemberKind.Given, "given.weep.spacing"), (MemberKind.Rule, "weep-spacing")], contradiction.Members.Select(member => (member.Kind, member.Id)));
        Assert.All(contradiction.Members, member => Assert.Contains($"[{member.Id}]", member.Text, StringComparison.Ordinal));
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Key: "weep.spacing", Value: "900 mm" }]);
    }

    [Fact]
    public void A_size_that_is_not_sold_is_told_the_nearest_that_are()
    {
        var contradiction = Usual("roof.deck=17 mm").Fail();
        Assert.Equal(["given.roof.deck", "stock.roof.deck"], contradiction.Members.Select(member => member.Id));
        Assert.Equal(["15 mm", "18 mm"], contradiction.Repairs.Select(repair => repair.Set[0].Value).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_material_that_a_rule_forbids_is_told_with_what_to_take()
    {
        var contradiction = Usual().Of("roof.deck", "chipboard").Fail();
        Assert.Equal(["deck-chipboard-ban", "given.roof.deck"], contradiction.Members.Select(member => member.Id));
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Key: "materials.roof.deck", Value: "plywood" }]);
    }

    [Fact]
    public void A_choice_is_proposed_where_it_helps()
    {
        // 80 mm of board leave less than 50 mm clear; filled fully there is no such board
        var contradiction = Usual("wall.fill=partial", "wall.cavity=100 mm", "wall.cavity-insulation=80 mm").Fail();
        Assert.Contains(contradiction.Members, member => member.Id == "cavity-residual");
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Key: "wall.cavity", Value: "130 mm" }]);
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Key: "wall.cavity-insulation", Value: "50 mm" }]);

        var metal = Usual("coping.drip-clearance=30 mm").Fail();
        Assert.Contains(metal.Repairs, repair => repair.Set is [{ Key: "coping.kind", Value: "metal" }]);
    }

    [Fact]
    public void A_target_out_of_reach_is_told_the_best_there_is()
    {
        var contradiction = Usual("roof.insulation=100 mm").Waiving("u-roof-new-dwelling-en").To("roof.u-value", 0.1m).Fail();
        Assert.Equal(["given.roof.insulation", "target.roof.u-value"], contradiction.Members.Select(member => member.Id));
        var looser = contradiction.Repairs.First(repair => repair.Set[0].Key == "target.roof.u-value").Set[0].Value;
        var best = decimal.Parse(looser.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.NotNull(Usual("roof.insulation=100 mm").Waiving("u-roof-new-dwelling-en").To("roof.u-value", best).Solve());
        Assert.IsType<Solution.Contradiction>(DetailSolver.Solve(
            Usual("roof.insulation=100 mm").Waiving("u-roof-new-dwelling-en").To("roof.u-value", best - 0.001m), Trial.Shipped));
    }

    [Fact]
    public void Where_no_single_change_helps_the_smallest_set_is_told()
    {
        var contradiction = Usual("weep.spacing=1200 mm", "coping.drip-clearance=20 mm", "roof.joist-centres=700 mm").Fail();
        Assert.Equal(
            [("coping.drip-clearance", "40 mm"), ("roof.joist-centres", "600 mm"), ("weep.spacing", "900 mm")],
            contradiction.Repairs[0].Set.Select(one => (one.Key, one.Value)).Order());
        Assert.Contains(contradiction.Repairs, repair => repair.Set.Any(one => one is { Key: "coping.kind", Value: "metal" }));
        Assert.All(contradiction.Repairs, repair => Assert.Equal(3, repair.Set.Count));
        Assert.All(contradiction.Repairs, repair => Assert.NotNull(Changed(contradiction.Preset, repair).Solve()));
    }

    [Fact]
    public void Two_things_that_clash_for_themselves_are_two_conflicts_mended_together()
    {
        var contradiction = Usual("wall.cavity=40 mm", "weep.spacing=1200 mm").Of("roof.deck", "chipboard").Fail();
        var further = contradiction.Further.Select(members => string.Join(' ', members.Select(member => member.Id).Order(StringComparer.Ordinal)));
        string[] all = [string.Join(' ', contradiction.Members.Select(member => member.Id).Order(StringComparer.Ordinal)), .. further];
        Assert.Equal(["cavity-min given.wall.cavity", "deck-chipboard-ban given.roof.deck", "given.weep.spacing weep-spacing"], all.Order(StringComparer.Ordinal));
        Assert.False(contradiction.MayBeMore);
        Assert.Equal(
            [("materials.roof.deck", "plywood"), ("wall.cavity", "50 mm"), ("weep.spacing", "900 mm")],
            Assert.Single(contradiction.Repairs).Set.Select(one => (one.Key, one.Value)).Order());
    }

    [Fact]
    public void A_rule_on_a_u_value_is_mended_by_another_material_too() =>
        Assert.Contains(("materials.roof.insulation", "pir-roof"), Mended(Built("roof.insulation=150 mm").Of("roof.insulation", "eps-graphite")));

    [Fact]
    public void A_rule_on_a_u_value_is_mended_by_a_choice_that_does_without_fixings_too() =>
        Assert.Contains(("membrane.fixing", "adhered"), Mended(Built("membrane.fixing=mechanical", "roof.insulation-layers=1")));

    // Whether the height of the upstand is needed in this conflict takes more steps than any question may: it stays, and the conflict is told all the same.
    [Fact]
    public void A_conflict_with_a_member_that_is_too_dear_to_settle_is_told_and_mended()
    {
        var preset = Shipped.Preset("parapet", "cavity-masonry", "warm-timber-deck", "upstand.top=coping", "parapet.height=525 mm", "upstand.height=125 mm") with { Rules = [new NamedPack("uk", Trial.At)] };
        var low = preset.Where("building.work", "recovering").Waiving("upstand-min").Waiving("tie-top-parapet");
        Assert.Contains(low.Fail(ProvenTests.Whole).Members, member => member.Id == "given.upstand.height");
        Assert.Contains(("upstand.top", "flashing"), Mended(low));
    }

    private static Preset Built(params string[] set) =>
        Shipped.Preset("abutment", "solid-masonry-insulated", "warm-concrete-deck", set) with { Rules = [new NamedPack("uk", Trial.At)] };

    /// <summary>What mends the preset by itself.</summary>
    private static IEnumerable<(string Key, string Value)> Mended(Preset preset) =>
        preset.Fail(ProvenTests.Whole).Repairs.Where(repair => repair.Set.Count == 1).Select(repair => (repair.Set[0].Key, repair.Set[0].Value));

    [Fact]
    public void A_member_says_what_is_required_and_why_and_what_was_fixed()
    {
        var texts = Usual("wall.cavity=40 mm").Fail().Members.Select(member => member.Text).ToList();
        Assert.Contains("You fixed the wall cavity at 40 mm [given.wall.cavity]", texts);
        var rule = Assert.Single(texts, text => text.EndsWith("[cavity-min]", StringComparison.Ordinal));
        Assert.StartsWith("The wall cavity must be at least 50 mm: mortar bridges narrow cavities (", rule, StringComparison.Ordinal);
    }

    [Fact]
    public void Further_conflicts_are_minimal_too_and_none_is_smaller_than_the_first() => Anything.Always(
        preset => DetailSolver.Solve(preset, Trial.Shipped) is not Solution.Contradiction contradiction
            || (contradiction.Further.All(members => IsMinimal(preset, contradiction with { Members = members }))
                && contradiction.Further.Count <= 4
                && contradiction.Further.Select(members => members.Select(member => member.Id).Order(StringComparer.Ordinal)).Prepend(contradiction.Members.Select(member => member.Id).Order(StringComparer.Ordinal))
                    .Select(ids => string.Join(' ', ids)).Distinct().Count() == contradiction.Further.Count + 1),
        cases: 100, print: Told);

    /// <summary>Three sizes anywhere in their domains, and half the time a target.</summary>
    private static readonly Gen<Preset> Anything =
        from pairing in Gen.Int[0, 7]
        from seeds in Gen.Select(Gen.Int[0, 99], Gen.Int[0, 999_999]).Array[3]
        from target in Gen.Int[0, 1]
        select Made(pairing, seeds, target);

    [Fact]
    public void Whatever_is_set_no_hard_rule_is_ever_broken() => Anything.Always(
        preset => DetailSolver.Solve(preset, Trial.Shipped) is not Solution.Solved solved
            || (solved.Verdicts.All(verdict => verdict.Judgement != Judgement.Fail)
                && preset.Set.All(given => solved.Find(given.Key)!.Value == given.Value)
                && preset.Targets.All(target => solved.Heat.First(heat => target.Key.StartsWith(heat.Element, StringComparison.Ordinal)).Transmittance <= target.Value)), print: Told);

    [Fact]
    public void Without_any_one_member_the_others_of_a_contradiction_can_hold() => Anything.Always(
        preset => DetailSolver.Solve(preset, Trial.Shipped) is not Solution.Contradiction contradiction || IsMinimal(preset, contradiction), print: Told);

    // Without the least cavity the cavity's own domain steps into its place: a further reason, not a superfluous member.
    [Fact]
    public void A_domain_that_would_step_in_for_a_dropped_rule_makes_no_member_superfluous()
    {
        var preset = Trial.Preset(Trial.Parapet, Trial.CavityWall, Trial.SlabRoof, ["parapet.height=229 mm"]);
        var contradiction = preset.Fail();
        Assert.Contains(contradiction.Members, member => member.Id == "cavity-min");
        Assert.DoesNotContain(contradiction.Members, member => member.Id == "domain.wall.cavity");
        Assert.True(IsMinimal(preset, contradiction));
        Member superfluous = new(MemberKind.Rule, "weep-spacing", "Weep hole spacing");
        Assert.False(IsMinimal(preset, contradiction with { Members = [.. contradiction.Members, superfluous] }));
    }

    [Fact]
    public void Every_repair_works() => Anything.Always(
        preset =>
        {
            if (DetailSolver.Solve(preset, Trial.Shipped) is not Solution.Contradiction contradiction)
            {
                return true;
            }

            return contradiction.Repairs.All(repair => DetailSolver.Solve(Changed(preset, repair), Trial.Shipped) is Solution.Solved);
        }, print: Told);

    /// <summary>
    /// No member can be spared: without it the others hold together, or what still stands against them is none of them. Domains and stock cannot be taken
    /// away from a preset, so one that is no member may step in; whether any members are superfluous in the model itself is tested with the solver.
    /// </summary>
    private static bool IsMinimal(Preset preset, Solution.Contradiction contradiction) =>
        contradiction.Members.Where(member => member.Kind is MemberKind.Given or MemberKind.Rule or MemberKind.Target).All(dropped =>
        {
            var others = contradiction.Members.Where(member => member != dropped).ToList();
            return DetailSolver.Solve(Only(preset, others), Trial.Shipped) switch
            {
                Solution.Solved => true,
                Solution.Contradiction further => further.Members.Any(member => others.All(other => other.Id != member.Id)),
                _ => false,
            };
        });

    private static string Told(Preset preset) => $"{preset.Junction.Id} {preset.Wall.Id} {preset.Roof.Id} {string.Join(", ", preset.Set.Select(given => $"{given.Key}={given.Text}"))} {string.Join(", ", preset.Targets)}";

    private static Preset Made(int pairing, (int, int)[] seeds, int target)
    {
        var wall = pairing % 2 == 0 ? Trial.CavityWall : Trial.SolidWall;
        var preset = Trial.Preset(pairing % 4 < 2 ? Trial.Parapet : Trial.Abutment, wall, pairing < 4 ? Trial.TimberRoof : Trial.SlabRoof);
        List<Parameter> free = [.. new Situation(preset, Trial.Shipped).Sizes.Where(parameter => parameter.When is null)];
        var set = seeds.Select(seed =>
        {
            var parameter = free[seed.Item1 % free.Count];
            var domain = parameter.Domain!;
            var value = Setting.Numeric(parameter.Unit, domain.From + domain.Step * (seed.Item2 % ((domain.To - domain.From) / domain.Step + 1)));
            return new Given(parameter.Key, value, value.ToString(), Trial.At, false);
        });
        preset = preset with { Set = [.. set.DistinctBy(given => given.Key)] };
        return target == 0 ? preset : preset.To("roof.u-value", 0.12m);
    }

    /// <summary>The preset with nothing asked of it but these members.</summary>
    private static Preset Only(Preset preset, IReadOnlyList<Member> members)
    {
        var kept = members.Select(member => member.Id).ToHashSet(StringComparer.Ordinal);
        return preset with
        {
            Set = [.. preset.Set.Where(given => kept.Contains("given." + given.Key))],
            Targets = [.. preset.Targets.Where(target => kept.Contains("target." + target.Key))],
            Waivers = [.. Trial.Shipped.Packs[0].Rules.Where(rule => rule.IsHard && !kept.Contains(rule.Id)).Select(rule => new Waiver(rule.Id, "left out", "nobody", null, Trial.At))],
        };
    }

    private static Preset Changed(Preset preset, RepairProposal repair)
    {
        foreach (var (key, text) in repair.Set.Select(one => (one.Key, one.Value)))
        {
            if (key.StartsWith("target.", StringComparison.Ordinal))
            {
                var asked = decimal.Parse(text.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
                preset = preset with { Targets = [.. preset.Targets.Select(target => "target." + target.Key == key ? target with { Value = asked } : target)] };
                continue;
            }

            var parameter = preset.Components.SelectMany(component => component.Parameters).First(one => one.Key == key);
            var value = SettingReader.Read(text, Trial.At, key, parameter.Unit, parameter.Options).Value;
            preset = preset with { Set = [.. preset.Set.Where(given => given.Key != key), new Given(key, value, text, Trial.At, false)] };
        }

        return preset;
    }
}
