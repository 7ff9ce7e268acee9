using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Tells a contradiction in trade words, and what single changes would end it.</summary>
internal sealed class Contradictions(DetailProblem problem)
{
    private readonly Situation situation = problem.Situation;

    public Solution.Contradiction Told(IReadOnlyList<string> tags)
    {
        var members = Members(tags);
        var rules = RulesOf(tags);
        List<RepairProposal> repairs = [.. Sizes(single: true), .. Choices(tags), .. Swaps(rules), .. Looser(tags)];
        if (repairs.Count == 0)
        {
            repairs = [.. Sizes(single: false)];
        }

        return new Solution.Contradiction(situation.Preset, members, repairs);
    }

    /// <summary>The members that these tags stand for, in trade words.</summary>
    public IReadOnlyList<Member> Members(IReadOnlyList<string> tags) => [.. tags.Select(MemberOf), .. Settled(RulesOf(tags))];

    private List<Rule> RulesOf(IReadOnlyList<string> tags) => [.. problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal))];

    private Member MemberOf(string tag)
    {
        var (kind, id) = (tag[..tag.IndexOf(':', StringComparison.Ordinal)], tag[(tag.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        switch (kind)
        {
            case "given":
                var given = situation.Preset.Set.First(one => one.Key == id);
                return new Member(MemberKind.Given, "given." + id, SolvingWords.GivenMember(situation.Size(id)!.Meaning, given.Value.ToString(), id));
            case "target":
                return new Member(MemberKind.Target, "target." + id, SolvingWords.TargetMember(situation.Preset.Targets.First(target => target.Key == id)));
            case "rule":
                return new Member(MemberKind.Rule, id, SolvingWords.RuleMember(problem.Rules.First(rule => rule.Id == id)));
            case "claim":
                var claim = situation.Preset.Components.SelectMany(component => component.Claims).First(one => one.Id == id);
                return new Member(MemberKind.Claim, id, SolvingWords.ClaimMember(claim));
            case "stock":
                var sold = problem.Unknowns[id].Domain;
                var sizes = Enumerable.Range(0, (int)sold.Count).Select(place => Setting.Numeric(situation.Size(id)!.Unit, sold.At(place)).ToString());
                return new Member(MemberKind.Stock, "stock." + id, SolvingWords.StockMember(situation.Size(id)!, string.Join(", ", sizes)));
            default:
                var (parameter, domain) = (situation.Size(id)!, problem.Unknowns[id].Domain);
                return new Member(MemberKind.Domain, "domain." + id, SolvingWords.DomainMember(
                    parameter, Setting.Numeric(parameter.Unit, domain.Low).ToString(), Setting.Numeric(parameter.Unit, domain.High).ToString()));
        }
    }

    /// <summary>Choices and materials of the author that a rule fails by alone: the solver never sees them, so they are added here.</summary>
    private IEnumerable<Member> Settled(IReadOnlyList<Rule> rules)
    {
        foreach (var rule in rules.Where(rule => rule.Require!.In(situation).Fails))
        {
            foreach (var choice in situation.Choices.Where(choice => choice.Kind == "given" && rule.Require!.Keys().Contains(choice.Parameter.Key, StringComparer.Ordinal)))
            {
                yield return new Member(
                    MemberKind.Given, "given." + choice.Parameter.Key, SolvingWords.GivenMember(choice.Parameter.Meaning, choice.Word, choice.Parameter.Key));
            }

            foreach (var slot in Swapped(rule))
            {
                yield return new Member(MemberKind.Given, "given." + slot.Slot.Key, SolvingWords.MaterialMember(slot.Slot.Name, slot.Material.Name, slot.Slot.Key));
            }
        }
    }

    private IEnumerable<FilledSlot> Swapped(Rule rule) => situation.Slots.Where(slot =>
        slot.At is not null && rule.Require!.All().OfType<Property>().Any(property => property.Slot == slot.Slot.Key));

    /// <summary>Other values for what the author fixed; also for a fixed value that no equation reaches from the rest.</summary>
    private IEnumerable<RepairProposal> Sizes(bool single)
    {
        foreach (var repair in problem.Model.Repairs().Where(repair => repair.Changes.Count == 1 == single))
        {
            List<ProposedValue> values = [.. repair.Changes.Select(change =>
            {
                var key = change.Tag["given:".Length..];
                return new ProposedValue(key, Setting.Numeric(situation.Size(key)!.Unit, change.Value).ToString());
            })];
            yield return new RepairProposal(values, single ? SolvingWords.SetTo(values[0].Key, values[0].Value) : SolvingWords.SetAll(values));
        }
    }

    /// <summary>Another word for one choice.</summary>
    private IEnumerable<RepairProposal> Choices(IReadOnlyList<string> tags)
    {
        foreach (var choice in situation.Choices.Where(choice => Concerns(choice.Parameter.Key, tags)))
        {
            foreach (var word in choice.Parameter.Options.Where(word => word != choice.Word))
            {
                var other = new Situation(situation.Preset, situation.Catalogue, (choice.Parameter.Key, word));
                var isSound = !PresetCheck.Faults(other, problem.Rules).Any();
                if (isSound && new DetailProblem(other, problem.Rules, ranked: false).Model.Solve() is Answer.Best)
                {
                    yield return new RepairProposal([new ProposedValue(choice.Parameter.Key, word)], SolvingWords.SetTo(choice.Parameter.Key, word));
                }
            }
        }
    }

    // a choice can only help where some expression of the conflict, or the existence of something in it, hangs on it
    private bool Concerns(string choice, IReadOnlyList<string> tags)
    {
        foreach (var rule in problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal)))
        {
            if (rule.Require!.Keys().Contains(choice, StringComparer.Ordinal) || (rule.When?.Keys().Contains(choice, StringComparer.Ordinal) ?? false))
            {
                return true;
            }
        }

        foreach (var claim in situation.Preset.Components.SelectMany(component => component.Claims).Where(claim => tags.Contains("claim:" + claim.Id, StringComparer.Ordinal)))
        {
            if (Reaches(situation.Catalogue.Tree(claim.Require), choice) || (claim.When is { } when && Reaches(situation.Catalogue.Tree(when), choice)))
            {
                return true;
            }
        }

        return tags.Any(tag => tag.StartsWith("target:", StringComparison.Ordinal));
    }

    private bool Reaches(Expression expression, string choice) => expression.Keys().Any(key =>
        key == choice || (situation.DerivedOf(key) is { } derived && derived.Cases.Any(@case => @case.When is { } when && Reaches(situation.Catalogue.Tree(when), choice))));

    /// <summary>The usual material in place of the author's, where a rule of the conflict asks for it.</summary>
    private IEnumerable<RepairProposal> Swaps(IReadOnlyList<Rule> rules)
    {
        foreach (var rule in rules.Where(rule => rule.Require!.In(situation).Fails))
        {
            foreach (var slot in Swapped(rule))
            {
                yield return new RepairProposal(
                    [new ProposedValue("materials." + slot.Slot.Key, slot.Slot.Default)], SolvingWords.SwapMaterial(slot.Slot.Key, slot.Slot.Default));
            }
        }
    }

    /// <summary>The best U-value that the rest allows, in place of a target that is out of reach.</summary>
    private IEnumerable<RepairProposal> Looser(IReadOnlyList<string> tags)
    {
        foreach (var key in tags.Where(tag => tag.StartsWith("target:", StringComparison.Ordinal)).Select(tag => tag["target:".Length..]))
        {
            var free = new DetailProblem(situation, problem.Rules, ranked: false, without: key);
            free.Least(key[..key.IndexOf('.', StringComparison.Ordinal)]);
            if (free.Model.Solve() is Answer.Best best)
            {
                var numbers = free.Unknowns.ToDictionary(pair => pair.Key, pair => best.Values[pair.Value], StringComparer.Ordinal);
                var reached = new SolvedFacts(situation, numbers).Find(key).Number;
                var text = Printing.Amount(Math.Ceiling(reached * 1000) / 1000, Kind.UValue);
                yield return new RepairProposal([new ProposedValue("target." + key, text)], SolvingWords.LoosenTarget(key, text));
            }
        }
    }
}
