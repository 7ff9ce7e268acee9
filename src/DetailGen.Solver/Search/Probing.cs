using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>
/// Tries each value of the variables that have few, and keeps what all that survive have in common. So claims that only hold case by case
/// ("where the fall is 1:40, at least …") still bound what they are about before a case is chosen.
/// </summary>
internal sealed class Probing(State state)
{
    private const int MostValues = 8;
    private long[] _lows = [];
    private long[] _highs = [];

    /// <summary>Narrows the bounds of level 0, which are propagated already; false where nothing survives.</summary>
    public bool Run(int[] part)
    {
        if (_lows.Length < state.VariableCount)
        {
            (_lows, _highs) = (new long[state.VariableCount], new long[state.VariableCount]);
        }

        foreach (var id in part)
        {
            if (!state.IsFixed(id) && Places(id) <= MostValues && !Probe(id))
            {
                return false;
            }
        }

        return true;
    }

    private long Places(int id) => state.Domains[id].PlaceAtMost(state.Highs[id]) - state.Domains[id].PlaceAtMost(state.Lows[id]) + 1;

    private bool Probe(int id)
    {
        Array.Fill(_lows, long.MaxValue);
        Array.Fill(_highs, long.MinValue);
        var domain = state.Domains[id];
        var first = domain.PlaceAtMost(state.Lows[id]);
        var last = domain.PlaceAtMost(state.Highs[id]);
        for (var place = first; place <= last; place++)
        {
            var value = domain.At(place);
            state.Push();
            var survives = state.AtLeast(id, value, State.Supposed) && state.AtMost(id, value, State.Supposed) && state.Propagate();
            if (survives)
            {
                Join();
            }

            state.PopTo(state.Level - 1);
            if (state.Steps >= state.StepLimit)
            {
                return true; // unfinished: nothing may be concluded
            }
        }

        for (var i = 0; i < state.VariableCount; i++)
        {
            if (!state.AtLeast(i, _lows[i], State.Supposed) || !state.AtMost(i, _highs[i], State.Supposed))
            {
                return false;
            }
        }

        return state.Propagate();
    }

    private void Join()
    {
        for (var i = 0; i < state.VariableCount; i++)
        {
            _lows[i] = Math.Min(_lows[i], state.Lows[i]);
            _highs[i] = Math.Max(_highs[i], state.Highs[i]);
        }
    }
}
