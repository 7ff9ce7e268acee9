using DetailGen.Details.Reading;

namespace DetailGen.Details.Quantities;

/// <summary>Reads the value of a parameter: a length with its unit, a ratio or an angle, a count, a word.</summary>
public static class SettingReader
{
    /// <summary>Of counts, and of the n of a fall.</summary>
    private const int Most = 1_000_000;

    /// <param name="key">Only for the message.</param>
    /// <param name="options">Words of a choice; not looked at for other units.</param>
    public static Outcome<Setting> Read(string text, Mark at, string key, Unit unit, IReadOnlyList<string> options)
    {
        if (unit == Unit.Choice)
        {
            return options.Contains(text, StringComparer.Ordinal)
                ? Outcome.Good(Setting.Choice(text))
                : Outcome.Bad<Setting>(Messages.UnknownChoice(at, key, text, options));
        }

        if (QuantityReader.Read(text, out var fault) is not { } quantity)
        {
            return Outcome.Bad<Setting>(Messages.BadQuantity(at, key, text, unit, fault));
        }

        return unit switch
        {
            Unit.Length => Length(quantity, text, at, key),
            Unit.Ratio when quantity.AsRatio() is { } n && n >= 1 => Outcome.Good(Setting.Ratio(n)),
            Unit.Ratio when quantity.Kind == QuantityKind.Ratio => Outcome.Bad<Setting>(Messages.TooGreat(at, key, text, $"1:{Most}")),
            Unit.Count when quantity.Kind == QuantityKind.Bare && decimal.IsInteger(quantity.Number) => Math.Abs(quantity.Number) <= Most
                ? Outcome.Good(Setting.Count((long)quantity.Number))
                : Outcome.Bad<Setting>(Messages.TooGreat(at, key, text, $"{Most}")),
            _ => Outcome.Bad<Setting>(Messages.WrongUnit(at, key, text, unit, quantity)),
        };
    }

    private static Outcome<Setting> Length(Quantity quantity, string text, Mark at, string key)
    {
        if (quantity.Kind != QuantityKind.Length)
        {
            return Outcome.Bad<Setting>(Messages.WrongUnit(at, key, text, Unit.Length, quantity));
        }

        return quantity.AsLength() is { } length ? Outcome.Good(Setting.Of(length)) : Outcome.Bad<Setting>(Messages.NotExact(at, key, text, quantity));
    }
}
