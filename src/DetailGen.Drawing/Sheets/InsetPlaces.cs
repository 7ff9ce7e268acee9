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
    private readonly IReadOnlyList<InsetRing> _others;
    private readonly double _apart;
    private readonly bool _further;

    /// <summary>What no other ring shows yet.</summary>
    private readonly (Point At, int Sheet)[] _corners;

    /// <summary>Rings that can be drawn, by their radius.</summary>
    private readonly Dictionary<double, Try[]> _known = [];

    /// <param name="window">What of the section is drawn, model mm.</param>
    /// <param name="others">Rings that there are; what they show does not count again.</param>
    /// <param name="apart">Between two rings, true mm.</param>
    /// <param name="further">Whether there may be one more after this.</param>
    internal InsetPlaces(Section section, Bounds window, IReadOnlyList<InsetRing> others, double apart, bool further)
    {
        (_shown, _others, _apart, _further) = (BreakLines.Clip(section, window), others, apart, further);
        _corners =
        [
            .. section.Parts.Where(part => part is { Sheet: not null, Presence: Presence.Cut } && (part.Roles & (Roles.WaterBarrier | Roles.VapourControl)) != 0)
                .SelectMany((part, i) => part.Sheet!.Face.Where(_shown.Contains).Where(at => !others.Any(other => Shows(other, at))).Select(at => (at, i))),
        ];
    }

    /// <summary>
    /// Rings to try, that first which shows most, with what a further one beside it can show. Of two that show as much the larger goes first, then the one with its corners nearest the middle.
    /// </summary>
    /// <param name="radii">True mm.</param>
    internal IEnumerable<InsetRing> Ranked(IReadOnlyList<double> radii)
    {
        Try[] all = [.. radii.SelectMany(Known)];
        Array.Sort(all, Try.Better);
        var best = all.Take(Tries);
        return (_further ? best.OrderByDescending(one => one.Count + Further(one.Ring, all)) : best).Select(one => one.Ring);
    }

    private Try[] Known(double radius)
    {
        if (!_known.TryGetValue(radius, out var known))
        {
            Bounds whole = new(_shown.Left + radius, _shown.Bottom + radius, _shown.Right - radius, _shown.Top - radius);
            known = [.. _corners.Select(corner => corner.At).Distinct().SelectMany(at => Round(at, radius)).Distinct().Where(whole.Contains)
                .Select(at => new InsetRing(at, radius)).Where(ring => _others.All(other => other.IsApart(ring, _apart))).Select(Tried).Where(one => one.Sheets >= Least)];
            _known.Add(radius, known);
        }

        return known;
    }

    private Try Tried(InsetRing ring)
    {
        var (count, sheets, last, sum) = (0, 0, -1, 0.0);
        foreach (var (at, sheet) in _corners)
        {
            if (Shows(ring, at))
            {
                count++;
                sheets += sheet == last ? 0 : 1; // a sheet's corners follow each other
                last = sheet;
                sum += (at - ring.At).Length;
            }
        }

        return new(ring, count, sheets, Math.Round(sum, 3));
    }

    // The most that a ring beside it can show of what it does not show.
    private int Further(InsetRing ring, Try[] all)
    {
        var most = 0;
        foreach (var other in all)
        {
            if (other.Count > most && ring.IsApart(other.Ring, _apart))
            {
                var shown = 0;
                foreach (var (at, _) in _corners)
                {
                    shown += Shows(other.Ring, at) && !Shows(ring, at) ? 1 : 0;
                }

                most = Math.Max(most, shown);
            }
        }

        return most;
    }

    private static bool Shows(InsetRing ring, Point corner) => (corner - ring.At).Length < Near * ring.Radius;

    private static IEnumerable<Point> Round(Point at, double radius) =>
        from off in Off
        from way in Enumerable.Range(0, off == 0 ? 1 : Ways)
        let direction = Math.SinCos(2 * Math.PI * way / Ways)
        select at + off * radius * new Point(direction.Cos, direction.Sin);

    /// <param name="Count">Corners that it shows.</param>
    /// <param name="Sheets">Of so many sheets.</param>
    /// <param name="Spread">How far the corners are from its middle, together, mm.</param>
    private readonly record struct Try(InsetRing Ring, int Count, int Sheets, double Spread)
    {
        internal static int Better(Try a, Try b) =>
            (-a.Count, -a.Ring.Radius, a.Spread, -a.Ring.At.Y, a.Ring.At.X).CompareTo((-b.Count, -b.Ring.Radius, b.Spread, -b.Ring.At.Y, b.Ring.At.X));
    }
}

/// <summary>Round what an inset shows: its middle and its radius in model mm.</summary>
internal readonly record struct InsetRing(Point At, double Radius)
{
    internal bool IsApart(InsetRing other, double by) => (At - other.At).Length > Radius + other.Radius + by;
}
