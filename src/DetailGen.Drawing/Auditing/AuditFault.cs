using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Auditing;

/// <summary>What an audit of a finished sheet looks for.</summary>
public static class AuditKinds
{
    public const string TextOverText = "text-over-text";

    /// <summary>Text on a line or fill: of a part, a dimension, a level, a table.</summary>
    public const string TextOverLine = "text-over-line";

    /// <summary>A leader through another leader, a text or a dimension line.</summary>
    public const string LeaderThrough = "leader-through";

    public const string TipOffPart = "tip-off-part";

    public const string OutsideZone = "outside-zone";

    public const string LeaderTooLong = "leader-too-long";

    /// <summary>Less white between two marks than a print keeps open.</summary>
    public const string Crowded = "crowded";

    public static IReadOnlyList<string> All { get; } = [TextOverText, TextOverLine, LeaderThrough, TipOffPart, OutsideZone, LeaderTooLong, Crowded];
}

/// <summary>A fault as measured on the finished sheet.</summary>
/// <param name="Sheet">From 1.</param>
/// <param name="At">Page mm.</param>
/// <param name="Kind">One of <see cref="AuditKinds"/>.</param>
/// <param name="Second">What <paramref name="First"/> comes into conflict with: another mark, a part, a zone.</param>
/// <param name="Amount">mm: depth of an overlap, white that is left, length over the bound, how far outside.</param>
public sealed record AuditFault(int Sheet, PaperPoint At, string Kind, string First, string Second, double Amount);
