using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>What a size can be while all that is hard holds.</summary>
/// <param name="Step">In the unit of the values; null for listed sizes.</param>
/// <param name="Values">Rising, apart; micrometres, n or counts; for listed sizes each pair is one value.</param>
/// <param name="Proven">False where the search was cut short: then the only value is one that can be had, or the whole domain where none is known, and nothing is said of stops.</param>
/// <param name="LowStops">What forbids the next smaller value, as in a contradiction; of the size itself the domain and the stock go by <c>domain</c> and <c>stock</c>.</param>
public sealed record SizeRange(
    string Key, Unit Unit, long? Step, IReadOnlyList<(long Low, long High)> Values, IReadOnlyList<Member> LowStops, IReadOnlyList<Member> HighStops,
    bool Proven = true);

/// <summary>Asks the solver how far each size can go.</summary>
internal static class FeasibleSizes
{
    /// <param name="keys">Of the sizes asked for; null for all. Those that are set are left out.</param>
    /// <returns>Null where no sizes hold together.</returns>
    public static IReadOnlyList<SizeRange>? Of(DetailProblem problem, IReadOnlyList<string>? keys = null)
    {
        List<Parameter> free = [.. problem.Situation.Sizes.Where(parameter => problem.Situation.Preset.Set.All(given => given.Key != parameter.Key)
            && (keys?.Contains(parameter.Key, StringComparer.Ordinal) ?? true))];
        var members = new Members(problem);
        if (problem.Model.Ranges([.. free.Select(parameter => problem.Unknowns[parameter.Key])]) is { } ranges)
        {
            return [.. free.Zip(ranges, (parameter, range) => Told(parameter, range, members))];
        }

        // There is none; or it cannot be told whether there is; or some size costs too much to prove, for which the others need not suffer.
        return problem.Model.CanHold() switch
        {
            false => null,
            null => [.. free.Select(parameter => Unproven(problem, parameter))],
            true => [.. free.Select(parameter => Alone(problem, parameter, members))],
        };
    }

    private static SizeRange Alone(DetailProblem problem, Parameter parameter, Members members) =>
        problem.Model.Ranges(problem.Unknowns[parameter.Key]) is [var range] ? Told(parameter, range, members) : Unproven(problem, parameter);

    private static SizeRange Unproven(DetailProblem problem, Parameter parameter)
    {
        var unknown = problem.Unknowns[parameter.Key];
        var domain = unknown.Domain;
        var known = problem.Model.Solve() switch { Answer.Best best => best.Values, Answer.NotProven some => some.Feasible, _ => null };
        return new SizeRange(
            parameter.Key, parameter.Unit, domain.IsListed ? null : domain.Step, [known is null ? (domain.Low, domain.High) : (known[unknown], known[unknown])], [], [], Proven: false);
    }

    private static SizeRange Told(Parameter parameter, FeasibleRange range, Members members) => new(
        parameter.Key, parameter.Unit, range.Variable.Domain.IsListed ? null : range.Step, range.Values,
        Stops(parameter, range.Lowest, members), Stops(parameter, range.Highest, members));

    // a domain without a tag always stands
    internal static IReadOnlyList<Member> Stops(Parameter parameter, IReadOnlyList<string> tags, Members members) =>
        [.. members.Of(tags.Count == 0 ? ["domain:" + parameter.Key] : tags).Select(member => member.Kind switch
        {
            MemberKind.Domain when member.Id == "domain." + parameter.Key => member with { Id = "domain" },
            MemberKind.Stock when member.Id == "stock." + parameter.Key => member with { Id = "stock" },
            _ => member,
        })];
}
