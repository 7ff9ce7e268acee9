namespace DetailGen.Solver;

/// <summary>What came of solving.</summary>
public abstract record Answer
{
    private Answer()
    {
    }

    /// <summary>The one best assignment.</summary>
    /// <param name="Values">A value for each variable.</param>
    /// <param name="Costs">One entry per level, in order.</param>
    public sealed record Best(Values Values, IReadOnlyList<LevelCost> Costs) : Answer
    {
        internal Conflicts.Bindings? Bindings { get; init; }

        /// <summary>
        /// Why the variable does not stand one step nearer to its wish (without a wish: one step smaller). First all else is left free: the answer is
        /// a minimal set of tags, among the hard claims and the wanted claims that hold here, that together forbid the step. Where the step could be
        /// had at a price to other wishes, all else is held: the tags of the hard and held claims that the step alone would break. Ordinal order; empty where
        /// the variable stands at its wish or its least value, or where only a lower rank speaks against the step.
        /// </summary>
        public IReadOnlyList<string> Binding(Variable variable) => Bindings?.Of(variable, Values) ?? [];
    }

    /// <summary>The hard claims contradict each other.</summary>
    /// <param name="Tags">In ordinal order.</param>
    /// <param name="IsMinimal">Without any one of these the others of them can hold together; false where that was too dear to settle for some.</param>
    public sealed record Conflict(IReadOnlyList<string> Tags, bool IsMinimal) : Answer;

    /// <summary>The step budget ran out first.</summary>
    /// <param name="Feasible">The best assignment found so far, where there is one; it holds every hard claim.</param>
    public sealed record NotProven(Values? Feasible) : Answer;
}

/// <summary>What one level costs in an answer.</summary>
/// <param name="Broken">Tags of the wanted claims that do not hold, in the order they were given; empty for the other kinds.</param>
/// <param name="Total">Sum of shortfalls, of distances in steps, or the sum that was to be least.</param>
public sealed record LevelCost(string Name, IReadOnlyList<string> Broken, long Total);

/// <summary>A value for each variable of a model.</summary>
public sealed class Values
{
    private readonly long[] _byId;

    internal Values(ReadOnlySpan<long> byId) => _byId = byId.ToArray();

    public long this[Variable variable] => _byId[variable.Id];

    internal ReadOnlySpan<long> ById => _byId;
}
