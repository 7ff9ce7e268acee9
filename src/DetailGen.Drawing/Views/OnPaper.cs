using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>From the model to paper: scaled, and reflected where the sheet is handed. Reflecting comes first, so fills are made on what is seen.</summary>
internal sealed class OnPaper(double scale, bool mirror)
{
    public double Scale => scale;

    public PaperPoint At(Point point) => new((mirror ? -point.X : point.X) / scale, point.Y / scale);

    public Region At(Region region) => (mirror ? region.Mirror() : region).Scale(1 / scale);

    public Bounds At(Bounds bounds) => mirror
        ? new(-bounds.Right / scale, bounds.Bottom / scale, -bounds.Left / scale, bounds.Top / scale)
        : new(bounds.Left / scale, bounds.Bottom / scale, bounds.Right / scale, bounds.Top / scale);

    public PaperPoint Direction(Point direction) => new((mirror ? -direction.X : direction.X) / direction.Length, direction.Y / direction.Length);

    /// <summary>The face with its sheet still on the left: reflected, it is walked from the other end.</summary>
    public IEnumerable<PaperPoint> Face(Sheet sheet) => mirror ? sheet.Face.Reverse().Select(At) : sheet.Face.Select(At);
}
