using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;

namespace DetailGen.Details.Solving;

/// <summary>A choice as it stands, and how it came about.</summary>
/// <param name="Why">Given, preferred or usual.</param>
internal sealed record Chosen(Parameter Parameter, string Word, Why Why);

/// <summary>What is settled before anything is solved: circumstances, choices, materials, and with them which parameters there are.</summary>
internal sealed class Situation : IFacts
{
    private readonly SortedDictionary<string, string> _words = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, FilledSlot> _slots = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, Parameter> _sizes = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, Derived> _derived = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _undecided = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, decimal> _fixedNumbers = new(StringComparer.Ordinal);

    /// <param name="instead">Another word for one choice, to try a repair.</param>
    public Situation(Preset preset, Catalogue catalogue, (string Key, string Word)? instead = null)
    {
        (Preset, Catalogue) = (preset, catalogue);
        _words["junction"] = preset.Junction.Id;
        foreach (var condition in preset.Conditions)
        {
            _words[condition.Key] = condition.Word;
        }

        // Before the choices are made, the first of several fillings stands for a slot.
        foreach (var slot in preset.Slots)
        {
            _slots.TryAdd(slot.Slot.Key, slot);
        }

        foreach (var given in preset.Set.Where(given => given.Value.Unit != Unit.Choice))
        {
            _fixedNumbers[given.Key] = given.Value.Number;
        }

        var parameters = preset.Components.SelectMany(component => component.Parameters).ToList();
        // What is there in any case comes first: choices and conditions ask for it.
        foreach (var parameter in parameters.Where(parameter => parameter.Unit != Unit.Choice && parameter.When is null))
        {
            _sizes.TryAdd(parameter.Key, parameter);
        }

        Choices = Choose([.. parameters.Where(parameter => parameter.Unit == Unit.Choice)], instead);
        foreach (var parameter in parameters.Where(parameter => parameter.Unit != Unit.Choice))
        {
            // an existence that hangs on an unsolved size counts as existing: the size is then there to be solved
            if (parameter.When is not { } when || !catalogue.Tree(when).In(Deciding).Fails)
            {
                _sizes.TryAdd(parameter.Key, parameter);
            }
        }

        FilledSlot[] there = [.. preset.Slots.Where(slot => slot.Slot.When is not { } when || !catalogue.Tree(when).In(Deciding).Fails)];
        _slots.Clear();
        foreach (var slot in there)
        {
            _slots.TryAdd(slot.Slot.Key, slot);
        }

        foreach (var one in preset.Components.SelectMany(component => component.Derived).Where(one => CaseOf(one) is not null || Undecided(one)))
        {
            _derived.TryAdd(one.Key, one);
        }
    }

    public Preset Preset { get; }

    public Catalogue Catalogue { get; }

    public IReadOnlyList<Chosen> Choices { get; }

    /// <summary>Parameters with a number that this detail has, in ordinal order of key.</summary>
    public IEnumerable<Parameter> Sizes => _sizes.Values;

    public IEnumerable<Derived> Derived => _derived.Values;

    public IEnumerable<FilledSlot> Slots => _slots.Values;

    public Parameter? Size(string key) => _sizes.GetValueOrDefault(key);

    public Derived? DerivedOf(string key) => _derived.GetValueOrDefault(key);

    public Value Find(string key)
    {
        if (_words.TryGetValue(key, out var word))
        {
            return Value.Of(word);
        }

        if (_undecided.Contains(key) || _sizes.ContainsKey(key) || _derived.ContainsKey(key))
        {
            return Value.Open;
        }

        return key switch
        {
            "roof.u-value" or "roof.r-value" => Catalogue.Layers(Preset.Roof).Count > 0 ? Value.Open : Value.Missing,
            "wall.u-value" or "wall.r-value" => Catalogue.Layers(Preset.Wall).Count > 0 ? Value.Open : Value.Missing,
            "wall.rsi" or "wall.rse" or "roof.rsi" or "roof.rse" => Value.Of(Resistances.Surface(key), Kind.RValue),
            _ => Value.Missing,
        };
    }

    public bool Has(string slot) => _slots.ContainsKey(slot) || _sizes.ContainsKey(slot) || _derived.ContainsKey(slot) || _undecided.Contains(slot);

    public Material? MaterialIn(string slot) => _slots.GetValueOrDefault(slot)?.Material;

    /// <summary>What is usual for the parameter here; null where nothing is.</summary>
    public Setting? Usual(Parameter parameter)
    {
        // another component may have the parameter with a narrower domain or fewer options
        if (Catalogue.Usual.Find(parameter.Key) is { } own && (own.Word is { } word ? parameter.Options.Contains(word, StringComparer.Ordinal) : parameter.Domain!.Holds(own.Number)))
        {
            return own;
        }

        foreach (var usual in parameter.DefaultWhen)
        {
            if (Catalogue.Tree(usual.When).In(Deciding).Holds)
            {
                return usual.Value;
            }
        }

        return parameter.Default;
    }

    /// <summary>Every key and slot that the expression names is there.</summary>
    public bool Knows(Expression expression) => expression.All().All(part => part switch
    {
        Key key => Find(key.Name).Knowledge != Knowledge.Missing,
        Property property => _slots.ContainsKey(property.Slot),
        _ => true,
    });

    /// <summary>Facts in which given numbers are known too: for what must be decided before solving.</summary>
    private IFacts Deciding => new WithGivens(this);

    /// <summary>The first case that holds; null where none does.</summary>
    private DerivedCase? CaseOf(Derived one) => one.Cases.FirstOrDefault(@case => @case.When is null || Catalogue.Tree(@case.When).In(this).Holds);

    private bool Undecided(Derived one) => one.Cases.Any(@case => @case.When is not null && !Catalogue.Tree(@case.When).In(this).IsKnown);

    private List<Chosen> Choose(List<Parameter> choices, (string Key, string Word)? instead)
    {
        var chosen = new List<Chosen>();
        var left = new List<Parameter>(choices);
        _undecided.UnionWith(left.Select(parameter => parameter.Key));
        _undecided.UnionWith(Preset.Components.SelectMany(component => component.Parameters).Select(parameter => parameter.Key));
        while (left.Count > 0)
        {
            // a choice may hang on another; when none can go first, the first in line does
            var next = left.Find(parameter => Decided(parameter)) ?? left[0];
            left.Remove(next);
            _undecided.Remove(next.Key);
            if (next.When is not { } when || !Catalogue.Tree(when).In(Deciding).Fails)
            {
                var one = Choose(next, instead);
                _words[next.Key] = one.Word;
                chosen.Add(one);
            }
        }

        _undecided.Clear();
        return [.. chosen.OrderBy(one => one.Parameter.Key, StringComparer.Ordinal)];
    }

    private bool Decided(Parameter parameter) =>
        (parameter.When is not { } when || Catalogue.Tree(when).In(Deciding).IsKnown)
            && parameter.DefaultWhen.All(usual => Catalogue.Tree(usual.When).In(Deciding).IsKnown);

    private Chosen Choose(Parameter parameter, (string Key, string Word)? instead)
    {
        if (instead is { } other && other.Key == parameter.Key)
        {
            return new Chosen(parameter, other.Word, new Why(WhyKind.Given, null, SolvingWords.Given));
        }

        if (Preset.Set.FirstOrDefault(given => given.Key == parameter.Key) is { } set)
        {
            return new Chosen(parameter, set.Value.Word!, Reasons.Of(set));
        }

        return Preset.Prefer.FirstOrDefault(given => given.Key == parameter.Key) is { } wish
            ? new Chosen(parameter, wish.Value.Word!, Reasons.Wished)
            : new Chosen(parameter, Usual(parameter)?.Word ?? parameter.Options[0], Reasons.Usual);
    }

    private sealed class WithGivens(Situation situation) : IFacts
    {
        public Value Find(string key) => situation._fixedNumbers.TryGetValue(key, out var number)
            && situation.Preset.Components.SelectMany(component => component.Parameters).FirstOrDefault(parameter => parameter.Key == key) is { } parameter
                ? Value.Of(number, Catalogue.KindOf(parameter.Unit))
                : situation.Find(key);

        public bool Has(string slot) => situation.Has(slot);

        public Material? MaterialIn(string slot) => situation.MaterialIn(slot);
    }
}
