using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>The share that one part has in an objective, or some terms of that.</summary>
/// <param name="Objective">What the terms are of.</param>
/// <param name="Terms">Their places in the objective, in order.</param>
/// <param name="Part">The variables of the model that the sum hangs on.</param>
/// <param name="Sum">Of the terms.</param>
/// <param name="Cost">The variable that is at least the sum.</param>
/// <param name="Grain">All values of the sum differ by multiples of this.</param>
internal sealed record Goal(Objective Objective, int[] Terms, int[] Part, Row Sum, int Cost, long Grain)
{
    /// <summary>As in <see cref="Objective"/>, for these terms.</summary>
    public (int Id, long Place)[]? Wishes => Objective.Wishes is { } all ? Array.ConvertAll(Terms, term => all[term]) : null;

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

        return order.ConvertAll(part => Of(objective, [.. shares[part]], parts.GetValueOrDefault(part, []), problem.State));
    }

    /// <summary>Each term by itself; none where the terms do not count alike.</summary>
    public List<Goal> Shares(State state) =>
        Array.TrueForAll(Sum.Factors, factor => factor == 1) ? [.. Array.ConvertAll(Terms, term => Of(Objective, [term], Part, state))] : [];

    /// <summary>Shares of one goal together.</summary>
    public static Goal Joined(List<Goal> shares, State state)
    {
        var terms = new List<int>();
        shares.ForEach(share => terms.AddRange(share.Terms));
        terms.Sort();
        return shares.Count == 1 ? shares[0] : Of(shares[0].Objective, [.. terms], shares[0].Part, state);
    }

    private static Goal Of(Objective objective, int[] terms, int[] part, State state)
    {
        var variables = Array.ConvertAll(terms, term => objective.Sum.Variables[term]);
        var factors = Array.ConvertAll(terms, term => objective.Sum.Factors[term]);
        var sum = new Row(variables, factors, 0);
        long grain = 0;
        for (var i = 0; i < variables.Length; i++)
        {
            grain = Arithmetic.Gcd(grain, factors[i] * state.StepOf(variables[i]));
        }

        if (variables.Length == 1 && factors[0] == 1)
        {
            return new Goal(objective, terms, part, sum, variables[0], grain);
        }

        var cost = state.Add(Domain.OfCost(sum.Least(state), sum.Most(state), grain));
        state.Add(new AtMostRow(new Row([.. variables, cost], [.. factors, -1], 0)));
        return new Goal(objective, terms, part, sum, cost, grain);
    }
}
