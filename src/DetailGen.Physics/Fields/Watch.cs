namespace DetailGen.Physics.Fields;

/// <summary>Single temperatures under one film while the mesh gets finer: the coldest one inside and those asked for, and whether they have settled. The bounds of the energy say little of them.</summary>
internal sealed class Watch
{
    private const double Settled = 5e-5; // share of the temperature step by which the places watched may still change,
    private const double SettledOfError = 0.05; // or this share of the error wanted where that is more: who wants 1 % wants to be quick
    private const double Rival = 1e-3; // share of the temperature step within which another place may yet prove to be the coldest
    private const double Further = 4; // times what a place moved by in a round, or is in doubt by, that it may still move by; our choice
    private const int MostRivals = 40;
    private const double Reach = 0.001; // mm
    private const double Coarser = 1.5; // times as long are the sides at a place where they have been halved since
    private readonly FieldCase _asked;
    private readonly double _settled;
    private readonly List<TemperatureField> _met = [];
    private readonly Dictionary<int, double> _moved = []; // by corner watched before, what it moved by since
    private int _halved; // how often the triangles at the places watched were halved since the field before

    internal Watch(FieldCase asked) => (_asked, _settled) = (asked, Math.Max(Settled, SettledOfError * asked.WantedError));

    internal TemperatureField Last => _met[^1];

    internal Mesh? MeshBefore => _met.Count > 1 ? _met[^2].Mesh : null;

    /// <summary>A field whose gap is this small a share of its energy has nothing to settle.</summary>
    internal static double Exact => Settled * Settled;

    /// <summary>The watch of another film on the same two last meshes. Points are of the heat flow's film.</summary>
    internal Watch Again(Func<Mesh, TemperatureField> field)
    {
        var again = new Watch(_asked with { Points = [] }) { _halved = _halved };
        if (MeshBefore is { } before)
        {
            again.Meet(field(before));
            foreach (var corner in _moved.Keys.Where(corner => corner < before.Places.Length))
            {
                again._moved[corner] = double.PositiveInfinity;
            }
        }

        again.Meet(field(Last.Mesh));
        return again;
    }

    internal void Meet(TemperatureField field) => _met.Add(field);

    /// <summary>Refined round the places that <see cref="Open"/> gave.</summary>
    internal Mesh Around(Mesh mesh, (double X, double Y)[] places, int times)
    {
        _halved = times;
        for (var i = 0; i < times && places.Length > 0; i++)
        {
            mesh = mesh.Refine(Refinement.Around(mesh, places)).Mesh;
        }

        return mesh;
    }

    /// <summary>Places that have not settled: those asked for, and those that are coldest inside or may yet prove to be. What a corner moved by when the mesh was refined round it tells
    /// more of what it may still move by than the difference of the two fields, which at some corners never vanishes. Of a coldest place round which the mesh was never refined, nothing is
    /// known: it is open.</summary>
    /// <param name="doubt">Of a side: by how much its temperatures may be off.</param>
    internal (double X, double Y)[] Open(Func<Side, double> doubt)
    {
        var before = _met.Count > 1 ? _met[^2] : null;
        foreach (var corner in _moved.Keys.ToArray())
        {
            _moved[corner] = Math.Abs(Last.Values[corner] - before!.Values[corner]);
        }

        var left = Left(_halved);
        var lows = Last.Lows(line => Inside(line) && _asked.Boundary[line].Film > 0, doubt);
        var limit = lows.Count == 0 ? 0 : lows[0].Value;
        var fell = before is not null && Coldest(before) is { } then ? Math.Abs(limit - then.Value) : double.PositiveInfinity;
        bool IsOpen(Low low) => low.Corner >= 0 && _moved.TryGetValue(low.Corner, out var known) ? left * known > _settled && low.Value - Math.Max(Rival, Further * known) <= limit
            : low.Value - Rival <= limit && fell > _settled || low.Corner >= 0 && low.Doubt > _settled && low.Value - Math.Max(Rival, Further * low.Doubt) <= limit;
        var open = lows.Where((low, i) => IsOpen(low) || (i == 0 && CoarserAt(low) is null)).Take(MostRivals).ToArray();
        foreach (var low in open.Where(low => low.Corner >= 0))
        {
            _moved[low.Corner] = double.PositiveInfinity;
        }

        var points = _asked.Points.Where(point => before is null
            || Math.Abs(before.At(point.At.X, point.At.Y, Reach)!.Value - Last.At(point.At.X, point.At.Y, Reach)!.Value) > _settled);
        return [.. points.Select(point => (point.At.X, point.At.Y)), .. open.Select(low => (low.X, low.Y))];
    }

    /// <summary>The least temperature factor, and by how much it changed since the mesh round its place was last refined: where that was never done, nothing is said.</summary>
    internal TemperatureFactor? Factor(double origin, double step)
    {
        var (inside, outside) = (_asked.Temperatures(FieldSide.Internal), _asked.Temperatures(FieldSide.External));
        if (inside.Length == 0 || outside.Length == 0 || inside.Max() == outside.Min() || Coldest(Last) is not { } at)
        {
            return null;
        }

        var share = step / (inside.Max() - outside.Min());
        double? change = CoarserAt(at) is { } before && Coldest(before) is { } then ? Math.Abs((at.Value - then.Value) * share) : null;
        return new((origin + (step * at.Value) - outside.Min()) / (inside.Max() - outside.Min()), new(at.X, at.Y), change);
    }

    private TemperatureField? CoarserAt(Low low)
    {
        var size = SizeAt(Last.Mesh, low);
        return _met.FindLast(field => SizeAt(field.Mesh, low) > Coarser * size);
    }

    /// <summary>Length of the shortest inside side at a place, mm.</summary>
    private double SizeAt(Mesh mesh, Low low) => mesh.Sides.Where(side => side.Line >= 0 && Inside(side.Line)).Where(side =>
    {
        var (p, q) = (mesh.Places[side.A], mesh.Places[side.B]);
        return double.Hypot(p.X - low.X, p.Y - low.Y) + double.Hypot(q.X - low.X, q.Y - low.Y) <= mesh.Length(side) + Refinement.Finest;
    }).Select(mesh.Length).DefaultIfEmpty(0).Min();

    // What a corner may still move by, as a share of what it moved by: where the temperature goes with the root of the distance, the error goes with the side, which two halvings of a
    // triangle halve; twice that, for the rest of the mesh has its say too. Ten halvings left 1/22 to 1/350 at corners of the check cases.
    private static double Left(int halved) => Math.Min(1, 2 / Math.Pow(2, halved / 2.0));

    private Low? Coldest(TemperatureField field) => field.Lows(Inside, _ => 0) is [var low, ..] ? low : null;

    private bool Inside(int line) => _asked.Boundary[line].Environment?.Side == FieldSide.Internal;
}
