using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>Tells the members of a contradiction in trade words.</summary>
internal sealed class Members(DetailProblem problem)
{
    private readonly Situation _situation = problem.Situation;

    private readonly Dictionary<string, Member> _told = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Member[]> _settled = new(StringComparer.Ordinal);

    /// <summary>What the tags of rules and claims ask, with its place in their order; every stop of a range looks some of it up.</summary>
    private readonly Lazy<Dictionary<string, (int Place, Requirement Asked)>> _requirements = new(
        () => Requirements(problem).Select((one, place) => (one.Tag, place, one.Asked)).ToDictionary(one => one.Tag, one => (one.place, one.Asked), StringComparer.Ordinal));

    /// <summary>The members that these tags of the model stand for.</summary>
    public IReadOnlyList<Member> Of(IReadOnlyList<string> tags) =>
    [
        .. tags.Select(tag => Once(_told, tag, () => MemberOf(tag))),
        .. tags.Where(_requirements.Value.ContainsKey).OrderBy(tag => _requirements.Value[tag].Place)
            .SelectMany(tag => Once(_settled, tag, () => [.. Settled(_requirements.Value[tag].Asked)])).DistinctBy(member => member.Id),
    ];

    private static T Once<T>(Dictionary<string, T> known, string tag, Func<T> make)
    {
        if (!known.TryGetValue(tag, out var one))
        {
            known.Add(tag, one = make());
        }

        return one;
    }

    private Member MemberOf(string tag)
    {
        var (kind, id) = (tag[..tag.IndexOf(':', StringComparison.Ordinal)], tag[(tag.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        switch (kind)
        {
            case "given":
                var given = _situation.Preset.Set.First(one => one.Key == id);
                return new Member(MemberKind.Given, "given." + id, SolvingWords.GivenMember(given));
            case "target":
                return new Member(MemberKind.Target, "target." + id, SolvingWords.TargetMember(_situation.Preset.Targets.First(target => target.Key == id)));
            case "rule":
                return new Member(MemberKind.Rule, id, SolvingWords.RuleMember(problem.Rules.First(rule => rule.Id == id)));
            case "claim":
                var claim = _situation.Preset.Components.SelectMany(component => component.Claims).First(one => one.Id == id);
                return new Member(MemberKind.Claim, id, SolvingWords.ClaimMember(claim));
            case "stock":
                var sold = problem.Unknowns[id].Domain;
                var sizes = Enumerable.Range(0, (int)sold.Count).Select(place => Setting.Numeric(_situation.Size(id)!.Unit, sold.At(place)).ToString());
                return new Member(MemberKind.Stock, "stock." + id, SolvingWords.StockMember(_situation.Size(id)!, string.Join(", ", sizes)));
            default:
                var (parameter, domain) = (_situation.Size(id)!, problem.Unknowns[id].Domain);
                return new Member(MemberKind.Domain, "domain." + id, SolvingWords.DomainMember(
                    parameter, Setting.Numeric(parameter.Unit, domain.Low).ToString(), Setting.Numeric(parameter.Unit, domain.High).ToString()));
        }
    }

    /// <summary>Choices and materials of the author that a rule or a claim fails by alone: the solver never sees them, so they are added here.</summary>
    private IEnumerable<Member> Settled(Requirement asked)
    {
        if (!asked.FailsIn(_situation))
        {
            yield break;
        }

        foreach (var given in _situation.Preset.Set.Where(given => given.Value.Unit == Unit.Choice && asked.Names(given.Key) && AnotherWordMends(given.Key, asked)))
        {
            yield return new Member(MemberKind.Given, "given." + given.Key, SolvingWords.GivenMember(given));
        }

        foreach (var slot in Swapped(asked.Require))
        {
            yield return new Member(MemberKind.Given, "given." + slot.Slot.Key, SolvingWords.MaterialMember(slot));
        }
    }

    private static IEnumerable<(string Tag, Requirement Asked)> Requirements(DetailProblem problem)
    {
        var situation = problem.Situation;
        return problem.Rules.Select(rule => ("rule:" + rule.Id, new Requirement(rule.When, rule.Require!)))
            .Concat(situation.Preset.Components.SelectMany(component => component.Claims)
                .Select(claim => ("claim:" + claim.Id, new Requirement(claim.When is { } when ? situation.Catalogue.Tree(when) : null, situation.Catalogue.Tree(claim.Require)))));
    }

    // without that member the others can hold together
    private bool AnotherWordMends(string key, Requirement asked) => _situation.Choices.FirstOrDefault(choice => choice.Parameter.Key == key) is { } chosen
        && chosen.Parameter.Options.Any(word => word != chosen.Word && !asked.FailsIn(new(_situation.Preset, _situation.Catalogue, (key, word))));

    private IEnumerable<FilledSlot> Swapped(Expression require) => _situation.Slots.Where(slot =>
        slot.At is not null && require.All().OfType<Property>().Any(property => property.Slot == slot.Slot.Key));

    private sealed record Requirement(Expression? When, Expression Require)
    {
        public bool FailsIn(Situation facts) => !(When?.In(facts).Fails ?? false) && Require.In(facts).Fails;

        public bool Names(string key) => (When?.Keys().Contains(key, StringComparer.Ordinal) ?? false) || Require.Keys().Contains(key, StringComparer.Ordinal);
    }
}
