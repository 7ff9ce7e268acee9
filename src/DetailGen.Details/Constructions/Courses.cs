namespace DetailGen.Details.Constructions;

/// <summary>Heights of masonry courses, their bed joint included; mm, common practice, no source.</summary>
internal static class Courses
{
    /// <summary>Of bricks.</summary>
    internal const double Brick = 75;

    /// <summary>Of blocks: a bed of theirs lies at every third of bricks, so that both leaves share it.</summary>
    internal const double Block = 3 * Brick;

    /// <summary>The bed joint alone.</summary>
    internal const double Joint = 10;
}
