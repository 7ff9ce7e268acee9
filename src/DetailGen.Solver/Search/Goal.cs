using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>The share that one part has in an objective.</summary>
/// <param name="Cost">The variable that is at least the sum.</param>
/// <param name="Grain">All values of the sum differ by multiples of this.</param>
/// <param name="Wishes">As in <see cref="Objective"/>.</param>
/// <param name="Part">The variables of the model that the sum hangs on.</param>
internal sealed record Goal(Row Sum, int Cost, long Grain, (int Id, long Place)[]? Wishes, int[] Part)
{
    /// <summary>By the parts at the bounds of the state, in order of their first terms. What is settled already has no goal.</summary>
    public static List<Goal> Of(Objective objective, Problem problem)
    {
        var coupling = Coupling.Of(problem.State);
        var parts = coupling.Parts(problem.Variables);
        var shares = new Dictionary<int, List<int>>();
        var order = new List<int>();
        for (var term = 0; term < objective.Sum.Variables.Length; term++)
        {
            var id = objective.Sum.Variables[term];
            if (!problem.State.IsFixed(id))
            {
                var part = coupling.PartOf(id);
                if (!shares.TryGetValue(part, out var share))
                {
                    shares[part] = share = [];
                    order.Add(part);
                }

                share.Add(term);
            }
        }

        return order.ConvertAll(part => Of(objective.Sum, objective.Wishes, shares[part], parts.GetValueOrDefault(part, []), problem.State));
    }

    /// <summary>Some of the terms of this goal.</summary>
    public Goal Some(List<int> terms, State state) => Of(Sum, Wishes, terms, Part, state);

    private static Goal Of(Row whole, (int Id, long Place)[]? all, List<int> share, int[] part, State state)
    {
        int[] variables = [.. share.ConvertAll(term => whole.Variables[term])];
        long[] factors = [.. share.ConvertAll(term => whole.Factors[term])];
        var sum = new Row(variables, factors, 0);
        long grain = 0;
        for (var i = 0; i < variables.Length; i++)
        {
            grain = Arithmetic.Gcd(grain, factors[i] * state.StepOf(variables[i]));
        }

        (int, long)[]? wishes = all is null ? null : [.. share.ConvertAll(term => all[term])];
        if (variables.Length == 1 && factors[0] == 1)
        {
            return new Goal(sum, variables[0], grain, wishes, part);
        }

        var cost = state.Add(Domain.OfCost(sum.Least(state), sum.Most(state), grain));
        state.Add(new AtMostRow(new Row([.. variables, cost], [.. factors, -1], 0)));
        return new Goal(sum, cost, grain, wishes, part);
    }
}
