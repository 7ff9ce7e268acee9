using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details;

/// <summary>Sentences on numbers and units.</summary>
public static partial class Messages
{
    public static Diagnostic BadQuantity(Mark at, string key, string text, Unit unit, QuantityFault fault) => BadQuantity(at, key, text, KindOf(unit), fault);

    public static Diagnostic BadQuantity(Mark at, string key, string text, QuantityKind kind, QuantityFault fault) => fault switch
    {
        QuantityFault.Comma => new("decimal-comma", at, $"{key} is {Short(text)}; no comma stands in a number here.", WithoutComma(text), key, text),
        QuantityFault.Exponent => new("no-number", at, $"{key} is {Short(text)}; numbers stand without a power of ten here.", "Write the number out.", key, text),
        QuantityFault.Groups => new("no-number", at, $"{key} is {Short(text)}; nothing stands between the digits of a number here.", "Write the digits one after another.", key, text),
        QuantityFault.Digits => new("no-number", at, $"{key} is {Short(text)}; that has more digits than are read.", Example(kind), key, text),
        QuantityFault.Unit => new("unknown-unit", at, $"{key} is {Short(text)}; that unit is not known.", Example(kind), key, text),
        QuantityFault.Ratio => new("bad-ratio", at, $"{key} is {Short(text)}; a fall is 1:n with a whole n of 1 or more.", Example(QuantityKind.Ratio), key, text),
        _ => new("no-number", at, $"{key} is {Short(text)}; a number belongs here.", Example(kind), key, text),
    };

    public static Diagnostic WrongUnit(Mark at, string key, string text, Unit unit, Quantity quantity) => WrongKind(at, key, text, KindOf(unit), quantity);

    public static Diagnostic WrongKind(Mark at, string key, string text, QuantityKind kind, Quantity quantity, string? shown = null) => quantity.Kind == QuantityKind.Bare && kind != QuantityKind.Bare
        ? new("missing-unit", at, $"{key} is {Short(text)} without a unit; {Wanted(kind)} belongs here.", $"Write {WithUnit(quantity, kind, shown)}.", key, text)
        : new("wrong-unit", at, $"{key} is {Short(text)}; {Wanted(kind)} belongs here.", Example(kind), key, text);

    /// <summary>A length that micrometres cannot hold.</summary>
    public static Diagnostic NotExact(Mark at, string key, string text, Quantity length) => decimal.IsInteger(length.Number * 1000)
        ? new("too-long", at, $"{key} is {Short(text)}; lengths go up to a thousand kilometres.", Example(QuantityKind.Length), key, text)
        : new("too-fine", at, $"{key} is {Short(text)}; lengths are whole micrometres.", "Round it to 0.001 mm.", key, text);

    public static Diagnostic TooGreat(Mark at, string key, string text, string most) =>
        new("out-of-domain", at, $"{key} is {Short(text)}; at most {most} can be read.", "The verb list parameters shows from where to where each value goes.", key, text);

    public static Diagnostic NotNumber(Mark at, string key, string text, QuantityFault fault) => fault is QuantityFault.Comma or QuantityFault.Exponent or QuantityFault.Groups
        ? BadQuantity(at, key, text, QuantityKind.Bare, fault)
        : new("no-number", at, $"{key} is {Short(text)}; a bare number belongs here.", "Write a number without a unit.", key, text);

    public static Diagnostic NumberOutside(Mark at, string key, string text, decimal least, decimal most) => new("out-of-domain", at,
        Invariant($"{key} is {Short(text)}; it can only be {least} to {most}."), Invariant($"Write a number from {least} to {most}."), key, text);

    /// <summary>A size that its domain does not reach to.</summary>
    public static Diagnostic OutsideDomain(Mark at, string key, Setting given, Setting least, Setting most, string text) => new("out-of-domain", at,
        $"{key} is {given}; it can only be {least} to {most}.",
        given.Number < least.Number ? $"Try {least}, the least there is." : $"Try {most}, the most there is.", key, text);

    /// <summary>A size between two steps of its domain.</summary>
    public static Diagnostic OffStep(Mark at, string key, Setting given, Setting step, Setting below, Setting above, string text) => new("off-step", at,
        $"{key} is {given}; it goes in steps of {(step.Unit == Unit.Ratio ? Invariant($"{step.Number}") : step.ToString())}.", $"Try {below} or {above}.", key, text);

    private static QuantityKind KindOf(Unit unit) => unit switch
    {
        Unit.Length => QuantityKind.Length,
        Unit.Ratio => QuantityKind.Ratio,
        _ => QuantityKind.Bare,
    };

    // three figures behind it may be thousands
    private static string WithoutComma(string text)
    {
        var (whole, rest) = (text[..text.IndexOf(',')], text[(text.IndexOf(',') + 1)..]);
        var decimals = $"{Short($"{whole}.{rest}")} if it parts decimals";
        return rest.TakeWhile(char.IsAsciiDigit).Count() == 3 ? $"Write {whole}{rest} if it parts thousands, {decimals}." : $"Write {Short(text.Replace(',', '.'))} with a decimal point.";
    }

    private static string Wanted(QuantityKind kind) => kind switch
    {
        QuantityKind.Bare => "a whole number",
        QuantityKind.Length => "a length",
        QuantityKind.Ratio => "a fall (1:n, or an angle above 0° and up to 45°)",
        _ => $"a number with {QuantityReader.UnitOf(kind)}",
    };

    private static string WithUnit(Quantity quantity, QuantityKind kind, string? shown) =>
        kind == QuantityKind.Ratio ? Invariant($"1:{quantity.Number:0}") : Invariant($"{quantity.Number:0.############} {shown ?? QuantityReader.UnitOf(kind)}");

    private static string Example(QuantityKind kind) => kind switch
    {
        QuantityKind.Bare => "Write a whole number such as 2.",
        QuantityKind.Length => "Write it like 150 mm or 0.15 m.",
        QuantityKind.Ratio => "Write it like 1:40, or 1.5°.",
        QuantityKind.Angle => "Write it like 5°.",
        QuantityKind.Transmittance => "Write it like 0.15 W/m²K.",
        _ => $"Write a number with {QuantityReader.UnitOf(kind)}.",
    };
}
