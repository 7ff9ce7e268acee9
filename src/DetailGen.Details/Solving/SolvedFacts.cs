using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;

namespace DetailGen.Details.Solving;

/// <summary>A detail with every size known.</summary>
internal sealed class SolvedFacts : IFacts
{
    private readonly Situation _situation;
    private readonly SortedDictionary<string, Value> _values = new(StringComparer.Ordinal);

    /// <param name="numbers">Micrometres, n or count by key, for every parameter with a number that the situation has.</param>
    public SolvedFacts(Situation situation, IReadOnlyDictionary<string, long> numbers)
    {
        _situation = situation;
        foreach (var parameter in situation.Sizes)
        {
            _values[parameter.Key] = Value.Of(numbers[parameter.Key], Catalogue.KindOf(parameter.Unit));
        }
    }

    public Value Find(string key)
    {
        if (_values.TryGetValue(key, out var value))
        {
            return value;
        }

        if (_situation.DerivedOf(key) is { } derived)
        {
            _values[key] = Value.Missing; // an equation that names itself finds nothing
            return _values[key] = Case(derived)?.In(this) ?? Value.Missing;
        }

        if (_situation.Find(key).Knowledge == Knowledge.Open && key.Split('.') is [var element, "u-value" or "r-value"])
        {
            var (resistance, corrected) = Resistances.Of(element, _situation, this);
            _values[element + ".r-value"] = Value.Of(resistance, Kind.RValue);
            _values[element + ".u-value"] = Value.Of(1 / corrected, Kind.UValue);
            return _values[key];
        }

        return _situation.Find(key);
    }

    /// <summary>The equation that holds for a derived length; null where none does.</summary>
    public Expression? Case(Derived derived)
    {
        foreach (var (when, value) in derived.Cases)
        {
            if (when is null || _situation.Catalogue.Tree(when).In(this).Holds)
            {
                return _situation.Catalogue.Tree(value);
            }
        }

        return null;
    }

    public bool Has(string slot) => _situation.Has(slot);

    public Material? MaterialIn(string slot) => _situation.MaterialIn(slot);

    /// <summary>Parameters and derived lengths for the builders.</summary>
    public Sizes Sizes()
    {
        var lengths = new SortedDictionary<string, Length>(StringComparer.Ordinal);
        var numbers = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var parameter in _situation.Sizes)
        {
            var number = (long)_values[parameter.Key].Number;
            if (parameter.Unit == Unit.Length)
            {
                lengths[parameter.Key] = new Length(number);
            }
            else
            {
                numbers[parameter.Key] = number;
            }
        }

        foreach (var derived in _situation.Derived)
        {
            if (Find(derived.Key) is { IsKnown: true } value)
            {
                lengths[derived.Key] = Whole(value);
            }
        }

        var choices = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var choice in _situation.Choices)
        {
            choices[choice.Parameter.Key] = choice.Word;
        }

        var materials = new SortedDictionary<string, Material>(StringComparer.Ordinal);
        foreach (var slot in _situation.Slots)
        {
            materials[slot.Slot.Key] = slot.Material;
        }

        return new Sizes(lengths, numbers, choices, materials);
    }

    internal static Length Whole(Value length) => new((long)Math.Ceiling(length.Number));
}
