using DetailGen.Solver.Search;

namespace DetailGen.Solver.Conflicts;

/// <summary>Shrinks a contradiction until no member can be spared, by trying to do without each.</summary>
internal static class MinimalConflict
{
    /// <summary>Steps that may be spent on doing without one member; where that does not settle it, the member stays.</summary>
    private const long Effort = 1_000_000;

    /// <summary>Narrows a contradiction, given a start that may hold too much.</summary>
    /// <param name="suppose">Bounds to add after each reset; false where they already fail.</param>
    /// <param name="members">Tags that contradict each other; taken over as the result.</param>
    /// <returns>False where some member may be one that could be spared.</returns>
    public static bool Shrink(Problem problem, bool[] members, Func<bool>? suppose = null)
    {
        var isMinimal = true;
        for (var tag = 0; tag < members.Length; tag++)
        {
            if (!members[tag])
            {
                continue;
            }

            members[tag] = false;
            var limit = problem.State.StepLimit;
            problem.State.StepLimit = Math.Min(limit, problem.State.Steps + Effort);
            var found = Check(problem, members, suppose);
            problem.State.StepLimit = limit;
            if (found != Found.No)
            {
                members[tag] = true;
                isMinimal &= found == Found.Yes;
                continue;
            }

            var used = new bool[members.Length];
            problem.CollectTags(used);
            for (var i = 0; i < used.Length; i++)
            {
                members[i] &= used[i];
            }
        }

        return isMinimal;
    }

    /// <summary>Whether the tags in force, with the suppositions, can hold together.</summary>
    public static Found Check(Problem problem, bool[]? enabled, Func<bool>? suppose)
    {
        problem.Reset(enabled);
        if (suppose is not null && !suppose())
        {
            problem.Finder.Tracer.Clear();
            problem.Finder.Tracer.TraceAll();
            return Found.No;
        }

        return problem.Finder.Run();
    }

    /// <summary>Names in ordinal order.</summary>
    public static IReadOnlyList<string> Names(Problem problem, bool[] members)
    {
        var names = new List<string>();
        for (var i = 0; i < members.Length; i++)
        {
            if (members[i])
            {
                names.Add(problem.Tags[i]);
            }
        }

        names.Sort(StringComparer.Ordinal);
        return names;
    }
}
