using System.Globalization;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>Arrows down the slope over surfaces laid to falls, with the ratio above.</summary>
internal static class FallArrows
{
    private const double Length = 15, Short = 9, Shortest = 6;

    /// <summary>Between the arrow over the roof and the roof's break: the stack note stands there.</summary>
    private const double OffEnd = 17;

    /// <summary>Of an arrow and its words to the ridge between two slopes.</summary>
    private const double OffRidge = 0.6;

    internal static void Place(Surface surface, Section section, Ground ground)
    {
        foreach (var falls in section.Falls.Where(fall => ground.IsSeen(surface, fall)).GroupBy(fall => fall.Id, StringComparer.Ordinal).OrderBy(falls => falls.Key, StringComparer.Ordinal))
        {
            // Of two slopes of one surface both have an arrow or none: one alone would tell a single fall.
            var arrows = falls.Select(fall => Find(surface, new(fall, Ridge(surface, falls), IsTold(section, fall)), ground)).ToArray();
            if (Array.TrueForAll(arrows, arrow => arrow is not null))
            {
                Array.ForEach(arrows, arrow => Draw(surface, arrow!));
            }
            else
            {
                surface.Unplaced.AddRange(falls.Where(fall => !IsTold(section, fall)).Select(fall => new Unplaced("fall", fall.Id, "No white above the surface is large enough.")));
            }
        }
    }

    private static double? Ridge(Surface surface, IEnumerable<Fall> falls) => falls.Count() > 1 ? falls.Average(fall => surface.At(fall.At).X) : null;

    /// <param name="Ridge">x of the ridge that it falls away from; null where the whole surface falls one way.</param>
    private sealed record Slope(Fall Fall, double? Ridge, bool IsTold)
    {
        internal bool Holds(double left, double right) => Ridge is not { } ridge || (Fall.DownX < 0 ? right <= ridge - OffRidge : left >= ridge + OffRidge);
    }

    private sealed record Arrow(Fall Fall, string Words, double WordsLeft, double BaseLine, PaperPoint Tail, PaperPoint Tip, PaperPoint Way);

    /// <summary>Whether a note on the sheet gives the fall in words, so that it may stand there alone: over a coping at a small scale are its dimensions.</summary>
    private static bool IsTold(Section section, Fall fall) =>
        section.Parts.Any(part => part.Words.Note.Split([' ', ';', ',']).Contains(Ratio(fall), StringComparer.Ordinal));

    private static string Ratio(Fall fall) => "1:" + fall.Ratio.ToString("0.##", CultureInfo.InvariantCulture);

    private static Arrow? Find(Surface surface, Slope slope, Ground ground)
    {
        var ratio = Ratio(slope.Fall);
        List<(string, double)> shapes = [(ratio + " fall", Length), (ratio, Length), (ratio, Short)];
        if (slope is { IsTold: true, Ridge: not null })
        {
            shapes.Add(("", Shortest));
        }

        foreach (var (words, length) in shapes)
        {
            foreach (var rise in (ReadOnlySpan<double>)[2.5, 4, 6, 9])
            {
                foreach (var along in Places(surface.At(slope.Fall.At).X, slope, ground))
                {
                    if (At(surface, slope, words, length, along, rise) is { } arrow)
                    {
                        return arrow;
                    }
                }
            }
        }

        return null;
    }

    /// <summary>How far from the middle of the surface to try: nearest first, but over the roof far from the wall first, where no notes are led to the upstand.</summary>
    private static IEnumerable<double> Places(double at, Slope slope, Ground ground)
    {
        var step = slope.Ridge is null ? 5.0 : 1.5;
        var near = Enumerable.Range(0, 25).Select(count => (count + 1) / 2 * step * (count % 2 == 0 ? -1 : 1));
        return at < ground.WallRight ? near : near.OrderByDescending(along => at + along + Length / 2 <= ground.RoofEnd - OffEnd ? along : along - 1000);
    }

    private static Arrow? At(Surface surface, Slope on, string words, double length, double along, double rise)
    {
        var fall = on.Fall;
        var slope = -fall.DownX / fall.Ratio; // dy over dx
        var surfaceAt = surface.At(fall.At) + new PaperPoint(along, along * slope);
        var stretch = Math.Sqrt(1 + slope * slope);
        var way = new PaperPoint(fall.DownX / stretch, fall.DownX * slope / stretch);
        var middle = surfaceAt + new PaperPoint(0, rise);
        var (tail, tip) = (middle - length / 2 * way, middle + length / 2 * way);
        var height = surface.Sizes.Notes;
        var half = Math.Max(words.Length == 0 ? 0 : surface.Sizes.Typeface.Width(words, height) / 2, length / 2 * Math.Abs(way.X));
        var wordsLeft = middle.X - surface.Sizes.Typeface.Width(words, height) / 2;
        var baseLine = Math.Max(tail.Y, tip.Y) + 1.1;
        var box = new PaperBox(wordsLeft, baseLine - surface.Sizes.Typeface.Hang(height), 2 * middle.X - wordsLeft, baseLine + surface.Sizes.Typeface.Rise(height));
        return on.Holds(middle.X - half, middle.X + half) && OverSurface(surface, tail, rise) && OverSurface(surface, tip, rise)
            && (words.Length == 0 || surface.Free(box, 1, 1.5)) && surface.Free(Surface.Around(tail, tip), 0.9, 1.5)
            ? new(fall, words, wordsLeft, baseLine, tail, tip, way)
            : null;
    }

    private static void Draw(Surface surface, Arrow arrow)
    {
        var (tail, tip, way, head) = (arrow.Tail, arrow.Tip, arrow.Way, surface.Sizes.ByNotes(2.5));
        var side = new PaperPoint(-way.Y, way.X);
        var half = head * Math.Tan(7.5 * Math.PI / 180);
        surface.Group("dim.fall", "fall " + arrow.Fall.Id, () =>
        {
            surface.Line("dim.fall", tail, tip - head * way);
            surface.Black("dim.fall", tip, tip - head * way + half * side, tip - head * way - half * side);
            if (arrow.Words.Length > 0)
            {
                surface.Words("dim.fall", arrow.Words, arrow.WordsLeft, arrow.BaseLine);
            }
        });
        surface.Hard.Add((tail, tip));
    }

    /// <summary>Whether the surface lies under the place, not the air beside its end.</summary>
    private static bool OverSurface(Surface surface, PaperPoint point, double rise) =>
        surface.Shapes.Any(shape => shape.Look != Look.Open && shape.Meets(new(point.X - 0.1, point.Y - rise - 1.5, point.X + 0.1, point.Y - 0.5)));
}
