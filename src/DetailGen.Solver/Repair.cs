namespace DetailGen.Solver;

/// <summary>Changes of given values that together make the hard claims agree.</summary>
public sealed record Repair(IReadOnlyList<Change> Changes);

/// <summary>Another value for one that was given.</summary>
/// <param name="Tag">The tag of the given.</param>
public sealed record Change(string Tag, Variable Variable, long Value);
