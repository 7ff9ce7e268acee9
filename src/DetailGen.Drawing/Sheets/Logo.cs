using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>A practice's own mark for the title block: shapes in mm from its lower left corner, as large as they were drawn.</summary>
public sealed record Logo(IReadOnlyList<LogoMark> Marks)
{
    private const string Row = "block.value";

    private double Right => Marks.SelectMany(mark => mark.Points).Max(point => point.X);

    private double Top => Marks.SelectMany(mark => mark.Points).Max(point => point.Y);

    /// <summary>How wide it is where it is as large as a box so wide and so high holds.</summary>
    internal double WidthIn(double width, double height) => Right * Factor(width, height);

    /// <summary>In its box: at the right, half way up.</summary>
    internal IEnumerable<Item> In(PaperBox box)
    {
        var factor = Factor(box.Width, box.Height);
        PaperPoint corner = new(box.Right - factor * Right, (box.Bottom + box.Top - factor * Top) / 2);
        foreach (var mark in Marks)
        {
            PaperPoint[] points = [.. mark.Points.Select(point => corner + factor * point)];
            yield return mark.Kind == LogoMarkKind.Area ? new Solid(Row, points, []) : new Stroke(Row, points, mark.Kind == LogoMarkKind.Outline);
        }
    }

    private double Factor(double width, double height) => Math.Min(Right > 0 ? width / Right : double.MaxValue, Top > 0 ? height / Top : double.MaxValue);
}

/// <summary>A shape of a logo, mm from its lower left corner.</summary>
/// <param name="Points">None left of the lower left corner or below it.</param>
public sealed record LogoMark(LogoMarkKind Kind, IReadOnlyList<PaperPoint> Points);

/// <summary>How a shape of a logo is drawn.</summary>
public enum LogoMarkKind
{
    Line,
    Outline,
    Area,
}
