using DetailGen.Solver.Conflicts;

namespace DetailGen.Solver.Search;

/// <summary>From a model to its answer.</summary>
internal static class Solving
{
    /// <param name="asked">Between whose values ties are broken.</param>
    public static Answer Solve(Model model, IEnumerable<Variable> asked)
    {
        // most contradictions show at once, before any wish is looked at
        var hard = Unwished(model);
        hard.Reset();
        if (!hard.State.Propagate())
        {
            return Conflict(hard);
        }

        var optimizer = Compiled(model, asked);
        return Told(model, optimizer, optimizer.Run(Targets(model), model.Budget));
    }

    /// <summary>Whether the hard claims can hold together at all; null where the budget is spent.</summary>
    public static bool? CanHold(Model model) => Any(model, out _) switch
    {
        Found.Yes => true,
        Found.No => false,
        _ => null,
    };

    /// <summary>Some assignment with which the hard claims hold.</summary>
    private static Found Any(Model model, out long[] values)
    {
        var problem = Unwished(model);
        Targets(model).CopyTo(problem.Finder.Targets, 0);
        problem.Reset();
        values = new long[problem.State.VariableCount];
        return problem.Assign(values);
    }

    /// <param name="asked">Between whose values ties are broken.</param>
    public static Optimizer Compiled(Model model, IEnumerable<Variable> asked)
    {
        var byName = asked.ToArray();
        Array.Sort(byName, static (a, b) => string.CompareOrdinal(a.Name, b.Name));
        return new Optimizer(ProblemBuilder.Whole(model), byName);
    }

    public static Answer Told(Model model, Optimizer optimizer, Found found)
    {
        switch (found)
        {
            case Found.Yes:
                var values = new Values(optimizer.Best.AsSpan(0, model.Variables.Count));
                return new Answer.Best(values, Costs(model, values)) { Bindings = new Bindings(model, values) };
            case Found.No:
                return Conflict(Unwished(model));
            default:
                // among the wishes not even one assignment may have been found; without them, and with the shared sums, there may be one or the proof that there is none
                return optimizer.Best is { } best ? new Answer.NotProven(new Values(best.AsSpan(0, model.Variables.Count))) : Any(model, out var some) switch
                {
                    Found.Yes => new Answer.NotProven(new Values(some.AsSpan(0, model.Variables.Count))),
                    Found.No => Conflict(Unwished(model)),
                    _ => new Answer.NotProven(null),
                };
        }
    }

    /// <summary>Where each variable would like to stand: its wish of the highest rank that has one, else its least value.</summary>
    public static long[] Targets(Model model)
    {
        var targets = new long[model.Variables.Count];
        var wished = new bool[targets.Length];
        foreach (var variable in model.Variables)
        {
            targets[variable.Id] = variable.Domain.Low;
        }

        foreach (var level in model.Levels)
        {
            if (level is Level.Wished(_, var wishes))
            {
                foreach (var (variable, value) in wishes)
                {
                    if (!wished[variable.Id])
                    {
                        wished[variable.Id] = true;
                        targets[variable.Id] = variable.Domain.At(variable.Domain.NearestPlace(value));
                    }
                }
            }
        }

        return targets;
    }

    /// <summary>The hard claims alone, with the model's budget to spend on them.</summary>
    private static Problem Unwished(Model model)
    {
        var problem = ProblemBuilder.Hard(model);
        problem.Finder.Budget = model.Budget;
        return problem;
    }

    private static Answer Conflict(Problem problem)
    {
        var all = new bool[problem.Tags.Length];
        Array.Fill(all, true);
        if (MinimalConflict.Check(problem, all, null) != Found.No)
        {
            return new Answer.NotProven(null);
        }

        var members = new bool[all.Length];
        problem.CollectTags(members);
        var isMinimal = MinimalConflict.Shrink(problem, members);
        return new Answer.Conflict(MinimalConflict.Names(problem, members), isMinimal);
    }

    private static List<LevelCost> Costs(Model model, Values values)
    {
        var costs = new List<LevelCost>();
        foreach (var level in model.Levels)
        {
            costs.Add(level switch
            {
                Level.Wanted wanted => Cost(wanted, values),
                Level.Wished wished => new LevelCost(level.Name, [], wished.Wishes.Sum(wish => wish.Variable.Domain.Distance(values[wish.Variable], wish.Value))),
                Level.Least least => new LevelCost(level.Name, [], (long)least.Sum.At(values.ById)),
                _ => throw new System.Diagnostics.UnreachableException(),
            });
        }

        return costs;
    }

    private static LevelCost Cost(Level.Wanted level, Values values)
    {
        var broken = new List<string>();
        Int128 total = 0;
        foreach (var soft in level.Claims)
        {
            var shortfall = Normal.Shortfall(soft.Claim, values.ById);
            if (shortfall > 0)
            {
                broken.Add(soft.Tag);
                total += shortfall * soft.Weight;
            }
        }

        return new LevelCost(level.Name, broken, (long)total);
    }
}
