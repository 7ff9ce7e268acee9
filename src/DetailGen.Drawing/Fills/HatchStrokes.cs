using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>The plain strokes of a hatch, as every format shows it that cannot repeat a pattern by itself.</summary>
public static class HatchStrokes
{
    /// <summary>Slivers shorter than this are not drawn, mm.</summary>
    public const double Least = HatchClipper.LeastStroke;

    private const double Dot = 0.13;

    /// <summary>All strokes of all families, cut to the outline, in a fixed order.</summary>
    public static IReadOnlyList<(PaperPoint From, PaperPoint To)> Of(Hatch hatch) =>
        [.. HatchClipper.Clip(hatch, Dot).Select(stroke => (new PaperPoint(stroke.FromX, stroke.FromY), new PaperPoint(stroke.ToX, stroke.ToY)))];
}
