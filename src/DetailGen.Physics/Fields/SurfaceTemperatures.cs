using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>A place on a surface.</summary>
/// <param name="Along">mm from where the surface begins.</param>
/// <param name="Temperature">°C.</param>
public readonly record struct SurfacePlace(FieldPlace At, double Along, double Temperature);

/// <summary>The temperatures along one surface.</summary>
/// <param name="Places">In the order of the surface, with its ends: at every corner of the mesh and at the middle of every side.</param>
public sealed record SurfaceProfile(FieldEnvironment Environment, IReadOnlyList<SurfacePlace> Places);

/// <summary>Temperatures of the surfaces of a solved field: boundary lines of one environment that go on from one another are one surface.</summary>
public sealed class SurfaceTemperatures
{
    private const double Joined = 1e-3; // mm between the ends of lines that go on from one another
    private const double Same = 1e-6; // mm between places that are one
    private readonly Lazy<IReadOnlyList<SurfaceProfile>> _profiles;

    internal SurfaceTemperatures(TemperatureField field, FieldCase asked, double origin, double step) => _profiles = new(() =>
    {
        var sides = field.Mesh.Sides.Select((side, at) => (side.Line, At: at)).Where(one => one.Line >= 0).ToLookup(one => one.Line, one => one.At);
        return [.. Chained(asked).Select(surface => new SurfaceProfile(surface.Air, Places(field, [.. surface.Lines.Select(line => (asked.Boundary[line].Line, sides[line]))], origin, step)))];
    });

    /// <summary>In the order in which the case's boundary names them.</summary>
    public IReadOnlyList<SurfaceProfile> Profiles => _profiles.Value;

    // numbers of lines, from the one that begins where no other ends; those that run in a ring begin with the first of the case
    private static List<(FieldEnvironment Air, List<int> Lines)> Chained(FieldCase asked)
    {
        var surfaces = new List<(FieldEnvironment Air, List<int> Lines)>();
        var left = Enumerable.Range(0, asked.Boundary.Length).Where(line => asked.Boundary[line].Environment is not null).ToList();
        while (left.Count > 0)
        {
            var lines = new List<int> { left[0] };
            left.RemoveAt(0);
            var air = asked.Boundary[lines[0]].Environment!;
            while (left.FindIndex(line => asked.Boundary[line].Environment == air && Meets(asked.Boundary[lines[^1]].Line[^1], asked.Boundary[line].Line[0])) is >= 0 and var after)
            {
                lines.Add(left[after]);
                left.RemoveAt(after);
            }

            while (left.FindIndex(line => asked.Boundary[line].Environment == air && Meets(asked.Boundary[line].Line[^1], asked.Boundary[lines[0]].Line[0])) is >= 0 and var before)
            {
                lines.Insert(0, left[before]);
                left.RemoveAt(before);
            }

            surfaces.Add((air, lines));
        }

        return surfaces;
    }

    private static bool Meets(FieldPlace one, FieldPlace other) => Apart(one, other) < Joined;

    private static List<SurfacePlace> Places(TemperatureField field, IReadOnlyList<(ImmutableArray<FieldPlace> Line, IEnumerable<int> Sides)> surface, double origin, double step)
    {
        var places = new List<SurfacePlace>();
        var start = 0.0;
        foreach (var (line, sides) in surface)
        {
            foreach (var at in sides)
            {
                var side = field.Mesh.Sides[at];
                var (p, q) = (Place(field.Mesh.Places[side.A]), Place(field.Mesh.Places[side.B]));
                var (a, b, middle) = field.On(at);
                FieldPlace half = new((p.X + q.X) / 2, (p.Y + q.Y) / 2);

                // The ends of a side lie on the piece of the line on which its middle lies, even where the line comes back to a place.
                var piece = Enumerable.Range(1, line.Length - 1).MinBy(i => Off(line[i - 1], line[i], half));
                var before = start + Enumerable.Range(1, piece - 1).Sum(i => Apart(line[i - 1], line[i]));
                foreach (var (place, value) in new[] { (p, a), (half, middle), (q, b) })
                {
                    places.Add(new(place, before + Math.Min(Apart(line[piece - 1], place), Apart(line[piece - 1], line[piece])), origin + (step * value)));
                }
            }

            start += Enumerable.Range(1, line.Length - 1).Sum(i => Apart(line[i - 1], line[i]));
        }

        places.Sort((one, other) => one.Along.CompareTo(other.Along));
        return [.. places.Where((place, i) => i == 0 || place.Along > places[i - 1].Along + Same)];
    }

    private static FieldPlace Place((double X, double Y) at) => new(at.X, at.Y);

    private static double Apart(FieldPlace one, FieldPlace other) => double.Hypot(one.X - other.X, one.Y - other.Y);

    // how much longer the way over a place is than the piece
    private static double Off(FieldPlace from, FieldPlace to, FieldPlace at) => Apart(from, at) + Apart(at, to) - Apart(from, to);
}
