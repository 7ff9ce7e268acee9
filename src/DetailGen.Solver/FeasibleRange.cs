namespace DetailGen.Solver;

/// <summary>The values a variable can take while all hard claims hold.</summary>
/// <param name="Step">What all values differ by multiples of: the domain's step, or a multiple of it where an equation leaves no others.</param>
/// <param name="Values">Ascending, apart; within each all values from low to high by the step. Listed domains: low = high.</param>
/// <param name="Lowest">Tags of a set of claims that forbid the next smaller member of the domain and all below, minimal but for those whose part was too dear to settle; where the domain ends there its own tag, or empty where it has none.</param>
/// <param name="Highest">The same for the next greater member and all above.</param>
public sealed record FeasibleRange(
    Variable Variable, long Step, IReadOnlyList<(long Low, long High)> Values, IReadOnlyList<string> Lowest, IReadOnlyList<string> Highest);
