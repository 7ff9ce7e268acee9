using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>Tells the members of a contradiction in trade words.</summary>
internal sealed class Members(DetailProblem problem)
{
    private readonly Situation situation = problem.Situation;

    /// <summary>The members that these tags of the model stand for.</summary>
    public IReadOnlyList<Member> Of(IReadOnlyList<string> tags) => [.. tags.Select(MemberOf), .. Settled(RulesOf(tags))];

    private List<Rule> RulesOf(IReadOnlyList<string> tags) => [.. problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal))];

    private Member MemberOf(string tag)
    {
        var (kind, id) = (tag[..tag.IndexOf(':', StringComparison.Ordinal)], tag[(tag.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        switch (kind)
        {
            case "given":
                var given = situation.Preset.Set.First(one => one.Key == id);
                return new Member(MemberKind.Given, "given." + id, SolvingWords.GivenMember(given));
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
            foreach (var given in situation.Preset.Set.Where(given => given.Value.Unit == Unit.Choice && rule.Require!.Keys().Contains(given.Key, StringComparer.Ordinal)))
            {
                yield return new Member(MemberKind.Given, "given." + given.Key, SolvingWords.GivenMember(given));
            }

            foreach (var slot in Swapped(rule))
            {
                yield return new Member(MemberKind.Given, "given." + slot.Slot.Key, SolvingWords.MaterialMember(slot));
            }
        }
    }

    private IEnumerable<FilledSlot> Swapped(Rule rule) => situation.Slots.Where(slot =>
        slot.At is not null && rule.Require!.All().OfType<Property>().Any(property => property.Slot == slot.Slot.Key));
}
