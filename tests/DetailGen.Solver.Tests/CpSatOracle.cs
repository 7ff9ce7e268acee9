using DetailGen.Solver.Search;
using Google.OrTools.Sat;

namespace DetailGen.Solver.Tests;

/// <summary>The same model for CP-SAT, met level by level.</summary>
internal static class CpSatOracle
{
    // Resistances of layers are summed up with large factors, so a target can be missed by much; the sums of a level still fit 64 bits.
    private const long MostMissing = 1_000_000_000_000_000;

    /// <summary>The least costs in order of rank (a wanted level has two: broken, then shortfall); null where nothing is feasible. They end before the first
    /// that it could not prove within its limit.</summary>
    public static IReadOnlyList<long>? Costs(Model model)
    {
        var cp = new CpModel();
        var values = new List<IntVar>();
        var places = new List<IntVar>();
        foreach (var variable in model.Variables)
        {
            var domain = variable.Domain;
            var value = cp.NewIntVar(domain.Low, domain.High, variable.Name);
            var place = cp.NewIntVar(0, domain.Count - 1, variable.Name + ".place");
            if (domain.IsListed)
            {
                cp.AddElement(place, Enumerable.Range(0, (int)domain.Count).Select(k => domain.At(k)), value);
            }
            else
            {
                cp.Add(value == domain.Low + domain.Step * place);
            }

            values.Add(value);
            places.Add(place);
        }

        foreach (var (_, claim) in model.Hard)
        {
            Post(claim, null, null);
        }

        var costs = new List<LinearExpr>();
        foreach (var level in model.Levels)
        {
            switch (level)
            {
                case Level.Wanted(_, var claims):
                    var broken = new List<ILiteral>();
                    var missing = new List<IntVar>();
                    foreach (var soft in claims)
                    {
                        var flag = cp.NewBoolVar("broken");
                        var amount = cp.NewIntVar(0, MostMissing, "missing");
                        Post(soft.Claim, flag, null);
                        Post(soft.Claim, null, amount);
                        broken.Add(flag);
                        missing.Add(amount);
                    }

                    costs.Add(LinearExpr.Sum(broken));
                    costs.Add(LinearExpr.WeightedSum(missing, claims.Select(soft => soft.Weight)));
                    break;
                case Level.Wished(_, var wishes):
                    var distances = new List<IntVar>();
                    foreach (var wish in wishes)
                    {
                        var distance = cp.NewIntVar(0, wish.Variable.Domain.Count, "distance");
                        cp.AddAbsEquality(distance, places[wish.Variable.Id] - wish.Variable.Domain.NearestPlace(wish.Value));
                        distances.Add(distance);
                    }

                    costs.Add(LinearExpr.Sum(distances));
                    break;
                case Level.Least(_, var sum):
                    costs.Add(Of(sum));
                    break;
            }
        }

        var found = new List<long>();
        foreach (var cost in costs.DefaultIfEmpty(LinearExpr.Constant(0)))
        {
            cp.Minimize(cost);
            using var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1,max_deterministic_time:60" };
            var status = solver.Solve(cp);
            if (status == CpSolverStatus.Infeasible)
            {
                // What it found at the level before holds here too: where it says otherwise it contradicts itself, and proves no more.
                return found.Count == 0 ? null : found;
            }

            if (status is CpSolverStatus.Unknown or CpSolverStatus.Feasible)
            {
                return found;
            }

            if (status != CpSolverStatus.Optimal)
            {
                throw new InvalidOperationException($"CP-SAT says {status}.");
            }

            found.Add((long)Math.Round(solver.ObjectiveValue));
            cp.Add(cost <= found[^1]);
        }

        return costs.Count == 0 ? [] : found;

        LinearExpr Of(Linear sum)
        {
            var expression = LinearExpr.NewBuilder().Add(sum.Constant);
            foreach (var term in sum.Terms)
            {
                expression.AddTerm(values[term.Variable.Id], term.Factor);
            }

            return expression;
        }

        void Post(Claim claim, BoolVar? broken, IntVar? missing)
        {
            var form = Normal.Form(claim);
            var choices = new List<ILiteral>();
            foreach (var rows in form)
            {
                var choice = cp.NewBoolVar("alternative");
                choices.Add(choice);
                foreach (var row in rows)
                {
                    cp.Add(missing is null ? Of(row) <= 0 : Of(row) <= missing).OnlyEnforceIf(choice);
                }
            }

            if (broken is not null)
            {
                choices.Add(broken);
            }

            cp.AddBoolOr(choices);
        }
    }
}
