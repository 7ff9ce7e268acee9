using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>
/// Cuts the line families of a fill to their region. Each family is seen in its own axes, t along the lines and s across them in units of the
/// spacing, so that line k is s = k; every edge of the outline drops its crossings into the lines it passes, and pairs of crossings are inside.
/// </summary>
internal static class HatchClipper
{
    /// <summary>Shorter pieces, in mm, read as dirt; a dash that is shorter by its own definition stays where it is whole.</summary>
    public const double LeastStroke = 0.8;

    private const double Slack = 1e-9;
    private const int MostLines = 100_000;

    /// <summary>The visible strokes, family by family, line by line, from the lower end of each line up.</summary>
    /// <param name="dot">Length of the stroke that stands for a dash of 0, mm: the width of the line.</param>
    /// <exception cref="ArgumentException">A family without spacing, or with more than 100 000 lines in the region.</exception>
    public static List<Segment> Clip(Hatch hatch, double dot)
    {
        var strokes = new List<Segment>();
        foreach (var family in hatch.Families)
        {
            Clip(hatch, family, dot, strokes);
        }

        return strokes;
    }

    private static void Clip(Hatch hatch, LineFamily family, double dot, List<Segment> strokes)
    {
        if (!(family.Spacing > 0))
        {
            throw new ArgumentException($"A line family of {hatch.Fill} has no spacing.");
        }

        var axes = new Axes(family);
        var edges = Edges(hatch, axes);
        if (edges.Count == 0)
        {
            return;
        }

        var (first, last) = (int.MaxValue, int.MinValue);
        foreach (var edge in edges)
        {
            first = Math.Min(first, (int)Math.Ceiling(edge.Low));
            last = Math.Max(last, (int)Math.Ceiling(edge.High) - 1);
        }

        if (last < first)
        {
            return;
        }

        if (last - first > MostLines)
        {
            throw new ArgumentException($"A line family of {hatch.Fill} has more than {MostLines} lines in its region.");
        }

        var (starts, crossings) = Crossings(edges, first, last);
        for (var line = 0; line <= last - first; line++)
        {
            var row = crossings.AsSpan(starts[line], starts[line + 1] - starts[line]);
            row.Sort();
            for (var i = 0; i + 1 < row.Length; i += 2)
            {
                Dash(axes, family, line + first, row[i], row[i + 1], dot, strokes);
            }
        }
    }

    private static List<Edge> Edges(Hatch hatch, Axes axes)
    {
        var edges = new List<Edge>(hatch.Outline.Count);
        AddRing(hatch.Outline);
        foreach (var hole in hatch.Holes)
        {
            AddRing(hole);
        }

        return edges;

        void AddRing(IReadOnlyList<PaperPoint> ring)
        {
            if (ring.Count == 0)
            {
                return;
            }

            var before = axes.Of(ring[^1]);
            foreach (var corner in ring)
            {
                var here = axes.Of(corner);
                // Edges along the lines cross none of them.
                if (here.S != before.S)
                {
                    edges.Add(here.S > before.S ? new(before.S, before.T, here.S, here.T) : new(here.S, here.T, before.S, before.T));
                }

                before = here;
            }
        }
    }

    // A line through a corner meets the edge that begins there and not the one that ends: with half-open edges the crossings of every line are even.
    private static (int[] Starts, double[] Crossings) Crossings(List<Edge> edges, int first, int last)
    {
        var starts = new int[last - first + 2];
        foreach (var edge in edges)
        {
            for (var line = (int)Math.Ceiling(edge.Low); line < edge.High; line++)
            {
                starts[line - first + 1]++;
            }
        }

        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        var crossings = new double[starts[^1]];
        var next = (int[])starts.Clone();
        foreach (var edge in edges)
        {
            var slope = (edge.HighT - edge.LowT) / (edge.High - edge.Low);
            for (var line = (int)Math.Ceiling(edge.Low); line < edge.High; line++)
            {
                crossings[next[line - first]++] = edge.LowT + (line - edge.Low) * slope;
            }
        }

        return (starts, crossings);
    }

    private static void Dash(Axes axes, LineFamily family, int line, double from, double to, double dot, List<Segment> strokes)
    {
        var period = 0.0;
        foreach (var dash in family.Dashes)
        {
            period += Math.Abs(dash);
        }

        if (period <= 0)
        {
            if (to - from >= LeastStroke - Slack)
            {
                strokes.Add(axes.Segment(line, from, to));
            }

            return;
        }

        var origin = line * family.Shift;
        for (var start = origin + Math.Floor((from - origin) / period) * period; start < to;)
        {
            foreach (var dash in family.Dashes)
            {
                if (dash == 0 && start >= from && start <= to)
                {
                    strokes.Add(axes.Segment(line, start - dot / 2, start + dot / 2));
                }
                else if (dash > 0)
                {
                    var (a, b) = (Math.Max(start, from), Math.Min(start + dash, to));
                    if (b - a >= Math.Min(LeastStroke, dash) - Slack)
                    {
                        strokes.Add(axes.Segment(line, a, b));
                    }
                }

                start += Math.Abs(dash);
            }
        }
    }

    private readonly record struct Edge(double Low, double LowT, double High, double HighT);

    private readonly struct Axes(LineFamily family)
    {
        private readonly PaperPoint _base = family.Base;
        private readonly double _spacing = family.Spacing;
        private readonly (double Sin, double Cos) _turn = Turn(family.Angle);

        public (double T, double S) Of(PaperPoint point)
        {
            var (x, y) = (point.X - _base.X, point.Y - _base.Y);
            return (x * _turn.Cos + y * _turn.Sin, (y * _turn.Cos - x * _turn.Sin) / _spacing);
        }

        public Segment Segment(int line, double from, double to)
        {
            var across = line * _spacing;
            var (x, y) = (_base.X - across * _turn.Sin, _base.Y + across * _turn.Cos);
            return new(x + from * _turn.Cos, y + from * _turn.Sin, x + to * _turn.Cos, y + to * _turn.Sin);
        }

        // Right angles are exact, else a level line of a fill would creep across a long outline.
        private static (double Sin, double Cos) Turn(double degrees) => ((degrees % 360 + 360) % 360) switch
        {
            0 => (0, 1),
            90 => (1, 0),
            180 => (0, -1),
            270 => (-1, 0),
            var other => Math.SinCos(other * Math.PI / 180),
        };
    }
}
