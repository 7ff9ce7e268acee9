using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where a section is too fine for its scale: where the ends and corners of the sheets that stop water and vapour lie close, as at the head of an upstand, the outlet of a tray, or a lap.</summary>
internal sealed class InsetPlaces
{
    /// <summary>Sheets that come together to be worth an inset.</summary>
    private const int Least = 2;

    /// <summary>A corner counts so near the middle of a ring, as a share of its radius: nearer its edge little is seen of what is round it.</summary>
    private const double Near = 0.8;

    /// <summary>How far off a corner the middle of a ring is tried, as shares of the radius.</summary>
    private static readonly double[] Off = [0, 0.2, 0.4, 0.6];

    private const int Ways = 8;

    /// <summary>The best are tried, and no more: where a ring or its letter finds no room there, it finds none elsewhere that shows much.</summary>
    private const int Tries = 150;

    private readonly Bounds _shown;
    private readonly (Point At, int Sheet)[] _corners;

    /// <param name="window">What of the section is drawn, model mm.</param>
    internal InsetPlaces(Section section, Bounds window)
    {
        _shown = BreakLines.Clip(section, window);
        _corners =
        [
            .. section.Parts.Where(part => part is { Sheet: not null, Presence: Presence.Cut } && (part.Roles & (Roles.WaterBarrier | Roles.VapourControl)) != 0)
                .SelectMany((part, i) => part.Sheet!.Face.Where(_shown.Contains).Select(at => (at, i))),
        ];
    }

    /// <summary>
    /// Rings to try, that first which shows most, with what a further one beside it can show: what other rings show does not count again. Of two that show as much the larger goes first,
    /// then the one with its corners nearest the middle.
    /// </summary>
    /// <param name="radii">True mm.</param>
    /// <param name="others">Rings that there are.</param>
    /// <param name="apart">Between two rings, true mm.</param>
    /// <param name="further">Whether there may be one more after this.</param>
    internal IEnumerable<InsetRing> Ranked(IReadOnlyList<double> radii, IReadOnlyList<InsetRing> others, double apart, bool further)
    {
        var open = _corners.Where(corner => !others.Any(other => Shows(other, corner.At))).ToArray();
        var tries =
            from radius in radii
            let whole = new Bounds(_shown.Left + radius, _shown.Bottom + radius, _shown.Right - radius, _shown.Top - radius)
            from at in open.SelectMany(corner => Round(corner.At, radius)).Distinct()
            let ring = new InsetRing(at, radius)
            where whole.Contains(at) && others.All(other => other.IsApart(ring, apart))
            let shown = Array.FindAll(open, corner => Shows(ring, corner.At))
            where shown.Select(corner => corner.Sheet).Distinct().Count() >= Least
            orderby shown.Length descending, radius descending, Math.Round(shown.Sum(corner => (corner.At - at).Length), 3), at.Y descending, at.X
            select new Try(ring, shown);
        Try[] best = [.. tries];
        return (further ? best.Take(Tries).OrderByDescending(one => one.Shown.Length + Further(one.Ring)) : best.Take(Tries)).Select(one => one.Ring);

        int Further(InsetRing ring)
        {
            var most = 0;
            foreach (var (other, shown) in best)
            {
                if (shown.Length <= most)
                {
                    break;
                }

                most = ring.IsApart(other, apart) ? Math.Max(most, shown.Count(corner => !Shows(ring, corner.At))) : most;
            }

            return most;
        }
    }

    private static bool Shows(InsetRing ring, Point corner) => (corner - ring.At).Length < Near * ring.Radius;

    private readonly record struct Try(InsetRing Ring, (Point At, int Sheet)[] Shown);

    private static IEnumerable<Point> Round(Point at, double radius) =>
        from off in Off
        from way in Enumerable.Range(0, off == 0 ? 1 : Ways)
        let direction = Math.SinCos(2 * Math.PI * way / Ways)
        select at + off * radius * new Point(direction.Cos, direction.Sin);
}

/// <summary>Round what an inset shows: its middle and its radius in model mm.</summary>
internal readonly record struct InsetRing(Point At, double Radius)
{
    internal bool IsApart(InsetRing other, double by) => (At - other.At).Length > Radius + other.Radius + by;
}
