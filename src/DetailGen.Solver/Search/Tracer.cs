using DetailGen.Solver.Propagation;

namespace DetailGen.Solver.Search;

/// <summary>Walks the trail back from a failure to the decisions and the propagators it rests on.</summary>
internal sealed class Tracer(State state, int variables)
{
    private const int FlipBase = 1 << 28;
    private readonly Needed needed = new(variables);
    private readonly List<int[]> flips = [];
    private readonly List<int> flipLevel = [];
    private bool[] levels = new bool[64];
    private int deepest;

    /// <summary>Propagators that the refutation used since <see cref="Clear"/>.</summary>
    public bool[] Propagators { get; } = new bool[state.PropagatorCount];

    /// <summary>Variables whose domain the refutation used since <see cref="Clear"/>.</summary>
    public bool[] Domains { get; } = new bool[variables];

    public static int Decision(int level) => -1 - level;

    public void Clear()
    {
        Array.Clear(Propagators);
        Array.Clear(Domains);
        flips.Clear();
        flipLevel.Clear();
    }

    public int Deepest() => deepest;

    /// <summary>Stores the decisions to blame but for one, as the reason of that one's opposite.</summary>
    public int Keep(int except)
    {
        while (flipLevel.Count > 0 && flipLevel[^1] > state.Level)
        {
            flips.RemoveAt(flips.Count - 1);
            flipLevel.RemoveAt(flipLevel.Count - 1);
        }

        var count = 0;
        for (var level = 1; level < except; level++)
        {
            count += levels[level] ? 1 : 0;
        }

        var kept = new int[count];
        for (int level = 1, at = 0; level < except; level++)
        {
            if (levels[level])
            {
                kept[at++] = level;
            }
        }

        flips.Add(kept);
        flipLevel.Add(state.Level);
        return FlipBase + flips.Count - 1;
    }

    /// <summary>Traces the failure the state has just met. Decisions at or below the root level are the caller's and not followed.</summary>
    public void Trace(int root)
    {
        if (levels.Length <= state.Level)
        {
            Array.Resize(ref levels, state.Level * 2 + 1);
        }

        Array.Clear(levels);
        needed.Clear();
        deepest = 0;
        if (state.FailedVariable >= 0)
        {
            needed.Both(state.FailedVariable);
            Domains[state.FailedVariable] = true;
        }

        Expand(state.FailedReason, -1, root);
        for (var i = state.TrailCount - 1; i >= 0; i--)
        {
            ref readonly var change = ref state.TrailAt(i);
            if (needed.Take(change.Variable, change.IsLow))
            {
                Domains[change.Variable] = true;
                Expand(change.Reason, change.Variable, root);
            }
        }

        for (var i = 0; i < variables; i++)
        {
            Domains[i] |= needed.Any(i);
        }
    }

    private void Expand(int reason, int variable, int root)
    {
        if (reason >= FlipBase)
        {
            foreach (var level in flips[reason - FlipBase])
            {
                Blame(level, root);
            }
        }
        else if (reason >= 0)
        {
            Propagators[reason] = true;
            state.PropagatorAt(reason).Explain(variable, needed);
        }
        else if (reason < State.Supposed)
        {
            Blame(-1 - reason, root);
        }
    }

    private void Blame(int level, int root)
    {
        if (level > root)
        {
            levels[level] = true;
            deepest = Math.Max(deepest, level);
        }
    }
}
