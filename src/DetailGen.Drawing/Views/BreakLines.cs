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

    public static IEnumerable<BreakLine> Of(Section section, Bounds clip, OnPaper paper)
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
            yield return new(run.Id, from - past, to + past, vertical);
        }
    }

    /// <summary>A straight line with one zigzag in the middle, two where it is long; the middle stroke is the steepest.</summary>
    public static Stroke Draw(BreakLine line)
    {
        var length = (line.To - line.From).Length;
        var along = 1 / length * (line.To - line.From);
        var across = new PaperPoint(-along.Y, along.X);
        var points = new List<PaperPoint> { line.From };
        foreach (var middle in length > TwoAbove ? new[] { length / 3, 2 * length / 3 } : [length / 2])
        {
            var at = line.From + middle * along;
            points.AddRange([at - Half * along, at - Inner * along + Deep * across, at + Inner * along - Deep * across, at + Half * along]);
        }

        points.Add(line.To);
        return new(Rows.Break, points);
    }
}
