using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>What a size can be while all that is hard holds.</summary>
/// <param name="Step">In the unit of the values; null for listed sizes.</param>
/// <param name="Values">Rising, apart; micrometres, n or counts; for listed sizes each pair is one value.</param>
/// <param name="Proven">False where the search was cut short: then the values are the whole domain, and nothing is said of stops.</param>
/// <param name="LowStops">What forbids the next smaller value: rule ids, domain, stock, given.KEY, target.KEY or names of claims.</param>
public sealed record SizeRange(
    string Key, Unit Unit, long? Step, IReadOnlyList<(long Low, long High)> Values, IReadOnlyList<string> LowStops, IReadOnlyList<string> HighStops,
    bool Proven = true);

internal static class FeasibleSizes
{
    public static IReadOnlyList<SizeRange>? Of(DetailProblem problem, IReadOnlyList<string>? keys = null)
    {
        if (problem.Model.Solve() is not Answer.Best)
        {
            return null;
        }

        List<Parameter> free = [.. problem.Situation.Sizes.Where(parameter => problem.Situation.Preset.Set.All(given => given.Key != parameter.Key)
            && (keys?.Contains(parameter.Key, StringComparer.Ordinal) ?? true))];
        try
        {
            var ranges = problem.Model.Ranges([.. free.Select(parameter => problem.Unknowns[parameter.Key])]);
            return [.. free.Zip(ranges, Told)];
        }
        catch (InvalidOperationException)
        {
            // some size costs too much to prove; the others need not suffer for it
            return [.. free.Select(parameter => Alone(problem, parameter))];
        }
    }

    private static SizeRange Alone(DetailProblem problem, Parameter parameter)
    {
        var unknown = problem.Unknowns[parameter.Key];
        try
        {
            return Told(parameter, problem.Model.Ranges(unknown)[0]);
        }
        catch (InvalidOperationException)
        {
            return new SizeRange(parameter.Key, parameter.Unit, null, [(unknown.Domain.Low, unknown.Domain.High)], [], [], Proven: false);
        }
    }

    private static SizeRange Told(Parameter parameter, FeasibleRange range) => new(
        parameter.Key, parameter.Unit, range.Variable.Domain.IsListed ? null : range.Step, range.Values,
        Stops(parameter, range.Lowest), Stops(parameter, range.Highest));

    private static List<string> Stops(Parameter parameter, IReadOnlyList<string> tags)
    {
        if (tags.Count == 0)
        {
            return ["domain"];
        }

        return [.. tags.Select(tag => tag.Split(':', 2) switch
        {
            ["domain", _] => "domain",
            ["stock", var key] => key == parameter.Key ? "stock" : "stock." + key,
            ["rule" or "claim", var id] => id,
            [var kind, var id] => $"{kind}.{id}",
            _ => tag,
        }).Distinct(StringComparer.Ordinal)];
    }
}
