using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>Arrows down the slope over surfaces laid to falls, with the ratio above.</summary>
internal static class FallArrows
{
    private const double Length = 15, Short = 9;

    /// <summary>Between the arrow over the roof and the roof's break: the stack note stands there.</summary>
    private const double OffEnd = 17;

    internal static void Place(Surface surface, Section section, Ground ground)
    {
        foreach (var fall in section.Falls.Where(fall => ground.IsSeen(surface, fall)).OrderBy(fall => fall.Id, StringComparer.Ordinal))
        {
            if (!TryPlace(surface, fall, ground) && !IsTold(section, fall))
            {
                surface.Unplaced.Add(new("fall", fall.Id, "No white above the surface is large enough."));
            }
        }
    }

    /// <summary>Whether a note on the sheet gives the fall in words, so that it may stand there alone: over a coping at a small scale are its dimensions.</summary>
    private static bool IsTold(Section section, Fall fall) =>
        section.Parts.Any(part => part.Words.Note.Split([' ', ';', ',']).Contains(Ratio(fall), StringComparer.Ordinal));

    private static string Ratio(Fall fall) => "1:" + fall.Ratio.ToString("0.##", CultureInfo.InvariantCulture);

    private static bool TryPlace(Surface surface, Fall fall, Ground ground)
    {
        foreach (var (words, length) in ((string, double)[])[(Ratio(fall) + " fall", Length), (Ratio(fall), Length), (Ratio(fall), Short)])
        {
            foreach (var rise in (ReadOnlySpan<double>)[2.5, 4, 6, 9])
            {
                foreach (var along in Places(surface.At(fall.At).X, ground))
                {
                    if (TryPlace(surface, fall, words, length, along, rise))
                    {
                        return true;
                    }
                }
            }
        }

        return false;
    }

    /// <summary>How far from the middle of the surface to try: nearest first, but over the roof far from the wall first, where no notes are led to the upstand.</summary>
    private static IEnumerable<double> Places(double at, Ground ground)
    {
        var near = Enumerable.Range(0, 25).Select(step => (step + 1) / 2 * 5.0 * (step % 2 == 0 ? -1 : 1));
        return at < ground.WallRight ? near : near.OrderByDescending(along => at + along + Length / 2 <= ground.RoofEnd - OffEnd ? along : along - 1000);
    }

    private static bool TryPlace(Surface surface, Fall fall, string words, double length, double along, double rise)
    {
        var slope = -fall.DownX / fall.Ratio; // dy over dx
        var surfaceAt = surface.At(fall.At) + new PaperPoint(along, along * slope);
        var stretch = Math.Sqrt(1 + slope * slope);
        var way = new PaperPoint(fall.DownX / stretch, fall.DownX * slope / stretch);
        var middle = surfaceAt + new PaperPoint(0, rise);
        var (tail, tip) = (middle - length / 2 * way, middle + length / 2 * way);
        var (height, head) = (surface.Sizes.Notes, surface.Sizes.ByNotes(2.5));
        var width = Letters.Width(words, height);
        var baseLine = Math.Max(tail.Y, tip.Y) + 1.1;
        var box = new PaperBox(middle.X - width / 2, baseLine - Letters.Hang(height), middle.X + width / 2, baseLine + Letters.Rise(height));
        if (!OverSurface(surface, tail, rise) || !OverSurface(surface, tip, rise) || !surface.Free(box, 1, 1.5) || !surface.Free(Surface.Around(tail, tip), 0.9, 1.5))
        {
            return false;
        }

        var side = new PaperPoint(-way.Y, way.X);
        var half = head * Math.Tan(7.5 * Math.PI / 180);
        surface.Group("dim.fall", "fall " + fall.Id, () =>
        {
            surface.Line("dim.fall", tail, tip - head * way);
            surface.Black("dim.fall", tip, tip - head * way + half * side, tip - head * way - half * side);
            surface.Words("dim.fall", words, middle.X - width / 2, baseLine);
        });
        surface.Hard.Add((tail, tip));
        return true;
    }

    /// <summary>Whether the surface lies under the place, not the air beside its end.</summary>
    private static bool OverSurface(Surface surface, PaperPoint point, double rise) =>
        surface.Shapes.Any(shape => shape.Look != Look.Open && shape.Meets(new(point.X - 0.1, point.Y - rise - 1.5, point.X + 0.1, point.Y - 0.5)));
}
