using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Where the window cuts the runs, and the lines drawn there.</summary>
internal static class BreakLines
{
    private const double Past = 3, Half = 2, Deep = 3, Inner = 0.7, TwoAbove = 60;

    // Far enough for everything drawn on sides where nothing runs on.
    private const double Open = 10_000;

    /// <summary>The rectangle in which the section is drawn: the window on sides with a run, open elsewhere; model mm.</summary>
    public static Bounds Clip(Section section, Bounds window)
    {
        var clip = new Bounds(-Open, -Open, Open, Open);
        foreach (var run in section.Runs)
        {
            clip = run.Heading switch
            {
                Heading.Down => clip with { Bottom = Math.Max(window.Bottom, run.End) },
                Heading.Up => clip with { Top = Math.Min(window.Top, run.End) },
                _ => clip with { Right = Math.Min(window.Right, run.End) },
            };
        }

        return clip;
    }

    /// <summary>The nearest level short of one at which a break across the wall leaves no sliver of a masonry unit; mm.</summary>
    /// <param name="at">Where the wall would be broken off.</param>
    public static double OffSlivers(Section section, Heading heading, double at)
    {
        foreach (var coursing in section.Parts.Where(part => part.Coursing is not null && part.Region.Bounds is var leaf && leaf.Bottom < at && at < leaf.Top).Select(part => part.Coursing!))
        {
            double[] beds = [.. coursing.Beds(at - coursing.Height, at + coursing.Height)];
            var (bed, next) = (beds.Last(level => level <= at), beds.First(level => level > at));
            if (heading == Heading.Down && next - at < Coursing.LeastUnit)
            {
                return next;
            }

            if (heading == Heading.Up && at - bed - coursing.Joint is > 0 and < Coursing.LeastUnit)
            {
                return bed + coursing.Joint;
            }
        }

        return at;
    }

    /// <param name="seen">What the lines cut: a zigzag keeps clear of its edges, or it could not be told from them.</param>
    public static IEnumerable<BreakLine> Of(Section section, Bounds clip, OnPaper paper, IReadOnlyList<Region> seen)
    {
        foreach (var run in section.Runs)
        {
            var (a, b) = run.Heading switch
            {
                Heading.Down => (new Point(run.Side.From, clip.Bottom), new Point(run.Side.To, clip.Bottom)),
                Heading.Up => (new Point(run.Side.From, clip.Top), new Point(run.Side.To, clip.Top)),
                _ => (new Point(clip.Right, run.Side.From), new Point(clip.Right, run.Side.To)),
            };
            var (from, to) = (paper.At(a), paper.At(b));
            if (from.X > to.X)
            {
                (from, to) = (to, from);
            }

            var vertical = run.Heading == Heading.Along;
            var past = vertical ? new PaperPoint(0, Past) : new PaperPoint(Past, 0);
            yield return new(run.Id, from - past, to + past, vertical, Zigzags(from - past, to + past, seen));
        }
    }

    /// <summary>A straight line with one zigzag near the middle, two where it is long; the middle stroke is the steepest.</summary>
    public static Stroke Draw(BreakLine line)
    {
        var length = (line.To - line.From).Length;
        var along = 1 / length * (line.To - line.From);
        var across = new PaperPoint(-along.Y, along.X);
        var points = new List<PaperPoint> { line.From };
        foreach (var middle in line.Zigzags)
        {
            var at = line.From + middle * along;
            points.AddRange([at - Half * along, at - Inner * along + Deep * across, at + Inner * along - Deep * across, at + Half * along]);
        }

        points.Add(line.To);
        return new(Rows.Break, points);
    }

    private static IReadOnlyList<double> Zigzags(PaperPoint from, PaperPoint to, IReadOnlyList<Region> seen)
    {
        var length = (to - from).Length;
        var crossings = seen.SelectMany(region => region.Cut(new(from.X, from.Y), new(to.X, to.Y))).SelectMany(piece => new[] { piece.From, piece.To })
            .Select(point => Math.Abs(point.X - from.X) + Math.Abs(point.Y - from.Y)).ToArray();
        double[] middles = length > TwoAbove ? [length / 3, 2 * length / 3] : [length / 2];
        return [.. middles.Select(middle => Clearest(middle, length / 6, crossings))];
    }

    private static double Clearest(double middle, double reach, double[] crossings)
    {
        const int Steps = 20;
        var best = (Worth: double.MinValue, At: middle);
        for (var step = 0; step <= 2 * Steps; step++)
        {
            // Outwards from the middle: 0, +1, −1, +2 …
            var at = middle + (step % 2 == 0 ? -1 : 1) * ((step + 1) / 2) * reach / Steps;
            var worth = Math.Min(Half + 1, crossings.Select(crossing => Math.Abs(crossing - at)).DefaultIfEmpty(Half + 1).Min()) - 0.05 * Math.Abs(at - middle);
            if (worth > best.Worth + 1e-9)
            {
                best = (worth, at);
            }
        }

        return best.At;
    }
}
