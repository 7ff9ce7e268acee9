using System.Text.RegularExpressions;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Rules;

/// <summary>What is said of faults in rule packs and expressions.</summary>
public static partial class RuleMessages
{
    public static Diagnostic TooLong(Mark at, int length, int most) => new("expression-too-long", at,
        $"The expression has {length} characters; at most {most} are read.", "Split it into several rules.");

    public static Diagnostic TooDeep(Mark at, int most) => new("expression-too-deep", at,
        $"The brackets are nested more than {most} deep.", "Take out brackets that are not needed, or split the rule.");

    public static Diagnostic Syntax(Mark at, string reason) => new("expression-syntax", at,
        $"The expression cannot be read: {reason}.", "Write comparisons such as `upstand.height >= 150 mm`, joined by `and` and `or`; blanks stand around a minus sign.");

    /// <summary>Reason of a sign that no expression holds.</summary>
    internal static string Unexpected(string sign) => $"unexpected `{sign}`";

    /// <summary>Reason of a word that cannot stand where it stands.</summary>
    /// <param name="expected">What could; null where the text should have ended.</param>
    internal static string Unexpected(Token word, string? expected)
    {
        var text = word.Text.Length > 60 ? word.Text[..57] + "..." : word.Text;
        var what = word.Lexeme switch
        {
            Lexeme.End => "end of input",
            Lexeme.Name => $"name `{text}`",
            Lexeme.Figure => $"figure `{text}`",
            Lexeme.Compare => $"comparison `{text}`",
            _ => $"`{text}`",
        };
        return expected is null ? $"unexpected {what}" : $"unexpected {what}, expected {expected}";
    }

    /// <summary>Reason of a keyword where a name should stand.</summary>
    internal const string NameExpected = "a name is expected here";

    public static Diagnostic UnknownUnit(Mark at, string unit) => new("unknown-unit", at,
        $"{unit} is no unit that is known here.", $"Known units are {string.Join(", ", Units.Names)}; a slope is written 1:40.", Value: unit);

    public static Diagnostic BadFigure(Mark at, string text) => new("bad-figure", at,
        $"{text} is no figure that can be used.", "A slope is 1:n with a whole n of at least 1; a length is no finer than a micrometre.", Value: text);

    public static Diagnostic UnknownKey(Mark at, string key, string? nearest) => new("unknown-key", at,
        $"No parameter, circumstance or measure is called {key}.", Meant(nearest, "`list parameters` names them all."), Key: key);

    public static Diagnostic UnknownSlot(Mark at, string slot, string? nearest) => new("unknown-slot", at,
        $"There is no slot {slot}.", Meant(nearest, "A slot is named like the part it fills, such as wall.cavity."), Key: slot);

    public static Diagnostic UnknownWord(Mark at, string word, string left, IReadOnlyList<string> options, string? nearest) => new("unknown-word", at,
        $"{word} is nothing that {left} can be.", nearest is null ? $"It can be {string.Join(", ", options)}." : $"Did you mean {nearest}?", Key: left, Value: word);

    public static Diagnostic UnknownFunction(Mark at, string name) => new("unknown-function", at,
        $"There is no function {name} that is written so.",
        "There are has(slot), material(slot).kind, .id, .conductivity and .density, r-value(wall), r-value(roof), max(a, b) and min(a, b).", Value: name);

    public static Diagnostic KindsDiffer(Mark at, string left, Kind is1, string right, Kind is2) => new("kinds-differ", at,
        $"{left} is {is1.Name()} and {right} is {is2.Name()}; they cannot be set against each other.",
        $"Write {is1.Name()} such as {is1.Example()}.");

    public static Diagnostic NotComparable(Mark at, string what, Kind kind) => new("not-comparable", at,
        $"{what} is {kind.Name()}, which is neither more nor less than another.", "Use = or != or a list in square brackets.");

    public static Diagnostic NoArithmetic(Mark at, string operation, Kind left, Kind right) => new("no-arithmetic", at,
        $"{left.Name()} {operation} {right.Name()} means nothing.",
        "Like is added to like; a length may be multiplied by a number or a density, and divided by a number or a slope.");

    public static Diagnostic NotLinear(Mark at) => new("not-linear", at,
        "Two sizes that are both unknown cannot be multiplied or divided.", "Let one of the two be a figure, or a slope that divides.");

    public static Diagnostic WrongKind(Mark at, string text, Kind kind, Kind wanted) => new("wrong-kind", at,
        $"{text} is {kind.Name()}, but {wanted.Name()} is wanted here.", $"Write for example {wanted.Example()}.");

    public static Diagnostic MissingField(Mark at, string rule, string field) => new("missing-field", at,
        $"The rule {rule} has no {field}.", $"Add `{field}:`.", Key: field);

    public static Diagnostic UnknownField(Mark at, string field, string? nearest) => new("unknown-field", at,
        $"A rule has no field {field}.", Meant(nearest, "The fields of a rule are told in the README."), Key: field);

    public static Diagnostic BadWord(Mark at, string field, string word, IReadOnlyList<string> options) => new("bad-word", at,
        $"{field} cannot be {word}.", $"It is one of {string.Join(", ", options)}.", Key: field, Value: word);

    public static Diagnostic NotAList(Mark at) => new("not-a-list", at, "A rule pack is a list of rules.", "Begin each rule with `- id:`.");

    public static Diagnostic NotAText(Mark at, string field) => new("not-a-text", at, $"{field} must be a text.", "Write it on one line, in quotation marks where it holds a colon.", Key: field);

    public static Diagnostic TwiceNamed(Mark at, string id, Mark first) => new("duplicate-rule", at,
        $"The rule {id} stands at {first} already.", "Give it an id of its own, or leave one of the two out.", Key: id);

    public static Diagnostic WrongClass(Mark at, string rule, string reason) => new("wrong-class", at,
        $"The rule {rule} {reason}.", "An enforced rule has `require`, a rule to confirm has `confirm`, a dormant rule has `awaits`.", Key: rule);

    public static Diagnostic BadSimulate(Mark at, string text) => new("bad-simulate", at,
        $"{text} is nothing that a simulation says.", "Write one comparison such as junction.frsi >= 0.75 or junction.psi <= 0.1, with blanks around the sign.", Key: "simulate", Value: text);

    public static Diagnostic UnknownPack(Mark at, string pack, IEnumerable<string> known, string? nearest) => new("unknown-pack", at,
        $"There is no rule pack {pack}.", nearest is null ? $"There is {string.Join(", ", known)}." : $"Did you mean {nearest}?", Value: pack);

    public static Diagnostic UnknownRule(Mark at, string id, string? nearest) => new("unknown-rule", at,
        $"No rule is called {id}.", Meant(nearest, "`list rules` names them all."), Key: id);

    public static Diagnostic WaivedTwice(Mark at, string rule, string written, Mark first) => new("duplicate-key", at,
        $"The rule {rule} is waived twice; as {written} on line {first.Line} already.", "Take one of the two away.", Key: rule);

    public static Diagnostic KeyNeeds(Mark at, string key, string? when) => new("key-not-here", at,
        $"This detail has no {key} with the choices as they are.", when is null ? "Leave it out." : Needs(key, when), Key: key);

    /// <param name="here">The slot that the choices leave.</param>
    /// <param name="swapped">The author's material, in a slot of the same key that is not there.</param>
    public static Diagnostic MaterialNeeds(Mark at, Slot here, FilledSlot swapped) => new("wrong-material", at,
        $"With the choices as they are {here.Key} takes {Messages.List(here.Kinds)}; {swapped.Material.Id} is {swapped.Material.Kind}.",
        swapped.Slot.When is { } when ? Needs(swapped.Material.Id, when.Text) : Messages.SeeMaterials, here.Key, swapped.Material.Id);

    // What the construction has cannot be set; what is chosen can.
    private static string Needs(string key, string when)
    {
        var words = Subjects().Replace(when, "$1");
        return when.Contains("has(", StringComparison.Ordinal)
            ? $"It is there only where {Having().Replace(words, has => $"there is {(has.Groups[1].Success ? "no" : "a")} {has.Groups[2].Value}")}; leave {key} out, or take a construction where that is so."
            : $"It is there only where {words}; set that too, or leave {key} out.";
    }

    [GeneratedRegex(@"material\(([^)]*)\)(\.id)?")]
    private static partial Regex Subjects();

    [GeneratedRegex(@"(not )?has\(([^)]*)\)")]
    private static partial Regex Having();

    public static Diagnostic PackRing(Mark at, string pack) => new("pack-ring", at,
        $"The packs that {pack} extends come round to it again.", "Take `extends` out of one of them.", Key: "extends", Value: pack);

    public static Diagnostic NoHead(Mark at, string pack) => new("no-pack-head", at,
        $"The rule pack {pack} says nothing of itself.", "Put a pack.yaml with title, version and date beside its rules.", Value: pack);

    public static Diagnostic RelaxesWithoutReason(Mark at, string rule, Mark before) => new("relaxed-without-reason", at,
        $"The rule {rule} takes the place of the one at {before} and does not plainly ask as much.", "Add `relaxes:` with the reason, or ask at least as much.", Key: rule);

    public static Diagnostic RelaxesNothing(Mark at, string rule, string? nearest) => new("relaxes-nothing", at,
        $"The rule {rule} relaxes no rule of a pack that this one extends.", Meant(nearest, "Take `relaxes` away, or name the pack under `extends` in pack.yaml."), Key: rule);

    private static string Meant(string? nearest, string otherwise) => nearest is null ? otherwise : $"Did you mean {nearest}?";
}
