using System.Globalization;

namespace DetailGen.Details.Solving;

/// <summary>Both sides of a verdict in words that can be read one way only: "at least 150 mm", "1:80 or steeper".</summary>
public static class ComparisonWords
{
    /// <summary>What is drawn; null where nothing was compared.</summary>
    public static string? Drawn(Verdict verdict) => verdict.Left?.Text;

    /// <summary>What was wanted; null where nothing was compared.</summary>
    public static string? Wanted(Verdict verdict) => verdict.Right is { } right ? Of(verdict.Op!, Fall(right), IsFall(right)) : null;

    /// <param name="fall">A slope or an angle: of these the steeper is the greater.</param>
    internal static string Of(string op, string limit, bool fall) => (op, fall) switch
    {
        (">=", true) => $"{limit} or steeper",
        ("<=", true) => $"{limit} or shallower",
        (">", true) => $"steeper than {limit}",
        ("<", true) => $"shallower than {limit}",
        (">=", _) => $"at least {limit}",
        ("<=", _) => $"at most {limit}",
        (">", _) => $"more than {limit}",
        ("<", _) => $"less than {limit}",
        ("!=", _) => $"anything but {limit}",
        ("in", _) => $"one of {limit}",
        ("not in", _) => $"none of {limit}",
        _ => limit,
    };

    private static bool IsFall(Side side) => side.Number is not null && (side.Text.StartsWith("1:", StringComparison.Ordinal) || IsAngle(side));

    private static bool IsAngle(Side side) => side.Text.EndsWith('°');

    // falls are drawn as 1:n, so an angle is told as the slope it makes too
    private static string Fall(Side side) => IsAngle(side) && side.Number is { } run ? $"{side.Text} (1:{run.ToString("0.#", CultureInfo.InvariantCulture)})" : side.Text;
}
