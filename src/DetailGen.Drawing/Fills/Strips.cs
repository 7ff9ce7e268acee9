using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>A stretch of a part between its two long faces. u runs along the axis, v to its left; both in paper mm from the paper's origin.</summary>
public sealed class Strip
{
    private readonly PaperPoint _axis;
    private readonly List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)> _slabs;

    internal Strip(PaperPoint axis, List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)> slabs) => (_axis, _slabs) = (axis, slabs);

    public double Start => _slabs[0].U0;

    public double End => _slabs[^1].U1;

    /// <summary>Stations between the ends where a face may turn.</summary>
    public IEnumerable<double> Turns => _slabs.Skip(1).Select(slab => slab.U0);

    public PaperPoint At(double u, double v) => u * _axis + v * Planes.Left(_axis);

    /// <summary>The faces at a station, right of the axis first, and how steeply each runs there.</summary>
    public (double Lo, double Hi, double LoSlope, double HiSlope) Faces(double u)
    {
        var slab = _slabs[0];
        foreach (var next in _slabs)
        {
            if (next.U0 > u)
            {
                break;
            }

            slab = next;
        }

        var length = slab.U1 - slab.U0;
        var part = Math.Clamp((u - slab.U0) / length, 0, 1);
        return (slab.Lo0 + part * (slab.Lo1 - slab.Lo0), slab.Hi0 + part * (slab.Hi1 - slab.Hi0), (slab.Lo1 - slab.Lo0) / length, (slab.Hi1 - slab.Hi0) / length);
    }

    public double Width(double u)
    {
        var (lo, hi, _, _) = Faces(u);
        return hi - lo;
    }

    /// <summary>The longest stretch that is at least that wide; null where there is none.</summary>
    public (double From, double To)? Wide(double least)
    {
        (double From, double To)? best = null;
        double? open = null;
        void Close(double at)
        {
            if (open is { } from && (best is null || at - from > best.Value.To - best.Value.From))
            {
                best = (from, at);
            }

            open = null;
        }

        foreach (var slab in _slabs)
        {
            var (w0, w1) = (slab.Hi0 - slab.Lo0 - least, slab.Hi1 - slab.Lo1 - least);
            var turn = slab.U0 + (slab.U1 - slab.U0) * w0 / (w0 - w1);
            if (w0 >= 0)
            {
                open ??= slab.U0;
                if (w1 < 0)
                {
                    Close(turn);
                }
            }
            else
            {
                Close(slab.U0);
                if (w1 >= 0)
                {
                    open = turn;
                }
            }
        }

        Close(End);
        return best;
    }
}

/// <summary>Cuts a region into strips across an axis: where the faces jump, a strip ends.</summary>
public static class Strips
{
    private const double Steep = 3;

    public static IReadOnlyList<Strip> Of(Area area, PaperPoint axis)
    {
        var left = Planes.Left(axis);
        var rings = area.Rings.Select(ring => ring.Select(point => (U: Planes.Dot(point, axis), V: Planes.Dot(point, left))).ToArray()).ToArray();
        var stations = rings.SelectMany(ring => ring.Select(point => point.U)).Order().ToList();
        var events = new List<double>();
        foreach (var station in stations)
        {
            if (events.Count == 0 || station - events[^1] > 0.002)
            {
                events.Add(station);
            }
        }

        var done = new List<List<(double, double, double, double, double, double)>>();
        var open = new List<List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)>>();
        for (var i = 0; i + 1 < events.Count; i++)
        {
            var slabs = Slabs(rings, events[i], events[i + 1]);
            var next = new List<List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)>>();
            foreach (var slab in slabs)
            {
                var before = open.FirstOrDefault(chain => Continues(chain[^1], slab));
                if (before is not null)
                {
                    open.Remove(before);
                    before.Add(slab);
                    next.Add(before);
                }
                else
                {
                    next.Add([slab]);
                }
            }

            done.AddRange(open);
            open = next;
        }

        done.AddRange(open);
        return [.. done.Select(Blunt).Where(chain => chain.Count > 0).Select(chain => new Strip(axis, chain))];
    }

    // An end cut a little out of square tapers to nothing within a hair: a strip ends where it has its width.
    private static List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)> Blunt(List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)> chain)
    {
        static double Steepness((double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1) slab) =>
            ((slab.Hi1 - slab.Lo1) - (slab.Hi0 - slab.Lo0)) / (slab.U1 - slab.U0);
        var (first, last) = (0, chain.Count);
        while (last - first > 1 && Steepness(chain[first]) > Steep)
        {
            first++;
        }

        while (last - first > 1 && Steepness(chain[last - 1]) < -Steep)
        {
            last--;
        }

        return chain[first..last];
    }

    // A nibble in a face, such as the end of a band, must not end a strip; a rebate or the end of a board must.
    private static bool Continues(
        (double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1) before, (double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1) after)
    {
        var jump = Math.Abs(before.Lo1 - after.Lo0) + Math.Abs(before.Hi1 - after.Hi0);
        var width = Math.Max(before.Hi1 - before.Lo1, after.Hi0 - after.Lo0);
        return jump < 0.05 || jump <= 0.3 * width && jump < 1.6;
    }

    private static List<(double U0, double Lo0, double Hi0, double U1, double Lo1, double Hi1)> Slabs((double U, double V)[][] rings, double from, double to)
    {
        var middle = (from + to) / 2;
        var crossings = new List<(double Middle, double V0, double V1)>();
        foreach (var ring in rings)
        {
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                if ((ring[i].U > middle) != (ring[j].U > middle))
                {
                    var slope = (ring[i].V - ring[j].V) / (ring[i].U - ring[j].U);
                    double V(double u) => ring[j].V + (u - ring[j].U) * slope;
                    crossings.Add((V(middle), V(from), V(to)));
                }
            }
        }

        crossings.Sort((a, b) => a.Middle.CompareTo(b.Middle));
        var slabs = new List<(double, double, double, double, double, double)>();
        for (var i = 0; i + 1 < crossings.Count; i += 2)
        {
            var (lo, hi) = (crossings[i], crossings[i + 1]);
            slabs.Add((from, lo.V0, Math.Max(lo.V0, hi.V0), to, lo.V1, Math.Max(lo.V1, hi.V1)));
        }

        return slabs;
    }
}
