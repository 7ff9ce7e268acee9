using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>Two-dimensional steady conduction (the calculation of ISO 10211): mesh, solve, refine where the two fluxes disagree, until the gap of the
/// bounds is small enough.</summary>
public static class FieldEngine
{
    private const int MostTriangles = 20_000;
    private const int MostRounds = 30;
    private const double Finest = 1e-6; // mm; sides shorter than this are not halved, lest corners run together in rounding
    private const double Marked = 0.6; // share of the gap that the marked triangles hold (W. Dörfler, SIAM J. Numer. Anal. 33 (1996), from memory)
    private const double Settled = 5e-5; // share of the temperature step by which the coldest place may still change in a calm round
    private const int Calm = 2;
    private const int Closer = 3; // times that the coldest place is refined in a round: solving costs, a few small triangles do not
    private const double Reach = 0.001; // mm

    /// <summary>The field of a case, or what is wrong with its geometry.</summary>
    public static FieldOutcome Solve(FieldCase asked)
    {
        var used = asked.Boundary.Where(b => b.Environment is not null).Select(b => b.Environment!).ToArray();
        var temperatures = used.Select(e => e.Temperature).Distinct().Order().ToArray();
        if (temperatures.Length == 1)
        {
            return new FieldOutcome.Refused([Messages.OneTemperature()]);
        }

        var (mesh, faults) = Arrangement.Build(asked);
        if (mesh is null || faults.Length > 0)
        {
            return new FieldOutcome.Refused(faults);
        }

        double coldest = temperatures[0], step = temperatures[^1] - coldest;
        var conditions = Conditions.Of(asked, coldest, step, null);
        var field = new MeshField(mesh, conditions);
        var outside = asked.Points.Where(p => field.At(p.At.X, p.At.Y, Reach) is null).Select(p => Messages.PointOutside(p.Name, p.At)).ToImmutableArray();
        if (outside.Length > 0)
        {
            return new FieldOutcome.Refused(outside);
        }

        field = field.Clash ? Everywhere(mesh, conditions) : Adapted(asked, field, conditions);
        return new FieldOutcome.Solved(Answer(asked, field, temperatures));
    }

    // The energy gap says little of a point value: in every round the coldest place is refined for its own sake too, until it settles.
    private static MeshField Adapted(FieldCase asked, MeshField field, Conditions conditions)
    {
        (double Value, double X, double Y)? Coldest(MeshField of) => of.Coldest(k => asked.Boundary[k].Environment?.Side == FieldSide.Internal);
        var (coldest, calm) = (Coldest(field), 0);
        for (var round = 0; round < MostRounds; round++)
        {
            var wide = field.Upper - field.Lower > asked.WantedError * field.Lower && field.Mesh.Triangles.Length < MostTriangles;
            var mesh = wide ? field.Mesh.Refine(LargestGaps(field)) : field.Mesh;
            for (var i = 0; i < Closer && coldest is { } at && (wide || calm < Calm); i++)
            {
                mesh = mesh.Refine(Around(mesh, at.X, at.Y));
            }

            if (mesh.Triangles.Length == field.Mesh.Triangles.Length)
            {
                break;
            }

            field = new(mesh, conditions);
            var now = Coldest(field);
            calm = now is { } one && coldest is { } other && Math.Abs(one.Value - other.Value) < Settled ? calm + 1 : 0;
            coldest = now;
        }

        return field;
    }

    private static bool[] LargestGaps(MeshField field)
    {
        var marked = new bool[field.Gaps.Length];
        var left = Marked * field.Gaps.Sum();
        foreach (var t in Enumerable.Range(0, field.Gaps.Length).OrderByDescending(t => field.Gaps[t]).ThenBy(t => t))
        {
            if (left <= 0)
            {
                break;
            }

            marked[t] = field.Mesh.Triangles[t].Sides.Max(field.Mesh.Length) > Finest;
            left -= field.Gaps[t];
        }

        return marked;
    }

    private static bool[] Around(Mesh mesh, double x, double y)
    {
        var marked = new bool[mesh.Triangles.Length];
        for (var t = 0; t < marked.Length; t++)
        {
            var triangle = mesh.Triangles[t];
            var (longest, reach) = (triangle.Sides.Max(mesh.Length), double.PositiveInfinity);
            foreach (var corner in new[] { triangle.A, triangle.B, triangle.C })
            {
                reach = Math.Min(reach, double.Hypot(mesh.Places[corner].X - x, mesh.Places[corner].Y - y));
            }

            marked[t] = reach <= 0.5 * longest && longest > Finest;
        }

        return marked;
    }

    // The energy has no bound to refine by; temperatures away from the jump settle under refinement everywhere.
    private static MeshField Everywhere(Mesh mesh, Conditions conditions)
    {
        while (mesh.Triangles.Length < 10_000)
        {
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]);
        }

        return new(mesh, conditions);
    }

    private static FieldAnswer Answer(FieldCase asked, MeshField field, double[] temperatures)
    {
        double coldest = temperatures[0], step = temperatures[^1] - coldest;
        var bounded = !field.Clash && temperatures.Length == 2;
        var byLine = field.Flows();
        ImmutableArray<(string Environment, double Flow)> flows = field.Clash ? [] : [.. asked.Boundary.Select((b, k) => (b.Environment?.Name, Flow: byLine[k] * step))
            .Where(f => f.Name is not null).GroupBy(f => f.Name!).Select(f => (f.Key, f.Sum(e => e.Flow)))];
        var largest = flows.Length == 0 ? 0 : flows.Max(f => Math.Abs(f.Flow));
        var error = field.Upper - field.Lower;
        var warnings = new List<string>();
        if (field.Clash)
        {
            warnings.Add(Messages.Unbounded);
        }
        else if (temperatures.Length > 2)
        {
            warnings.Add(Messages.ManyTemperatures);
        }
        else if (error > asked.WantedError * field.Upper)
        {
            warnings.Add(Messages.ErrorNotReached);
        }

        MeshField? humid = asked.HumidityFilm is { } film ? new(field.Mesh, Conditions.Of(asked, coldest, step, film)) : null;
        return new(
            Coupling: bounded ? field.Upper : null,
            HeatFlow: bounded ? field.Upper * step : null,
            Flows: flows,
            ErrorEstimate: bounded ? error : null,
            Bounds: bounded ? (field.Lower, field.Upper) : null,
            Factor: Factor(asked, field, coldest, step),
            HumidityFactor: humid is null ? null : Factor(asked, humid, coldest, step),
            HeatBalance: largest > 0 ? flows.Sum(f => f.Flow) / largest : null,
            Unknowns: field.Unknowns,
            Temperatures: [.. asked.Points.Select(p => coldest + (step * field.At(p.At.X, p.At.Y, Reach)!.Value))],
            Warnings: [.. warnings])
        {
            Field = field.Clash ? null : new(field, coldest, step),
        };
    }

    private static TemperatureFactor? Factor(FieldCase asked, MeshField field, double coldest, double step)
    {
        var inside = asked.Boundary.Where(b => b.Environment?.Side == FieldSide.Internal).Select(b => b.Environment!.Temperature).ToArray();
        var outside = asked.Boundary.Where(b => b.Environment?.Side == FieldSide.External).Select(b => b.Environment!.Temperature).ToArray();
        if (inside.Length == 0 || outside.Length == 0 || inside.Max() == outside.Min()
            || field.Coldest(k => asked.Boundary[k].Environment?.Side == FieldSide.Internal) is not { } at)
        {
            return null;
        }

        return new((coldest + (step * at.Value) - outside.Min()) / (inside.Max() - outside.Min()), new(at.X, at.Y));
    }
}
