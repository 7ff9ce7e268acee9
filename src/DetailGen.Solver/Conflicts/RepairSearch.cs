namespace DetailGen.Solver.Conflicts;

/// <summary>Finds which given values to change, and to what.</summary>
internal static class RepairSearch
{
    /// <summary>Smallest sets that are compared; there can be very many.</summary>
    private const int MostSets = 20;

    public static IReadOnlyList<Repair> Run(Model model, Func<string, bool> releasable, int most)
    {
        var givens = model.Givens.Where(given => releasable(given.Tag)).ToArray();
        if (givens.Length == 0 || model.CanHold() is not false)
        {
            return [];
        }

        var repairs = new List<Repair>();
        foreach (var given in givens)
        {
            Nearest(given, given.Variable <= given.Value - 1, -given.Variable);
            Nearest(given, given.Variable >= given.Value + 1, given.Variable);
        }

        return repairs.Count > 0 || most < 2 ? repairs : Smallest(model, givens, most);

        void Nearest(Model.Given given, Claim side, Linear far)
        {
            var free = model.Released(other => ReferenceEquals(other, given), [new Level.Least("nearest", far)]);
            free.Require(null, side);
            if (free.Solve([given.Variable]) is Answer.Best best)
            {
                repairs.Add(new Repair([new Change(given.Tag, given.Variable, best.Values[given.Variable])]));
            }
        }
    }

    private static List<Repair> Smallest(Model model, Model.Given[] givens, int most)
    {
        var sets = new List<Model.Given[]>();
        while (sets.Count < MostSets && Fewest(model, givens, sets) is { } next && next.Length <= (sets.Count == 0 ? most : sets[0].Length))
        {
            sets.Add(next);
        }

        var ranked = new List<(Repair Repair, long[] Costs)>();
        foreach (var set in sets)
        {
            var near = new Level.Wished("near", [.. set.Select(given => new Wish(given.Variable, given.Value))]);
            if (model.Released(given => set.Contains(given), [near, .. model.Levels]).Solve(set.Select(given => given.Variable)) is Answer.Best best)
            {
                var costs = best.Costs.Skip(1).SelectMany(cost => (long[])[cost.Broken.Count, cost.Total]).Append(best.Costs[0].Total);
                ranked.Add((new Repair([.. set.Select(given => new Change(given.Tag, given.Variable, best.Values[given.Variable]))]), [.. costs]));
            }
        }

        return [.. ranked.OrderBy(one => one.Costs, Comparer<long[]>.Create((a, b) => a.AsSpan().SequenceCompareTo(b))).Take(Model.MostRepairs).Select(one => one.Repair)];
    }

    /// <summary>The fewest givens whose change helps, none of the sets so far; null where there is none.</summary>
    private static Model.Given[]? Fewest(Model model, Model.Given[] givens, List<Model.Given[]> known)
    {
        var kept = new Level.Wanted("kept", [.. givens.Select(given => new SoftClaim(given.Tag, given.Claim, 0))]);
        var free = model.Released(given => givens.Contains(given), [kept]);
        known.ForEach(set => free.Require(null, Claim.Any([.. set.Select(given => given.Claim)])));
        return free.Solve(givens.Select(given => given.Variable)) is Answer.Best best ? [.. givens.Where(given => best.Values[given.Variable] != given.Value)] : null;
    }
}
