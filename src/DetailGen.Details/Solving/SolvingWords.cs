using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;

namespace DetailGen.Details.Solving;

/// <summary>What is said of values, verdicts and contradictions, in trade words.</summary>
internal static class SolvingWords
{
    public static string Given => "Fixed by the author.";

    public static string GivenAtCommand => "Fixed on the command line.";

    public static string Preferred => "Wished for by the author.";

    public static string Usual => "The usual value.";

    public static string NearUsual(string usual) => $"The nearest to the usual {usual} that can be had.";

    public static string LeastThereIs => "The least that works; no rule asks for more.";

    public static string Sold(string meaning) => $"A size that is sold: {Small(Bare(meaning))}.";

    public static string Equation(Expression equation) => $"Follows from {equation}.";

    public static string Claim(Parameters.Claim claim) => $"{Bare(claim.Reason)} ({claim.Id}).";

    public static string BoundBy(Rule rule) => $"{Bare(rule.Text)} ({rule.Id}; {rule.SourceText}).";

    public static string Target(Target target) => $"Needed for {target.Key} at most {Printing.Amount(target.Value, Kind.UValue)}.";

    public static string Waived(Rule rule, Waiver waiver) => $"{Bare(rule.Text)}: waived{(waiver.By is { } by ? " by " + by : "")}, {Bare(waiver.Reason)}{(waiver.Reference is { } reference ? $" ({reference})" : "")}.{(rule.Ask is { } whom ? $" Ask {whom}." : "")}";

    public static string GivenMember(string meaning, string value, string key) => $"{Bare(meaning)} is fixed at {value} [given.{key}]";

    public static string MaterialMember(string name, string material, string slot) => $"{Bare(name)} is to be {material} [given.{slot}]";

    public static string TargetMember(Target target) => $"{(target.Key.StartsWith("roof", StringComparison.Ordinal) ? "The roof" : "The wall")} is to reach {Printing.Amount(target.Value, Kind.UValue)} or better [target.{target.Key}]";

    public static string RuleMember(Rule rule) => $"{Bare(rule.Text)}, {rule.SourceText} [{rule.Id}]";

    public static string ClaimMember(Parameters.Claim claim) => $"{Bare(claim.Reason)} [{claim.Id}]";

    public static string DomainMember(Parameter parameter, string from, string to) => $"{Bare(parameter.Meaning)} can only be {from} to {to} [domain.{parameter.Key}]";

    public static string StockMember(Parameter parameter, string sizes) => $"{Bare(parameter.Meaning)} is sold in {sizes} [stock.{parameter.Key}]";

    public static string SetTo(string key, string value) => $"Set {key} to {value}.";

    public static string SetAll(IEnumerable<ProposedValue> values) => $"Change together: {string.Join(", ", values.Select(value => $"{value.Key} to {value.Value}"))}.";

    public static string LoosenTarget(string key, string value) => $"Ask for {key} {value}, the best that the rest allows.";

    public static string SwapMaterial(string slot, string material) => $"Make {slot} of {material}.";

    public static string BrokenWish(Rule rule, Verdict verdict) =>
        $"{rule.Id}: {Bare(rule.Text)}{(verdict.Left is null ? "" : $" (here {verdict.Left.Text}, wanted {verdict.Op} {verdict.Right!.Text})")}; {Confidence(rule)}.";

    public static string Unproven(string target) => $"{target} needs the heat through the junction and is still to be confirmed.";

    public static string NotTheBest => "These sizes keep every hard rule, but the search ended before it was proven that none are nearer to the usual ones.";

    public static string Bridged(string element, IEnumerable<string> slots) =>
        $"{element}.u-value counts what lies between in {string.Join(", ", slots)}; the bridging is not in it.";

    public static string AfterSolving(string rule) => $"{rule} cannot be told to the solver and was checked afterwards only.";

    private static string Confidence(Rule rule) => rule.Source.Confidence switch
    {
        "memory" => "from memory, check the source",
        "common-practice" => "common practice",
        _ => rule.Source.ReadKind is "trade" or "weak" ? $"read in a {rule.Source.ReadKind} text" : rule.SourceText,
    };

    private static string Bare(string sentence) => sentence.TrimEnd('.', ' ');

    private static string Small(string sentence) => sentence.Length == 0 ? sentence : char.ToLowerInvariant(sentence[0]) + sentence[1..];
}
