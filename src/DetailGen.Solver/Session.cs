using DetailGen.Solver.Search;

namespace DetailGen.Solver;

/// <summary>
/// A model that is asked again and again while its given values move, as under a slider. The claims are prepared once, and each search sets out from the last
/// best assignment. The answers are those of the model with these values: an optimum is one assignment, from wherever it is looked for. Only a spent budget may tell them apart.
/// </summary>
public sealed class Session
{
    private readonly Model model;
    private readonly Optimizer optimizer;
    private readonly SortedDictionary<string, long> values = new(StringComparer.Ordinal);
    private long[] last;

    internal Session(Model model)
    {
        this.model = model;
        optimizer = Solving.Compiled(model.Released(_ => true, model.Levels));
        last = Solving.Targets(model);
        foreach (var given in model.Givens)
        {
            values[given.Tag] = given.Value;
        }
    }

    /// <summary>Gives another value, and solves.</summary>
    /// <param name="tag">Of a given of the model.</param>
    /// <exception cref="KeyNotFoundException">There is no such given.</exception>
    public Answer Move(string tag, long value)
    {
        _ = values[tag];
        values[tag] = value;
        var supposed = new (int, long)[model.Givens.Count];
        for (var i = 0; i < supposed.Length; i++)
        {
            supposed[i] = (model.Givens[i].Variable.Id, values[model.Givens[i].Tag]);
        }

        var found = optimizer.Run(last, model.Budget, supposed);
        if (found == Found.Yes)
        {
            last = optimizer.Best!.AsSpan(0, last.Length).ToArray();
        }

        return Solving.Told(model.Moved(values), optimizer, found);
    }
}
