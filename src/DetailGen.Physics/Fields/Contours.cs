namespace DetailGen.Physics.Fields;

/// <summary>Lines along which a figure over a mesh of quadratic elements has one value.</summary>
internal sealed class Contours
{
    /// <summary>Pieces of a side: the parabolas of the field are followed by chords, which a finer grid brings closer by the square.</summary>
    private const int Pieces = 4;

    /// <summary>Where the figure jumps by more than this between triangles, there are two of it.</summary>
    private const double Jump = 1e-6;

    /// <summary>Six values of a triangle: at the corners, then at the middles of the sides opposite these.</summary>
    internal delegate void Nodes(int triangle, Span<double> values);

    private readonly Lazy<Grid> _grid;

    /// <param name="least">What is added to <paramref name="step"/> times each value.</param>
    internal Contours(Mesh mesh, Nodes values, double least, double step) => _grid = new(() => Sampled(mesh, values, least, step));

    internal (double Least, double Most) Range => (_grid.Value.Values.Min(), _grid.Value.Values.Max());

    /// <summary>The lines of one value, chained as far as they go, what is greater on the left; a closed one ends where it begins.</summary>
    /// <returns>mm; open lines first, each kind in the order of the mesh.</returns>
    internal IReadOnlyList<IReadOnlyList<FieldPlace>> Of(double value)
    {
        var grid = _grid.Value;

        // A crossed edge starts a line in one of its triangles and ends one in the other; on the surface it does only one of them.
        var next = new Dictionary<(int, int), (int, int)>();
        var order = new List<(int, int)>();
        foreach (var corners in grid.Triangles)
        {
            ((int, int)? from, (int, int)? to) = (null, null);
            for (var i = 0; i < 3; i++)
            {
                var (a, b) = (corners[i], corners[(i + 1) % 3]);
                var (here, then) = (grid.Values[a] >= value, grid.Values[b] >= value);
                (from, to) = here == then ? (from, to) : here ? (Key(a, b), to) : (from, Key(a, b));
            }

            if (from is { } start && to is { } end)
            {
                next.Add(start, end);
                order.Add(start);
            }
        }

        var ends = next.Values.ToHashSet();
        var lines = new List<IReadOnlyList<FieldPlace>>();
        foreach (var start in order.Where(edge => !ends.Contains(edge)).Concat(order))
        {
            if (!next.ContainsKey(start))
            {
                continue;
            }

            var line = new List<FieldPlace> { Crossing(grid, start, value) };
            for (var at = start; next.Remove(at, out var then); at = then)
            {
                var place = Crossing(grid, then, value);
                if (place != line[^1])
                {
                    line.Add(place);
                }
            }

            if (line.Count > 1)
            {
                lines.Add(line);
            }
        }

        return lines;
    }

    private static FieldPlace Crossing(Grid grid, (int A, int B) edge, double value)
    {
        var ((ax, ay), (bx, by)) = (grid.Places[edge.A], grid.Places[edge.B]);
        var share = (value - grid.Values[edge.A]) / (grid.Values[edge.B] - grid.Values[edge.A]);
        return new(ax + (share * (bx - ax)), ay + (share * (by - ay)));
    }

    private static Grid Sampled(Mesh mesh, Nodes valuesOf, double least, double step)
    {
        var places = new List<(double X, double Y)>();
        var values = new List<double>();
        var known = new Dictionary<(int, int, int), int>();
        var triangles = new List<int[]>();
        var row = new int[Pieces + 1, Pieces + 1];
        var v = new double[Elements.Nodes];
        for (var t = 0; t < mesh.Triangles.Length; t++)
        {
            var triangle = mesh.Triangles[t];
            valuesOf(t, v);
            for (var i = 0; i <= Pieces; i++)
            {
                for (var j = 0; i + j <= Pieces; j++)
                {
                    row[i, j] = Number(triangle, i, j);
                }
            }

            for (var i = 0; i < Pieces; i++)
            {
                for (var j = 0; i + j < Pieces; j++)
                {
                    triangles.Add([row[i, j], row[i + 1, j], row[i, j + 1]]);
                    if (i + j + 1 < Pieces)
                    {
                        triangles.Add([row[i + 1, j], row[i + 1, j + 1], row[i, j + 1]]);
                    }
                }
            }
        }

        return new(places, values, triangles);

        // A place on a corner or side is one for all triangles there.
        int Number(Triangle triangle, int i, int j)
        {
            var rest = Pieces - i - j;
            (int, int, int)? shared = (rest, i, j) switch
            {
                (Pieces, _, _) => (triangle.A, triangle.A, 0),
                (_, Pieces, _) => (triangle.B, triangle.B, 0),
                (_, _, Pieces) => (triangle.C, triangle.C, 0),
                (_, _, 0) => On(triangle.A, triangle.B, i),
                (_, 0, _) => On(triangle.A, triangle.C, j),
                (0, _, _) => On(triangle.B, triangle.C, j),
                _ => null,
            };
            double a = (double)rest / Pieces, b = (double)i / Pieces, c = (double)j / Pieces;
            var value = (v[0] * a * ((2 * a) - 1)) + (v[1] * b * ((2 * b) - 1)) + (v[2] * c * ((2 * c) - 1)) + (4 * ((v[3] * b * c) + (v[4] * c * a) + (v[5] * a * b)));
            value = least + (step * value);
            if (shared is { } key && known.TryGetValue(key, out var number) && Math.Abs(values[number] - value) <= Jump * Math.Abs(step))
            {
                return number;
            }

            var ((ax, ay), (bx, by), (cx, cy)) = (mesh.Places[triangle.A], mesh.Places[triangle.B], mesh.Places[triangle.C]);
            places.Add(((a * ax) + (b * bx) + (c * cx), (a * ay) + (b * by) + (c * cy)));
            values.Add(value);
            if (shared is { } own)
            {
                known[own] = places.Count - 1;
            }

            return places.Count - 1;
        }
    }

    private static (int, int) Key(int a, int b) => a < b ? (a, b) : (b, a);

    // counted from the smaller corner, whichever triangle asks
    private static (int, int, int) On(int from, int to, int pieces) => from < to ? (from, to, pieces) : (to, from, Pieces - pieces);

    private sealed record Grid(List<(double X, double Y)> Places, List<double> Values, List<int[]> Triangles);
}
