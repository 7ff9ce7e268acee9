using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>What clashes, and what would end it.</summary>
internal static class Contradictions
{
    /// <summary>How many conflicts are told.</summary>
    private const int Most = 5;

    /// <param name="known">For when the search for the smallest conflicts is cut short before it finds any.</param>
    public static Solution.Contradiction Told(DetailProblem problem, Answer.Conflict known)
    {
        var conflicts = problem.Model.Conflicts(Most + 1);
        IReadOnlyList<IReadOnlyList<string>> sets = conflicts.Sets.Count > 0 ? [.. conflicts.Sets.Take(Most)] : [known.Tags];
        var members = new Members(problem);
        return new Solution.Contradiction(
            problem.Situation.Preset, members.Of(sets[0]), new Mending(problem).Of(sets), [.. sets.Skip(1).Select(members.Of)],
            conflicts.Sets.Count > Most || !conflicts.IsComplete, conflicts.Sets.Count > 0 || known.IsMinimal);
    }
}
