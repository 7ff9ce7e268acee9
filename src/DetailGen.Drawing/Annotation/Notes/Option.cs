using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>How a leader ends.</summary>
internal enum Ending
{
    Dot,
    Arrow,
}

/// <summary>One way to lead a note to its part from a given column.</summary>
/// <param name="Level">y of the bend.</param>
/// <param name="Angle">Index into <see cref="Angles"/>.</param>
/// <param name="Slope">Rise over a millimetre away from the tip, towards the column.</param>
/// <param name="Run">Length from bend to tip, mm.</param>
/// <param name="Strict">All angles to fills and edges are kept; the others are there for need.</param>
/// <param name="Cost">All of it that depends on this note alone; the column's main angle is not known yet.</param>
internal readonly record struct Option(double Level, PaperPoint Tip, int Angle, double Slope, double Run, double Cost, Ending Ending, double DotSize, string PartId, bool Strict)
{
    /// <summary>How far before the column's bend line the leader bends, mm; 0 for all but those that have no other way.</summary>
    internal double Setback { get; init; }

    /// <param name="side">Of the column.</param>
    internal PaperPoint BendAt(int side) => new(Tip.X + side * Angles.Cosines[Angle] * Run, Level);
}

/// <summary>A leader to a note that stands by itself.</summary>
/// <param name="Way">What its run costs, without all that depends on where it bends.</param>
internal readonly record struct LoneLeader(Option Option, double Way);

/// <summary>Which ways of leading a note are looked at.</summary>
internal enum Reach
{
    /// <summary>All angles to fills and edges kept, where there is such a way.</summary>
    Strict,

    /// <summary>Those that run along an edge or over many parts as well.</summary>
    Lax,

    /// <summary>Those that bend before the column's bend line as well: more levels lead to one part.</summary>
    SetBack,
}

/// <summary>The angles of leaders, degrees from level; positive where the tip lies lower than the bend.</summary>
internal static class Angles
{
    internal static readonly double[] Degrees = [0, 30, -30, 45, -45, 60, -60, 75, -75];

    internal static readonly double[] Slopes = [.. Degrees.Select(degrees => Math.Tan(degrees * Math.PI / 180))];

    internal static readonly double[] Cosines = [.. Degrees.Select(degrees => Math.Cos(degrees * Math.PI / 180))];
}

/// <summary>Weights of a layout in millimetres of leader.</summary>
internal static class Weights
{
    internal const double Bend = 6;
    internal const double OtherAngle = 4;

    /// <summary>A foreign part on the way of a leader, each millimetre in it, and each part beyond two: white paper on another side is worth a longer leader.</summary>
    internal const double ForeignPart = 4;
    internal const double Through = 0.4;
    internal const double ManyParts = 40;
    internal const double ForeignSheet = 8;
    internal const double Lax = 12;
    internal const double Clearance = 10;

    /// <summary>A leader through the whole wall.</summary>
    internal const double Across = 40;
    internal const double Witness = 6;

    /// <summary>A bend out of line with the column's others, and each millimetre by which it is.</summary>
    internal const double OutOfLine = 8;
    internal const double Setback = 0.5;

    /// <summary>Words that stand by themselves and not in a column.</summary>
    internal const double Loose = 40;

    /// <summary>Beyond what a note would cost if it stood alone it is worth looking for a better place among the others, and a place that much better is one.</summary>
    internal const double Dear = 10, Better = 4;

    /// <summary>A number where words should stand.</summary>
    internal const double Number = 400;

    /// <summary>A leader that runs along a line of the drawing.</summary>
    internal const double Along = 500;
    internal const double Uneven = 0.1;

    /// <summary>Most that one uneven gap may count: beyond it a column is loose anyway, and long leaders would be worse.</summary>
    internal const double UnevenMost = 8;

    // Well above what a better place may gain: a revision must not look like a new drawing.
    internal const double Moved = 3;
    internal const double OtherColumn = 60;
    internal const double Swapped = 25;
    internal const double RankInversion = 15;

    /// <summary>A fault; far above any sum of the rest.</summary>
    internal const double Fault = 10_000;
}
