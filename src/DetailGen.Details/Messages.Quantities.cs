using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>Sentences on numbers and units.</summary>
public static partial class Messages
{
    public static Diagnostic BadQuantity(Mark at, string key, string text, Unit unit, QuantityFault fault) => BadQuantity(at, key, text, Asked.Of(unit), fault);

    public static Diagnostic BadQuantity(Mark at, string key, string text, QuantityKind kind, QuantityFault fault) => BadQuantity(at, key, text, Asked.Of(kind), fault);

    public static Diagnostic WrongUnit(Mark at, string key, string text, Unit unit, Quantity quantity) => WrongKind(at, key, text, Asked.Of(unit), quantity);

    public static Diagnostic WrongKind(Mark at, string key, string text, QuantityKind kind, Quantity quantity, string? shown = null) => WrongKind(at, key, text, Asked.Of(kind), quantity, shown);

    /// <summary>A length that micrometres cannot hold.</summary>
    public static Diagnostic NotExact(Mark at, string key, string text, Quantity length) => decimal.IsInteger(length.Number * 1000)
        ? new("too-long", at, $"{key} is {Short(text)}; lengths go up to a thousand kilometres.", Asked.Of(QuantityKind.Length).Example, key, text)
        : new("too-fine", at, $"{key} is {Short(text)}; lengths are whole micrometres.", "Round it to 0.001 mm.", key, text);

    public static Diagnostic TooGreat(Mark at, string key, string text, string most) =>
        new("out-of-domain", at, $"{key} is {Short(text)}; at most {most} can be read.", "The verb list parameters shows from where to where each value goes.", key, text);

    public static Diagnostic NotNumber(Mark at, string key, string text, QuantityFault fault) => fault is QuantityFault.Comma or QuantityFault.Exponent or QuantityFault.Groups
        ? BadQuantity(at, key, text, QuantityKind.Bare, fault)
        : new("no-number", at, $"{key} is {Short(text)}; a bare number belongs here.", "Write a number without a unit.", key, text);

    public static Diagnostic NumberOutside(Mark at, string key, string text, decimal least, decimal most) => new("out-of-domain", at,
        Invariant($"{key} is {Short(text)}; it can only be {least} to {most}."), Invariant($"Write a number from {least} to {most}."), key, text);

    /// <summary>A quantity that only goes from one figure to another, both in the unit of its kind.</summary>
    public static Diagnostic QuantityOutside(Mark at, string key, string text, QuantityKind kind, decimal least, decimal most) => new("out-of-domain", at,
        Invariant($"{key} is {Short(text)}; it can only be {least} to {most} {QuantityReader.UnitOf(kind)}."), Invariant($"Write {least} to {most} {QuantityReader.UnitOf(kind)}."), key, text);

    /// <summary>A size that its domain does not reach to.</summary>
    public static Diagnostic OutsideDomain(Mark at, string key, Setting given, Setting least, Setting most, string text) => new("out-of-domain", at,
        $"{key} is {given}; it can only be {least} to {most}.",
        given.Number < least.Number ? $"Try {least}, the least there is." : $"Try {most}, the most there is.", key, text);

    /// <summary>A size between two steps of its domain.</summary>
    public static Diagnostic OffStep(Mark at, string key, Setting given, Setting step, Setting below, Setting above, string text) => new("off-step", at,
        $"{key} is {given}; it goes in steps of {(step.Unit == Unit.Ratio ? Invariant($"{step.Number}") : step.ToString())}.", $"Try {below} or {above}.", key, text);

    private static Diagnostic BadQuantity(Mark at, string key, string text, Asked asked, QuantityFault fault) => fault switch
    {
        QuantityFault.Comma => new("decimal-comma", at, $"{key} is {Short(text)}; no comma stands in a number here.", WithoutComma(text), key, text),
        QuantityFault.Exponent => new("no-number", at, $"{key} is {Short(text)}; numbers stand without a power of ten here.", "Write the number out.", key, text),
        QuantityFault.Groups => new("no-number", at, $"{key} is {Short(text)}; nothing stands between the digits of a number here.", "Write the digits one after another.", key, text),
        QuantityFault.Digits => new("no-number", at, $"{key} is {Short(text)}; that has more digits than are read.", asked.Example, key, text),
        QuantityFault.Unit => new("unknown-unit", at, $"{key} is {Short(text)}; that unit is not known.", asked.Example, key, text),
        QuantityFault.Ratio => new("bad-ratio", at, $"{key} is {Short(text)}; a fall is 1:n with a whole n of 1 or more.", Asked.Of(QuantityKind.Ratio).Example, key, text),
        _ => new("no-number", at, $"{key} is {Short(text)}; a number belongs here.", asked.Example, key, text),
    };

    private static Diagnostic WrongKind(Mark at, string key, string text, Asked asked, Quantity quantity, string? shown = null) => quantity.Kind == QuantityKind.Bare && asked.Kind != QuantityKind.Bare
        ? new("missing-unit", at, $"{key} is {Short(text)} without a unit; {asked.Words} belongs here.", WithUnit(quantity, asked, shown), key, text)
        : new("wrong-unit", at, $"{key} is {Short(text)}; {asked.Words} belongs here.", asked.Example, key, text);

    // one comma alone may part decimals or thousands; beside points or other commas only one reading is left
    private static string WithoutComma(string text)
    {
        var (comma, point) = (text.LastIndexOf(','), text.LastIndexOf('.'));
        var (thousands, decimals) = (text.Replace(",", "", StringComparison.Ordinal), text.Replace(',', '.'));
        if (point >= 0 || text.Count(sign => sign == ',') > 1)
        {
            return $"Write {Short(point > comma || point < 0 ? thousands : text.Replace(".", "", StringComparison.Ordinal).Replace(',', '.'))}.";
        }

        return text.Skip(comma + 1).TakeWhile(char.IsAsciiDigit).Count() == 3
            ? $"Write {Short(thousands)} if it parts thousands, {Short(decimals)} if it parts decimals."
            : $"Write {Short(decimals)} with a decimal point.";
    }

    // a bare 0.025 is no n of a fall
    private static string WithUnit(Quantity quantity, Asked asked, string? shown) =>
        asked.Kind != QuantityKind.Ratio ? Invariant($"Write {quantity.Number:0.############} {shown ?? QuantityReader.UnitOf(asked.Kind)}.")
        : quantity.Number >= 1 && decimal.IsInteger(quantity.Number) ? Invariant($"Write 1:{quantity.Number:0}.")
        : asked.Example;

    /// <summary>What belongs at a place, in words and as an example.</summary>
    private sealed record Asked(QuantityKind Kind, string Words, string Example)
    {
        internal static Asked Of(Unit unit) => unit switch
        {
            Unit.Length => Of(QuantityKind.Length),
            Unit.Ratio => Of(QuantityKind.Ratio),
            _ => new(QuantityKind.Bare, "a whole number", "Write a whole number such as 2."),
        };

        internal static Asked Of(QuantityKind kind) => kind switch
        {
            QuantityKind.Bare => new(kind, "a number without a unit", "Write a number such as 0.75."),
            QuantityKind.Length => new(kind, "a length", "Write it like 150 mm or 0.15 m."),
            QuantityKind.Ratio => new(kind, "a fall (1:n, or an angle above 0° and up to 45°)", "Write it like 1:40, or 1.5°."),
            QuantityKind.Angle => new(kind, $"a number with {QuantityReader.UnitOf(kind)}", "Write it like 5°."),
            QuantityKind.Transmittance => new(kind, $"a number with {QuantityReader.UnitOf(kind)}", "Write it like 0.15 W/m²K."),
            _ => new(kind, $"a number with {QuantityReader.UnitOf(kind)}", $"Write a number with {QuantityReader.UnitOf(kind)}."),
        };
    }
}
