using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Tests.Rules;

/// <summary>A pairing, with choices, circumstances and materials other than the usual ones.</summary>
/// <param name="Others">Such as <c>coping.kind=metal</c> and, of a material, <c>coping:copper</c>.</param>
internal sealed record Variant(string Junction, string Wall, string Roof, IReadOnlyList<string> Others)
{
    /// <summary>Its words in one line, as <see cref="Read"/> reads them.</summary>
    public override string ToString() => string.Join(' ', [Junction, Wall, Roof, .. Others]);

    public static Variant Read(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var junction, var wall, var roof, .. var others]
        ? new(junction, wall, roof, others)
        : throw new FormatException($"'{line}' is not a junction, a wall, a roof and what is other than usual.");
}

/// <summary>The variants of the shipped details that are tried to break a rule of one pack.</summary>
internal sealed class Variants(Components components, MaterialLibrary materials, string pack)
{
    private static readonly Mark At = new("variant", 1, 1);

    /// <summary>Every junction with every wall and every roof, all else as usual.</summary>
    public IReadOnlyList<Variant> Pairings =>
    [
        .. components.Ids(ComponentKind.Junction).SelectMany(junction => components.Ids(ComponentKind.Wall).SelectMany(wall =>
            components.Ids(ComponentKind.Roof).Select(roof => new Variant(junction, wall, roof, [])))),
    ];

    /// <summary>The pairings, then what differs in one, two and more things that the rule itself names, then what differs in any one choice.</summary>
    public IEnumerable<Variant> Of(Rule rule)
    {
        var named = Named(rule).ToList();
        var one = Pairings.SelectMany(pairing => named.SelectMany(what => Other(pairing, what)));
        var two = one.SelectMany(variant => named.SelectMany(what => Other(variant, what)));
        var more = Pairings.SelectMany(pairing => named.Aggregate((IEnumerable<Variant>)[pairing], (all, what) => all.SelectMany(variant => Other(variant, what).Prepend(variant))));
        var any = Pairings.SelectMany(pairing => Choices(pairing).SelectMany(key => Other(pairing, (key, false))));
        return Pairings.Concat(one).Concat(two).Concat(any).Concat(more).DistinctBy(variant => variant.ToString());
    }

    public Preset Preset(Variant variant)
    {
        IReadOnlyList<Component> all =
        [
            components.Find(ComponentKind.Wall, variant.Wall)!.Value, components.Find(ComponentKind.Roof, variant.Roof)!.Value, components.Find(ComponentKind.Junction, variant.Junction)!.Value,
        ];
        var words = variant.Others.Where(other => other.Contains('=', StringComparison.Ordinal)).ToDictionary(other => other.Split('=')[0], other => other.Split('=')[1], StringComparer.Ordinal);
        var fillings = variant.Others.Where(other => other.Contains(':', StringComparison.Ordinal)).ToDictionary(other => other.Split(':')[0], other => other.Split(':')[1], StringComparer.Ordinal);
        return new("breaking", "Breaking", "breaking.yaml", all[2], all[0], all[1],
            [.. Vocabulary.Circumstances.Skip(1).Select(key => new Condition(key.Name, words.GetValueOrDefault(key.Name, key.Options[0]), null))],
            [.. words.Where(word => !IsCircumstance(word.Key)).Select(word => new Given(word.Key, Setting.Choice(word.Value), word.Value, At, false))], [], [],
            [
                .. all.SelectMany(component => component.Slots).Select(slot => fillings.TryGetValue(slot.Key, out var id) && materials.Find(id) is { } filling && slot.Kinds.Contains(filling.Material.Kind, StringComparer.Ordinal)
                    ? new FilledSlot(slot, filling, At)
                    : new FilledSlot(slot, materials.Find(slot.Default)!, null)),
            ],
            [new NamedPack(pack, At)], [], [], new SheetWishes(null, null, [], []), new TitleBlock([]), [], "mould", false, []);
    }

    private static bool IsCircumstance(string key) => Vocabulary.Circumstances.Skip(1).Any(one => one.Name == key);

    private IEnumerable<Component> Parts(Variant variant) =>
    [
        components.Find(ComponentKind.Wall, variant.Wall)!.Value, components.Find(ComponentKind.Roof, variant.Roof)!.Value, components.Find(ComponentKind.Junction, variant.Junction)!.Value,
    ];

    private IEnumerable<string> Choices(Variant variant) =>
        Parts(variant).SelectMany(component => component.Parameters).Where(parameter => parameter.Unit == Unit.Choice).Select(parameter => parameter.Key);

    private static IEnumerable<(string Key, bool IsSlot)> Named(Rule rule)
    {
        var parts = rule.Require!.All().Concat(rule.When?.All() ?? []).ToList();
        var keys = parts.OfType<Key>().Where(key => key.Kind == Kind.Text && key.Name != "junction").Select(key => (key.Name, false));
        var slots = parts.OfType<Property>().Select(property => (property.Slot, true));
        return keys.Concat(slots).Distinct();
    }

    private IEnumerable<Variant> Other(Variant variant, (string Key, bool IsSlot) what)
    {
        var (key, isSlot) = what;
        if (variant.Others.Any(other => other.Split('=', ':')[0] == key && other.Contains(isSlot ? ':' : '=', StringComparison.Ordinal)))
        {
            return [];
        }

        var words = isSlot
            ? materials.All.Where(material => Parts(variant).SelectMany(part => part.Slots).Any(slot => slot.Key == key && slot.Default != material.Material.Id && slot.Kinds.Contains(material.Material.Kind, StringComparer.Ordinal)))
                .Select(material => $"{key}:{material.Material.Id}")
            : (IsCircumstance(key) ? Vocabulary.Circumstances.First(one => one.Name == key).Options.Skip(1) : Parts(variant).SelectMany(part => part.Parameters).FirstOrDefault(parameter => parameter.Key == key)?.Options ?? [])
                .Select(word => $"{key}={word}");
        return words.Select(word => variant with { Others = [.. variant.Others, word] });
    }
}
