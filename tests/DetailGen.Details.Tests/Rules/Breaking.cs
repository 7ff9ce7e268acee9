using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;
using DetailGen.Solver;

namespace DetailGen.Details.Tests.Rules;

/// <summary>A preset with every size fixed that breaks a rule.</summary>
/// <param name="Also">Rules that go with it: with these kept too it cannot be broken there.</param>
internal sealed record Broken(Rule Rule, Preset Preset, IReadOnlyList<string> Also);

/// <summary>Looks for a preset that breaks a rule: the solver is asked for the rule turned round, beside all other rules.</summary>
internal sealed class Breaking(Catalogue catalogue, Components components, MaterialLibrary materials, string pack)
{
    private static readonly Mark At = new("breaking", 1, 1);
    private readonly IReadOnlyList<Rule> rules = [.. PackOrder.Rules(PackOrder.Named([pack], catalogue.Packs))];

    /// <summary>One that breaks this rule and no other but those that it says go with it; null where the solver finds none.</summary>
    public Broken? Of(Rule rule)
    {
        var companions = rule.BrokenWith?.Rules ?? [];
        foreach (var situation in Open(rule))
        {
            var others = Others(situation, rule);
            if (Answer(situation, rule, [.. others.Where(other => !companions.Contains(other.Id))]) is { } sizes)
            {
                var also = companions.Count > 0 && Answer(situation, rule, others) is null ? companions : [];
                return new Broken(rule, Fixed(situation, sizes), also);
            }
        }

        return null;
    }

    /// <summary>Whether some pairing breaks it, whatever else it breaks.</summary>
    public bool IsBreakable(Rule rule) => Open(rule).Any(situation => Answer(situation, rule, []) is not null);

    private IEnumerable<Situation> Open(Rule rule) => Situations(rule).Where(situation =>
        situation.Knows(rule.Require!) && !(rule.When?.In(situation).Fails ?? false) && !rule.Require!.In(situation).Holds);

    private static SortedDictionary<string, long>? Answer(Situation situation, Rule rule, IReadOnlyList<Rule> others)
    {
        var turned = rule with { Require = new Not(rule.Require!), Severity = Severity.Must, Blocks = true };
        if (rule.When is { } condition && !condition.In(situation).IsKnown)
        {
            turned = turned with { When = null, Require = new Both(condition, turned.Require) };
        }

        var problem = new DetailProblem(situation, [turned, .. others.Select(other => other with { Severity = Severity.Must, Blocks = true })], ranked: false);
        if (problem.Model.Solve() is not Answer.Best best)
        {
            return null;
        }

        var sizes = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var (key, unknown) in problem.Unknowns)
        {
            sizes[key] = best.Values[unknown];
        }

        return sizes;
    }

    private List<Rule> Others(Situation situation, Rule rule) =>
        [.. rules.Where(other => other.Class == RuleClass.Enforced && other != rule && situation.Knows(other.Require!) && !(other.When?.In(situation).Fails ?? false))];

    private static Preset Fixed(Situation situation, SortedDictionary<string, long> sizes) => situation.Preset with
    {
        Set =
        [
            .. situation.Choices.Select(choice => Given(choice.Parameter.Key, Setting.Choice(choice.Word))),
            .. situation.Sizes.Select(parameter => Given(parameter.Key, Setting.Numeric(parameter.Unit, sizes[parameter.Key]))),
        ],
    };

    private static Given Given(string key, Setting value) => new(key, value, value.ToString(), At, false);

    // what the rule itself names comes first, then one choice away from the usual, then one material
    private IEnumerable<Situation> Situations(Rule rule)
    {
        var named = Named(rule).ToList();
        var presets = components.Ids(ComponentKind.Junction).SelectMany(junction => components.Ids(ComponentKind.Wall).SelectMany(wall =>
            components.Ids(ComponentKind.Roof).Select(roof => Preset(junction, wall, roof)))).ToList();
        return presets.SelectMany(preset => Variants(preset, named)).Concat(presets.SelectMany(NextTo)).Select(preset => new Situation(preset, catalogue));
    }

    private IEnumerable<Preset> Variants(Preset preset, IReadOnlyList<(string Key, bool IsSlot)> named)
    {
        IEnumerable<Preset> all = [preset];
        foreach (var (key, isSlot) in named)
        {
            all = [.. all.SelectMany(one => isSlot ? Filled(one, key) : Worded(one, key)).Take(10000)];
        }

        return all;
    }

    private static IEnumerable<Preset> NextTo(Preset preset)
    {
        foreach (var key in Words(preset))
        {
            foreach (var variant in Worded(preset, key).Skip(1))
            {
                yield return variant;
            }
        }
    }

    private static IEnumerable<string> Words(Preset preset) =>
        preset.Components.SelectMany(component => component.Parameters).Where(parameter => parameter.Unit == Unit.Choice).Select(parameter => parameter.Key);

    private static IEnumerable<(string Key, bool IsSlot)> Named(Rule rule)
    {
        var parts = rule.Require!.All().Concat(rule.When?.All() ?? []).ToList();
        var keys = parts.OfType<Key>().Where(key => key.Kind == Kind.Text && key.Name != "junction").Select(key => (key.Name, false));
        var slots = parts.OfType<Property>().Select(property => (property.Slot, true));
        return keys.Concat(slots).Distinct();
    }

    private static IEnumerable<Preset> Worded(Preset preset, string key)
    {
        yield return preset;
        foreach (var word in preset.Conditions.Any(condition => condition.Key == key) ? Vocabulary.Circumstances.First(one => one.Name == key).Options.Skip(1) : [])
        {
            yield return preset with { Conditions = [.. preset.Conditions.Select(condition => condition.Key == key ? condition with { Word = word } : condition)] };
        }

        foreach (var word in preset.Components.SelectMany(component => component.Parameters).FirstOrDefault(parameter => parameter.Key == key)?.Options ?? [])
        {
            yield return preset with { Set = [.. preset.Set, Given(key, Setting.Choice(word))] };
        }
    }

    private IEnumerable<Preset> Filled(Preset preset, string slot)
    {
        yield return preset;
        var kinds = preset.Slots.Where(one => one.Slot.Key == slot).SelectMany(one => one.Slot.Kinds).ToList();
        foreach (var material in materials.All.Where(material => kinds.Contains(material.Material.Kind, StringComparer.Ordinal)))
        {
            yield return preset with
            {
                Slots = [.. preset.Slots.Select(one => one.Slot.Key == slot && one.Slot.Kinds.Contains(material.Material.Kind, StringComparer.Ordinal) ? one with { Filling = material, At = At } : one)],
            };
        }
    }

    private Preset Preset(string junction, string wall, string roof)
    {
        IReadOnlyList<Component> all =
        [
            components.Find(ComponentKind.Wall, wall)!.Value, components.Find(ComponentKind.Roof, roof)!.Value, components.Find(ComponentKind.Junction, junction)!.Value,
        ];
        return new("breaking", "Breaking", "breaking.yaml", all[2], all[0], all[1],
            [.. Vocabulary.Circumstances.Skip(1).Select(key => new Condition(key.Name, key.Options[0], null))], [], [], [],
            [.. all.SelectMany(component => component.Slots).Select(one => new FilledSlot(one, materials.Find(one.Default)!, null))],
            [new NamedPack(pack, At)], [], [], new SheetWishes(null, null, []), new TitleBlock([]), [], "mould", false, []);
    }
}
