using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Says of each value why it is what it is.</summary>
internal sealed class Reasons(DetailProblem problem, Answer.Best best)
{
    private readonly Situation situation = problem.Situation;

    public static SolvedValue Of(Chosen choice) => new(
        choice.Parameter.Key, Setting.Choice(choice.Word), choice.Kind switch
        {
            "given" => new Why(WhyKind.Given, null, SolvingWords.Given),
            "preferred" => new Why(WhyKind.Preferred, null, SolvingWords.Preferred),
            _ => new Why(WhyKind.Default, null, SolvingWords.Usual),
        },
        choice.Parameter.Meaning, Derived: false);

    public static SolvedValue Of(Derived derived, SolvedFacts facts) => new(
        derived.Key, Setting.Of(SolvedFacts.Whole(facts.Find(derived.Key))), new Why(WhyKind.Equation, null, SolvingWords.Equation(facts.Case(derived)!)),
        derived.Meaning, Derived: true);

    public SolvedValue Of(Parameter parameter)
    {
        var unknown = problem.Unknowns[parameter.Key];
        var value = Setting.Numeric(parameter.Unit, best.Values[unknown]);
        return new SolvedValue(parameter.Key, value, Of(parameter, unknown, value), parameter.Meaning, Derived: false);
    }

    private Why Of(Parameter parameter, Variable unknown, Setting value)
    {
        if (situation.Preset.Set.FirstOrDefault(given => given.Key == parameter.Key) is { } given)
        {
            return new Why(WhyKind.Given, null, given.At.File == "--set" ? SolvingWords.GivenAtCommand : SolvingWords.Given);
        }

        var wished = problem.Wish(parameter.Key);
        if (wished == value.Number)
        {
            return situation.Preset.Prefer.Any(wish => wish.Key == parameter.Key)
                ? new Why(WhyKind.Preferred, null, SolvingWords.Preferred)
                : new Why(WhyKind.Default, null, SolvingWords.Usual);
        }

        var tags = best.Binding(unknown);
        return BindingRule(tags, parameter.Key) is { } rule
            ? new Why(WhyKind.Rule, rule.Id, SolvingWords.BoundBy(rule))
            : Bound(tags, "target:") is { } key
                ? new Why(WhyKind.Target, null, SolvingWords.Target(situation.Preset.Targets.First(target => target.Key == key)))
                : Bound(tags, "claim:") is { } claim
                    ? new Why(WhyKind.Equation, null, SolvingWords.Claim(Claims.First(one => one.Id == claim)))
                    : Unbound(parameter, unknown, value, wished);
    }

    // of several rules that bind together, the one that speaks of this very size says most
    private Rule? BindingRule(IReadOnlyList<string> tags, string key)
    {
        List<Rule> rules = [.. problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal))];
        return rules.Find(rule => rule.Require!.Keys().Contains(key, StringComparer.Ordinal)) ?? rules.FirstOrDefault();
    }

    private IEnumerable<Parameters.Claim> Claims => situation.Preset.Components.SelectMany(component => component.Claims);

    private Why Unbound(Parameter parameter, Variable unknown, Setting value, long? wished)
    {
        if (problem.StockOf(parameter) is { } stock && stock.Values.Contains(value.Number))
        {
            return new Why(WhyKind.Stock, null, SolvingWords.Sold(stock.Meaning));
        }

        return wished is { } usual && unknown.Domain.Count > 0
            ? new Why(WhyKind.Default, null, Near(parameter.Key, Setting.Numeric(parameter.Unit, usual).ToString()))
            : new Why(WhyKind.Default, null, SolvingWords.LeastThereIs);
    }

    private string Near(string key, string wished) =>
        situation.Preset.Prefer.Any(wish => wish.Key == key) ? SolvingWords.NearWished(wished) : SolvingWords.NearUsual(wished);

    private static string? Bound(IReadOnlyList<string> tags, string kind) =>
        tags.FirstOrDefault(tag => tag.StartsWith(kind, StringComparison.Ordinal)) is { } tag ? tag[kind.Length..] : null;
}
