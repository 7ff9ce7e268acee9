using DetailGen.Solver.Search;

namespace DetailGen.Solver.Conflicts;

/// <summary>
/// Finds the minimal conflicts, smallest first. Whatever can hold together leaves tags out; a conflict has at least one of them. The smallest set of tags
/// that meets everything left out so far is a conflict, or can hold together and leaves out something more.
/// </summary>
internal static class ConflictSearch
{
    /// <summary>Candidates that one question may try; the same on every machine.</summary>
    private const int MostCandidates = 300;

    /// <exception cref="ArgumentOutOfRangeException">Less than one is asked for.</exception>
    public static ConflictSets Run(Model model, int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var problem = ProblemBuilder.Hard(model);
        problem.Finder.Budget = model.Budget;
        var found = new List<bool[]>();
        var leftOut = new List<bool[]>();
        for (var tries = 0; tries < MostCandidates; tries++)
        {
            if (Smallest(problem.Tags, leftOut, found) is not { } candidate)
            {
                return Told(isComplete: true);
            }

            switch (MinimalConflict.Check(problem, candidate, null))
            {
                case Found.No:
                    found.Add(candidate);
                    if (found.Count == most)
                    {
                        return Told(isComplete: true);
                    }

                    break;
                case Found.Yes when Grown(problem, candidate) is { } grown:
                    bool[] rest = [.. grown.Select(inForce => !inForce)];
                    if (!Array.Exists(rest, left => left))
                    {
                        return Told(isComplete: true); // all of it can hold together
                    }

                    leftOut.Add(rest);
                    break;
                default:
                    return Told(isComplete: false);
            }
        }

        return Told(isComplete: false);

        ConflictSets Told(bool isComplete) => new([.. found.Select(members => MinimalConflict.Names(problem, members))], isComplete);
    }

    /// <summary>The fewest tags of which every gap has one and no conflict has all; among equals by name. Null where there are none.</summary>
    private static bool[]? Smallest(string[] tags, List<bool[]> gaps, List<bool[]> conflicts)
    {
        var cover = new Model();
        var taken = new Variable?[tags.Length];
        Linear count = 0;
        for (var tag = 0; tag < tags.Length; tag++)
        {
            if (gaps.Exists(gap => gap[tag]))
            {
                taken[tag] = cover.Add(tags[tag], Domain.Range(0, 1));
                count += taken[tag]!;
            }
        }

        gaps.ForEach(gap => cover.Require(null, Sum(gap) >= 1));
        conflicts.ForEach(conflict => cover.Require(null, Sum(conflict) <= conflict.Count(member => member) - 1));
        cover.Then(new Level.Least("fewest", count));
        return cover.Solve() is Answer.Best best ? [.. taken.Select(variable => variable is not null && best.Values[variable] == 1)] : null;

        Linear Sum(bool[] of)
        {
            Linear sum = 0;
            for (var tag = 0; tag < of.Length; tag++)
            {
                if (of[tag] && taken[tag] is { } variable)
                {
                    sum += variable;
                }
            }

            return sum;
        }
    }

    /// <summary>As many more tags as can hold together with these; null where the budget is spent.</summary>
    private static bool[]? Grown(Problem problem, bool[] candidate)
    {
        var grown = (bool[])candidate.Clone();
        return Grow(problem, grown, [.. Enumerable.Range(0, grown.Length).Where(tag => !grown[tag])]) ? grown : null;
    }

    /// <summary>Takes these all at once where they fit, else half after half: few are left out as a rule.</summary>
    private static bool Grow(Problem problem, bool[] grown, ReadOnlySpan<int> more)
    {
        if (more.Length == 0)
        {
            return true;
        }

        foreach (var tag in more)
        {
            grown[tag] = true;
        }

        switch (MinimalConflict.Check(problem, grown, null))
        {
            case Found.Yes:
                return true;
            case Found.No:
                foreach (var tag in more)
                {
                    grown[tag] = false;
                }

                return more.Length == 1 || (Grow(problem, grown, more[..(more.Length / 2)]) && Grow(problem, grown, more[(more.Length / 2)..]));
            default:
                return false;
        }
    }
}
