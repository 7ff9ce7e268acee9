namespace DetailGen.Solver.Propagation;

/// <summary>
/// Which variables can still stand in each other's way, at the bounds of the state: those that a claim joins, and those joined to these. Whatever one part
/// does leaves the others all they had.
/// </summary>
internal sealed class Coupling
{
    private readonly State _state;
    private readonly int[] _parents;

    private Coupling(State state)
    {
        _state = state;
        _parents = new int[state.VariableCount];
        for (var i = 0; i < _parents.Length; i++)
        {
            _parents[i] = i;
        }
    }

    /// <summary>By the propagators in force.</summary>
    public static Coupling Of(State state)
    {
        var coupling = new Coupling(state);
        for (var i = 0; i < state.PropagatorCount; i++)
        {
            if (state.Enabled[i])
            {
                state.PropagatorAt(i).Couple(state, coupling);
            }
        }

        return coupling;
    }

    /// <summary>The part of a variable that is not fixed: its representative.</summary>
    public int PartOf(int variable)
    {
        while (_parents[variable] != variable)
        {
            variable = _parents[variable] = _parents[_parents[variable]];
        }

        return variable;
    }

    /// <summary>The unfixed ones among the first so many variables, part by part.</summary>
    public Dictionary<int, int[]> Parts(int first)
    {
        var lists = new Dictionary<int, List<int>>();
        for (var id = 0; id < first; id++)
        {
            if (!_state.IsFixed(id))
            {
                var part = PartOf(id);
                if (!lists.TryGetValue(part, out var list))
                {
                    lists[part] = list = [];
                }

                list.Add(id);
            }
        }

        var parts = new Dictionary<int, int[]>();
        foreach (var (part, list) in lists)
        {
            parts[part] = [.. list];
        }

        return parts;
    }

    /// <summary>Joins those of the variables that are not fixed.</summary>
    public void Join(ReadOnlySpan<int> variables)
    {
        var first = -1;
        foreach (var variable in variables)
        {
            first = Join(first, variable);
        }
    }

    /// <summary>Joins a variable, where it is not fixed, to an earlier one (-1: none yet).</summary>
    /// <returns>The one to join the next to.</returns>
    public int Join(int to, int variable)
    {
        if (_state.IsFixed(variable))
        {
            return to;
        }

        if (to >= 0)
        {
            _parents[PartOf(variable)] = PartOf(to);
        }

        return variable;
    }
}
