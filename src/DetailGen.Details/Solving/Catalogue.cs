using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>All that details are solved with: what may be named, the expressions of the components, rule packs and stock. Read once, used for many.</summary>
public sealed class Catalogue
{
    private readonly Dictionary<Written, Expression> _expressions;
    // by place, not by tree: a component that was read twice has two trees
    private readonly Dictionary<Mark, IReadOnlyList<ResistanceLayer>> _layers;
    private readonly SortedDictionary<string, StockClass> _stock;

    private Catalogue(
        Vocabulary vocabulary, Dictionary<Written, Expression> expressions, Dictionary<Mark, IReadOnlyList<ResistanceLayer>> layers,
        SortedDictionary<string, StockClass> stock, IReadOnlyList<RulePack> packs)
    {
        (Vocabulary, _expressions, _layers, _stock, Packs) = (vocabulary, expressions, layers, stock, packs);
    }

    public Vocabulary Vocabulary { get; }

    public IReadOnlyList<RulePack> Packs { get; }

    /// <summary>What is usual in the practice.</summary>
    public UsualValues Usual { get; init; } = UsualValues.None;

    /// <summary>The packs that a preset is held to, what is extended first.</summary>
    public IReadOnlyList<RulePack> PacksOf(Presets.Preset preset) => PackOrder.Named(preset.Rules.Select(named => named.Name), Packs);

    /// <summary>Checks every expression of every component and rule; all faults are told at once.</summary>
    /// <param name="components">Every wall, roof and junction there is: rules may name the keys of any.</param>
    /// <param name="materials">Ids.</param>
    /// <param name="packs">Name and trees of each pack's files.</param>
    /// <param name="usual">Usual values of a practice; null for none.</param>
    public static Outcome<Catalogue> Of(
        IReadOnlyList<Component> components, IEnumerable<StockClass> stock, IEnumerable<string> materials, IReadOnlyList<PackText> packs,
        UsualValues? usual = null)
    {
        var vocabulary = new Vocabulary(
            [.. Vocabulary.Circumstances, .. Vocabulary.Results, .. components.SelectMany(Keys)],
            components.SelectMany(component => component.Slots).Select(slot => slot.Key), materials);
        var expressions = new Dictionary<Written, Expression>();
        var layers = new Dictionary<Mark, IReadOnlyList<ResistanceLayer>>();
        var faults = new List<Diagnostic>();
        foreach (var component in components)
        {
            foreach (var (written, isLength) in Written(component))
            {
                var read = isLength ? ExpressionReader.Length(written, vocabulary) : ExpressionReader.Condition(written, vocabulary);
                faults.AddRange(read.Faults);
                if (read.IsGood)
                {
                    expressions[written] = read.Value;
                }
            }

            if (component.Layers is { } node)
            {
                var read = ResistanceLayers.Read(node, vocabulary);
                faults.AddRange(read.Faults);
                layers[node.At] = read.IsGood ? read.Value : [];
            }
        }

        var rules = new List<RulePack>();
        foreach (var pack in packs)
        {
            var read = RulePackReader.Read(pack.Name, pack.Files, vocabulary);
            faults.AddRange(read.Faults);
            if (read.IsGood)
            {
                rules.Add(read.Value);
            }
        }

        faults.AddRange(PackOrder.Faults(rules));
        var classes = new SortedDictionary<string, StockClass>(StringComparer.Ordinal);
        foreach (var one in stock)
        {
            classes[one.Id] = one;
        }

        return faults.Count == 0 ? Outcome.Good(new Catalogue(vocabulary, expressions, layers, classes, rules) { Usual = usual ?? UsualValues.None }) : Outcome.Bad<Catalogue>(faults);
    }

    /// <summary>The tree of an expression of some component.</summary>
    internal Expression Tree(Written written) => _expressions[written];

    /// <summary>Null where the class is not known.</summary>
    internal StockClass? Stock(string id) => _stock.GetValueOrDefault(id);

    internal IReadOnlyList<ResistanceLayer> Layers(Component component) => component.Layers is { } node ? _layers[node.At] : [];

    private static IEnumerable<KnownKey> Keys(Component component) =>
        component.Parameters.Select(parameter => new KnownKey(parameter.Key, KindOf(parameter.Unit), parameter.Options))
            .Concat(component.Derived.Select(derived => new KnownKey(derived.Key, Kind.Length, [])));

    private static IEnumerable<(Written, bool IsLength)> Written(Component component)
    {
        foreach (var parameter in component.Parameters)
        {
            if (parameter.When is { } when)
            {
                yield return (when, false);
            }

            foreach (var usual in parameter.DefaultWhen)
            {
                yield return (usual.When, false);
            }
        }

        foreach (var derived in component.Derived)
        {
            foreach (var (when, value) in derived.Cases)
            {
                if (when is not null)
                {
                    yield return (when, false);
                }

                yield return (value, true);
            }
        }

        foreach (var claim in component.Claims)
        {
            if (claim.When is not null)
            {
                yield return (claim.When, false);
            }

            yield return (claim.Require, false);
        }

        foreach (var when in component.Slots.Select(slot => slot.When).Concat(component.Words.Select(words => words.When)).OfType<Written>())
        {
            yield return (when, false);
        }
    }

    internal static Kind KindOf(Unit unit) => unit switch
    {
        Unit.Length => Kind.Length,
        Unit.Ratio => Kind.Slope,
        Unit.Count => Kind.Number,
        _ => Kind.Text,
    };
}

/// <summary>A rule pack as read from its folder.</summary>
/// <param name="Files">In ordinal order of their names.</param>
public sealed record PackText(string Name, IReadOnlyList<Node> Files);
