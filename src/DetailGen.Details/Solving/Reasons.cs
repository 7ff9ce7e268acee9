using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>Says of each value why it is what it is.</summary>
internal sealed class Reasons(DetailProblem problem, Answer.Best best, SolvedFacts facts)
{
    private readonly Situation _situation = problem.Situation;

    internal static Why Wished { get; } = new(WhyKind.Preferred, null, SolvingWords.Preferred);

    internal static Why Usual { get; } = new(WhyKind.Default, null, SolvingWords.Usual);

    internal static Why Of(Given given) => new(WhyKind.Given, null, given.At.File == Overrides.File ? SolvingWords.GivenAtCommand : SolvingWords.Given);

    public static SolvedValue Of(Chosen choice) => new(choice.Parameter.Key, Setting.Choice(choice.Word), choice.Why, choice.Parameter.Meaning, Derived: false);

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
        if (_situation.Preset.Set.FirstOrDefault(given => given.Key == parameter.Key) is { } given)
        {
            return Of(given);
        }

        var wished = problem.Wish(parameter.Key);
        if (wished == value.Number)
        {
            return _situation.Preset.Prefer.Any(wish => wish.Key == parameter.Key)
                ? Wished
                : Usual;
        }

        return Bound(best.Binding(unknown), parameter.Key) ?? Unbound(parameter, unknown, value, wished);
    }

    /// <summary>Of all that binds together what speaks of this very size says most: a rule, a target, then geometry; else what only stands behind that.</summary>
    private Why? Bound(IReadOnlyList<string> tags, string key)
    {
        List<Rule> rules = [.. problem.Rules.Where(rule => tags.Contains("rule:" + rule.Id, StringComparer.Ordinal))];
        List<Parameters.Claim> claims =
        [
            .. _situation.Preset.Components.SelectMany(component => component.Claims).Where(claim => tags.Contains("claim:" + claim.Id, StringComparer.Ordinal) && Holds(claim.When))
                .OrderBy(claim => claim.Id, StringComparer.Ordinal),
        ];
        return Speaking(rules, rule => rule.Require!, key) is { } rule ? By(rule)
            : _situation.Preset.Targets.FirstOrDefault(target => tags.Contains("target:" + target.Key, StringComparer.Ordinal)) is { } target ? new Why(WhyKind.Target, null, SolvingWords.Target(target))
            : Speaking(claims, claim => _situation.Catalogue.Tree(claim.Require), key) is { } claim ? By(claim)
            : rules.Count > 0 ? By(rules[0])
            : claims.Count > 0 ? By(claims[0])
            : null;
    }

    private static Why By(Rule rule) => new(WhyKind.Rule, rule.Id, SolvingWords.BoundBy(rule));

    private static Why By(Parameters.Claim claim) => new(WhyKind.Equation, null, SolvingWords.Claim(claim));

    private bool Holds(Written? when) => when is null || _situation.Catalogue.Tree(when).In(facts).Holds;

    /// <summary>The first that names the size itself, else the first that names something which is worked out from it.</summary>
    private T? Speaking<T>(List<T> of, Func<T, Expression> says, string key)
        where T : class =>
        of.Find(one => says(one).Keys().Contains(key, StringComparer.Ordinal)) ?? of.Find(one => Reaches(says(one), key));

    private bool Reaches(Expression expression, string key) => expression.All().OfType<Key>().Any(named =>
        named.Name == key
        || (named.Kind is Kind.UValue or Kind.RValue && key.StartsWith(named.Name[..(named.Name.IndexOf('.', StringComparison.Ordinal) + 1)], StringComparison.Ordinal))
        || (_situation.DerivedOf(named.Name) is { } derived && facts.Case(derived) is { } equation && Reaches(equation, key)));

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
        _situation.Preset.Prefer.Any(wish => wish.Key == key) ? SolvingWords.NearWished(wished) : SolvingWords.NearUsual(wished);
}
