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

    /// <returns>Whether each stands where it belongs to its space alone.</returns>
    internal static bool Place(Surface surface, IEnumerable<Space> spaces)
    {
        var clear = true;
        foreach (var space in spaces.OrderBy(space => space.Name, StringComparer.Ordinal))
        {
            var height = surface.Sizes.Titles;
            var (width, wish) = (surface.Sizes.Typeface.Width(space.Text, height) * 1.03, surface.At(space.At));
            var places = Places(surface, wish);

            PaperPoint? Flat(Func<PaperBox, bool> where) => Find(places, place => Level(surface, place, width, height) is var box && where(box) && surface.Free(box, 2, 3, 1.5));
            PaperPoint? Turned(Func<PaperBox, bool> where) => Find(places, place => Upright(surface, place, width, height) is var box && where(box) && surface.Free(box, 1.5, 2, 1.5));

            // A room is what the drawing shows of it: past a break line the paper belongs to nothing, though nothing parts it from a room.
            var drawn = surface.Drawn;
            var isRoom = space.Name.EndsWith("room", StringComparison.Ordinal);
            bool Within(PaperBox box) => !isRoom || (box.Bottom >= drawn.Bottom && box.Top <= drawn.Top && box.Right <= drawn.Right);
            var flat = Flat(Within);
            var turned = flat is null ? Turned(Within) : null;

            // Where that has no white: beyond, yet on the room's own side of the wall, for under a wall that breaks off a label belongs to either side; last anywhere.
            var shown = wish with { Y = Math.Clamp(wish.Y, drawn.Bottom + 1, drawn.Top - 1) }; // the drawing may break off before the wish
            bool Beside(PaperBox box) => IsOpen(surface, shown, box.Left, box.Right);
            foreach (var where in (Func<PaperBox, bool>[])[Beside, _ => true])
            {
                clear &= where == Beside || flat is not null || turned is not null;
                flat ??= turned is null && isRoom ? Flat(where) : null;
                turned ??= flat is null && isRoom ? Turned(where) : null;
            }

            if (flat is { } at)
            {
                surface.Words("title.view", space.Text, at.X - width / 2, at.Y, height);
            }
            else if (turned is { } beside)
            {
                // In a strip beside the wall, to be read from the right as the figures of upright dimensions are.
                surface.Upright("title.view", space.Text, beside, height);
            }
            else
            {
                surface.Unplaced.Add(new(What, space.Name, "No white beside the section is large enough."));
            }
        }

        return clear;
    }

    /// <summary>Whether nothing built stands level with the wish as far as both ends.</summary>
    private static bool IsOpen(Surface surface, PaperPoint wish, params ReadOnlySpan<double> ends)
    {
        foreach (var end in ends)
        {
            if (Array.Exists(surface.Shapes, shape => shape.Look != Look.Open && shape.Inside(wish, wish with { X = end }) >= 0.1))
            {
                return false;
            }
        }

        return true;
    }

    private static PaperPoint? Find(IEnumerable<PaperPoint> places, Func<PaperPoint, bool> fits) => places.Where(fits).Cast<PaperPoint?>().FirstOrDefault();

    private static PaperBox Level(Surface surface, PaperPoint at, double width, double height) => new(at.X - width / 2, at.Y - surface.Sizes.Typeface.Hang(height), at.X + width / 2, at.Y + surface.Sizes.Typeface.Rise(height));

    private static PaperBox Upright(Surface surface, PaperPoint at, double width, double height) =>
        new(at.X - surface.Sizes.Typeface.Rise(height), at.Y - width / 2, at.X + surface.Sizes.Typeface.Rise(height), at.Y + width / 2);

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
