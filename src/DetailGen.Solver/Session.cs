using DetailGen.Solver.Search;

namespace DetailGen.Solver;

/// <summary>
/// A model that is asked again and again while its given values move, as under a slider. The claims are prepared once, and each search sets out from the last
/// best assignment. The answers are those of the model with these values: an optimum is one assignment, from wherever it is looked for. Only a spent budget may tell them apart.
/// </summary>
public sealed class Session
{
    private readonly Model _model;
    private readonly Optimizer _optimizer;
    private readonly SortedDictionary<string, long> _values = new(StringComparer.Ordinal);
    private long[] _last;

    internal Session(Model model)
    {
        _model = model;
        _optimizer = Solving.Compiled(model.Released(_ => true, model.Levels), model.Variables);
        _last = Solving.Targets(model);
        foreach (var given in model.Givens)
        {
            _values[given.Tag] = given.Value;
        }
    }

    /// <summary>Gives another value, and solves.</summary>
    /// <param name="tag">Of a given of the model.</param>
    /// <exception cref="KeyNotFoundException">There is no such given.</exception>
    public Answer Move(string tag, long value)
    {
        _ = _values[tag];
        _values[tag] = value;
        var supposed = new (int, long)[_model.Givens.Count];
        for (var i = 0; i < supposed.Length; i++)
        {
            supposed[i] = (_model.Givens[i].Variable.Id, _values[_model.Givens[i].Tag]);
        }

        var found = _optimizer.Run(_last, _model.Budget, supposed);
        if (found == Found.Yes)
        {
            _last = _optimizer.Best!.AsSpan(0, _last.Length).ToArray();
        }

        return Solving.Told(_model.Moved(_values), _optimizer, found);
    }
}
