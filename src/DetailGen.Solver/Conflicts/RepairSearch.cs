namespace DetailGen.Solver.Conflicts;

/// <summary>Finds which given values to change, and to what.</summary>
internal static class RepairSearch
{
    public static IReadOnlyList<Repair> Run(Model model, Func<string, bool> releasable)
    {
        var givens = model.Givens.Where(given => releasable(given.Tag)).ToArray();
        if (givens.Length == 0 || model.Released(_ => false, []).Solve() is not Answer.Conflict)
        {
            return [];
        }

        var repairs = new List<Repair>();
        foreach (var given in givens)
        {
            Nearest(given, given.Variable <= given.Value - 1, -given.Variable);
            Nearest(given, given.Variable >= given.Value + 1, given.Variable);
        }

        return repairs.Count > 0 ? repairs : Smallest(model, givens);

        void Nearest(Model.Given given, Claim side, Linear far)
        {
            var free = model.Released(other => ReferenceEquals(other, given), [new Level.Least("nearest", far)]);
            free.Require(null, side);
            if (free.Solve() is Answer.Best best)
            {
                repairs.Add(new Repair([new Change(given.Tag, given.Variable, best.Values[given.Variable])]));
            }
        }
    }

    private static Repair[] Smallest(Model model, Model.Given[] givens)
    {
        var kept = new Level.Wanted("kept", [.. givens.Select(given => new SoftClaim(given.Tag, given.Claim, 0))]);
        var near = new Level.Wished("near", [.. givens.Select(given => new Wish(given.Variable, given.Value))]);
        return model.Released(given => givens.Contains(given), [kept, near]).Solve() is Answer.Best best
            ? [new Repair([.. givens.Where(given => best.Values[given.Variable] != given.Value)
                .Select(given => new Change(given.Tag, given.Variable, best.Values[given.Variable]))])]
            : [];
    }
}
