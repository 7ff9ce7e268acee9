using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>Outside, Inside, Roof: in the free place nearest to where the section would have it.</summary>
internal static class SpaceLabels
{
    internal const string What = "label";

    /// <summary>Steps across and up from where the section would have a label, nearest first.</summary>
    private static readonly (int Across, int Up)[] Steps =
    [
        .. from i in Enumerable.Range(-Most, 2 * Most + 1)
           from j in Enumerable.Range(-Most, 2 * Most + 1)
           orderby i * i + j * j, Math.Abs(i), i, j
           select (i, j),
    ];

    private const int Most = 25;

    internal static void Place(Surface surface, IEnumerable<Space> spaces)
    {
        foreach (var space in spaces.OrderBy(space => space.Name, StringComparer.Ordinal))
        {
            var height = surface.Sizes.Titles;
            var (width, wish) = (Letters.Width(space.Text, height) * 1.03, surface.At(space.At));
            var places = Places(surface, wish);
            if (Find(places, place => surface.Free(Level(place, width, height), 2, 3, 1.5)) is { } at)
            {
                surface.Words("title.view", space.Text, at.X - width / 2, at.Y, height);
            }
            else if (Find(places, place => surface.Free(Upright(place, width, height), 1.5, 2, 1.5)) is { } beside)
            {
                // In a strip beside the wall, to be read from the right as the figures of upright dimensions are.
                surface.Upright("title.view", space.Text, beside, height);
            }
            else
            {
                surface.Unplaced.Add(new(What, space.Name, "No white beside the section is large enough."));
            }
        }
    }

    private static PaperPoint? Find(IEnumerable<PaperPoint> places, Func<PaperPoint, bool> fits) => places.Where(fits).Cast<PaperPoint?>().FirstOrDefault();

    private static PaperBox Level(PaperPoint at, double width, double height) => new(at.X - width / 2, at.Y - Letters.Hang(height), at.X + width / 2, at.Y + Letters.Rise(height));

    private static PaperBox Upright(PaperPoint at, double width, double height) =>
        new(at.X - Letters.Rise(height), at.Y - width / 2, at.X + Letters.Rise(height), at.Y + width / 2);

    /// <summary>Places on a grid of 4 within the same space (no part between it and the wish), nearest first.</summary>
    private static IEnumerable<PaperPoint> Places(Surface surface, PaperPoint wish)
    {
        var clamped = new PaperPoint(
            Math.Clamp(wish.X, surface.Zone.Left + 12, Math.Max(surface.Zone.Left + 12, surface.Zone.Right - 12)),
            Math.Clamp(wish.Y, surface.Zone.Bottom + 4, Math.Max(surface.Zone.Bottom + 4, surface.Zone.Top - 6)));
        return from step in Steps
               let place = new PaperPoint(clamped.X + 4 * step.Across, clamped.Y + 4 * step.Up)
               where Array.TrueForAll(surface.Shapes, shape => shape.Look == Look.Open || shape.Inside(clamped, place) < 0.1)
               select place;
    }
}
