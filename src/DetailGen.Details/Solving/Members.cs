using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>Tells the members of a contradiction in trade words.</summary>
internal sealed class Members(DetailProblem problem)
{
    private readonly Situation situation = problem.Situation;

    /// <summary>The members that these tags of the model stand for.</summary>
    public IReadOnlyList<Member> Of(IReadOnlyList<string> tags) => [.. tags.Select(MemberOf), .. Settled(tags).DistinctBy(member => member.Id)];

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

    /// <summary>Choices and materials of the author that a rule or a claim fails by alone: the solver never sees them, so they are added here.</summary>
    private IEnumerable<Member> Settled(IReadOnlyList<string> tags)
    {
        foreach (var asked in Asked(tags).Where(asked => asked.FailsIn(situation)))
        {
            foreach (var given in situation.Preset.Set.Where(given => given.Value.Unit == Unit.Choice && asked.Names(given.Key) && AnotherWordMends(given.Key, asked)))
            {
                yield return new Member(MemberKind.Given, "given." + given.Key, SolvingWords.GivenMember(given));
            }

            foreach (var slot in Swapped(asked.Require))
            {
                yield return new Member(MemberKind.Given, "given." + slot.Slot.Key, SolvingWords.MaterialMember(slot));
            }
        }
    }

    private IEnumerable<Requirement> Asked(IReadOnlyList<string> tags)
    {
        foreach (var rule in problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal)))
        {
            yield return new(rule.When, rule.Require!);
        }

        foreach (var claim in situation.Preset.Components.SelectMany(component => component.Claims).Where(claim => tags.Contains("claim:" + claim.Id, StringComparer.Ordinal)))
        {
            yield return new(claim.When is { } when ? situation.Catalogue.Tree(when) : null, situation.Catalogue.Tree(claim.Require));
        }
    }

    // without that member the others can hold together
    private bool AnotherWordMends(string key, Requirement asked) => situation.Choices.FirstOrDefault(choice => choice.Parameter.Key == key) is { } chosen
        && chosen.Parameter.Options.Any(word => word != chosen.Word && !asked.FailsIn(new(situation.Preset, situation.Catalogue, (key, word))));

    private IEnumerable<FilledSlot> Swapped(Expression require) => situation.Slots.Where(slot =>
        slot.At is not null && require.All().OfType<Property>().Any(property => property.Slot == slot.Slot.Key));

    private sealed record Requirement(Expression? When, Expression Require)
    {
        public bool FailsIn(Situation facts) => !(When?.In(facts).Fails ?? false) && Require.In(facts).Fails;

        public bool Names(string key) => (When?.Keys().Contains(key, StringComparer.Ordinal) ?? false) || Require.Keys().Contains(key, StringComparer.Ordinal);
    }
}
