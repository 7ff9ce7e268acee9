namespace DetailGen.Solver;

/// <summary>The ways in which hard claims contradict each other.</summary>
/// <param name="Sets">Each minimal: without any one of its tags the others of it can hold together. Fewest tags first; tags in ordinal order.</param>
/// <param name="IsComplete">There are no more, or as many as were asked for; else the search was cut short and there may be others, none of them smaller.</param>
public sealed record ConflictSets(IReadOnlyList<IReadOnlyList<string>> Sets, bool IsComplete);
