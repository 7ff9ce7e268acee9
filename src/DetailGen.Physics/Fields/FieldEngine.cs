using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>Two-dimensional steady conduction (the calculation of ISO 10211): mesh, solve, refine where the two fluxes disagree, until the gap of the
/// bounds is small enough.</summary>
public static class FieldEngine
{
    private const int MostTriangles = 20_000;
    private const int MostRounds = 30;
    private const double Settled = 5e-5; // share of the temperature step by which the places watched may still change in a calm round,
    private const double SettledOfError = 0.05; // or this share of the error wanted where that is more: who wants 1 % wants to be quick
    private const int Halvings = 3; // of the triangles at a place watched in a round: solving costs, a few small triangles do not
    private const int LastHalvings = 10; // where the bounds are close enough and only places watched are left: rounds cost more than triangles
    private const double Rival = 1e-3; // share of the temperature step within which another place may yet prove to be the coldest
    private const double Further = 4; // times what a place moved by in a round, or is in doubt by, that it may still move by; our choice
    private const int MostRivals = 40;
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
        var outside = asked.Points.Where(p => field.Temperature.At(p.At.X, p.At.Y, Reach) is null).Select(p => Messages.PointOutside(p.Name, p.At)).ToImmutableArray();
        if (outside.Length > 0)
        {
            return new FieldOutcome.Refused(outside);
        }

        if (field.Temperature.Clash)
        {
            return new FieldOutcome.Solved(Answer(asked, Everywhere(mesh, conditions), temperatures, null, null));
        }

        if (!mesh.Joins(line => conditions.Lines[line]?.Temperature))
        {
            return new FieldOutcome.Solved(Still(Answer(asked, field, temperatures, null, null)));
        }

        var (adapted, change, subdivision) = Adapted(asked, field, conditions);
        return new FieldOutcome.Solved(Answer(asked, adapted, temperatures, change, subdivision));
    }

    // The energy gap says little of a single temperature: in every round the mesh is refined too where the inside surface may be coldest and where a temperature is asked for, until
    // these settle.
    private static (MeshField Field, double? FactorChange, Subdivision? Subdivision) Adapted(FieldCase asked, MeshField field, Conditions conditions)
    {
        var sums = new List<(int Triangles, double Sum)>();
        var moved = new Dictionary<int, double>();
        TemperatureField? before = null;
        var halved = 0;
        for (var round = 0; round < MostRounds; round++)
        {
            sums.Add((field.Mesh.Triangles.Length, Entering(asked, field.Temperature)));
            var small = field.Mesh.Triangles.Length < MostTriangles;
            var wide = small && field.Upper - field.Lower > asked.WantedError * field.Lower;
            var mesh = wide ? Refinement.Closer(field, asked.WantedError * field.Lower) : field.Mesh;
            var exact = field.Gap <= Settled * Settled * field.Lower; // such a field has nothing to settle
            var watched = small && !exact ? Watched(asked, field, before, halved, moved) : [];
            halved = wide ? Halvings : LastHalvings;
            for (var i = 0; i < halved && watched.Length > 0; i++)
            {
                mesh = mesh.Refine(Refinement.Around(mesh, watched)).Mesh;
            }

            if (small && mesh.Triangles.Length == field.Mesh.Triangles.Length && sums[0].Triangles * 2 > mesh.Triangles.Length)
            {
                mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh; // for the comparison of two subdivisions
            }

            if (mesh.Triangles.Length == field.Mesh.Triangles.Length)
            {
                break;
            }

            before = field.Temperature;
            field = wide ? new(mesh, conditions) : field.Finer(mesh); // bounds that are close enough are not sought again for single temperatures
        }

        double? change = before is not null && Coldest(asked, field.Temperature) is { } now && Coldest(asked, before) is { } then ? Math.Abs(now.Value - then.Value) : null;
        var (fine, sum) = (field.Mesh.Triangles.Length, Entering(asked, field.Temperature));
        var coarse = sums.FindLast(one => 2 * one.Triangles <= fine);
        return (field, change, coarse.Triangles == 0 ? null : new(coarse.Triangles, fine, Math.Abs(sum - coarse.Sum) / sum));
    }

    /// <summary>Sum of the amounts of the heat flows of all environments, for a temperature difference of 1 K.</summary>
    private static double Entering(FieldCase asked, TemperatureField field)
    {
        var byLine = field.Flows();
        return asked.Boundary.Select((line, k) => (line.Environment, Flow: byLine[k])).Where(one => one.Environment is not null).GroupBy(one => one.Environment!.Name)
            .Sum(group => Math.Abs(group.Sum(one => one.Flow)));
    }

    /// <summary>Places that have not settled: those asked for, and those that are coldest inside or may yet prove to be. What a corner moved by when the mesh was refined round it tells
    /// more of what it may still move by than the difference of the two fields, which at some corners never vanishes.</summary>
    /// <param name="halved">How often the triangles at the places watched were halved since <paramref name="before"/>.</param>
    /// <param name="moved">By corner watched before, what it moved by since.</param>
    private static (double X, double Y)[] Watched(FieldCase asked, MeshField field, TemperatureField? before, int halved, Dictionary<int, double> moved)
    {
        var settled = Math.Max(Settled, SettledOfError * asked.WantedError);
        var left = Left(halved);
        foreach (var corner in moved.Keys.ToArray())
        {
            moved[corner] = Math.Abs(field.Temperature.Values[corner] - before!.Values[corner]);
        }

        var lows = field.Temperature.Lows(line => Inside(asked, line) && asked.Boundary[line].Film > 0, field.Doubt);
        var limit = lows.Count == 0 ? 0 : lows[0].Value;
        var fell = before is not null && Coldest(asked, before) is { } then ? Math.Abs(limit - then.Value) : double.PositiveInfinity;
        bool Open(Low low) => low.Corner >= 0 && moved.TryGetValue(low.Corner, out var known) ? left * known > settled && low.Value - Math.Max(Rival, Further * known) <= limit
            : low.Value - Rival <= limit && fell > settled || low.Corner >= 0 && low.Doubt > settled && low.Value - Math.Max(Rival, Further * low.Doubt) <= limit;
        var open = lows.Where(Open).Take(MostRivals).ToArray();
        foreach (var low in open.Where(low => low.Corner >= 0))
        {
            moved[low.Corner] = double.PositiveInfinity;
        }

        var points = asked.Points.Where(point => before is null
            || Math.Abs(before.At(point.At.X, point.At.Y, Reach)!.Value - field.Temperature.At(point.At.X, point.At.Y, Reach)!.Value) > settled);
        return [.. points.Select(point => (point.At.X, point.At.Y)), .. open.Select(low => (low.X, low.Y))];
    }

    // What a corner may still move by, as a share of what it moved by: where the temperature goes with the root of the distance, the error goes with the side, which two halvings of a
    // triangle halve; twice that, for the rest of the mesh has its say too. Ten halvings left 1/22 to 1/350 at corners of the check cases.
    private static double Left(int halved) => Math.Min(1, 2 / Math.Pow(2, halved / 2.0));

    private static Low? Coldest(FieldCase asked, TemperatureField field) => field.Lows(line => Inside(asked, line), _ => 0) is [var low, ..] ? low : null;

    private static bool Inside(FieldCase asked, int line) => asked.Boundary[line].Environment?.Side == FieldSide.Internal;

    // The energy has no bound to refine by; temperatures away from the jump settle under refinement everywhere.
    private static MeshField Everywhere(Mesh mesh, Conditions conditions)
    {
        while (mesh.Triangles.Length < 10_000)
        {
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
        }

        return new(mesh, conditions);
    }

    /// <summary>Every solid has the temperature of the one air that it touches: what the field shows of heat flow is rounding.</summary>
    private static FieldAnswer Still(FieldAnswer answer) => answer with
    {
        Coupling = answer.Coupling is null ? null : 0,
        HeatFlow = answer.HeatFlow is null ? null : 0,
        Flows = [.. answer.Flows.Select(one => (one.Environment, 0.0))],
        ErrorEstimate = answer.ErrorEstimate is null ? null : 0,
        Bounds = answer.Bounds is null ? null : (0, 0),
        HeatBalance = null,
        Warnings = [.. answer.Warnings.Where(warning => warning != Messages.ErrorNotReached), Messages.NothingJoins],
    };

    private static FieldAnswer Answer(FieldCase asked, MeshField field, double[] temperatures, double? factorChange, Subdivision? subdivision)
    {
        double coldest = temperatures[0], step = temperatures[^1] - coldest;
        var bounded = !field.Temperature.Clash && temperatures.Length == 2;
        var byLine = field.Temperature.Flows();
        ImmutableArray<(string Environment, double Flow)> flows = field.Temperature.Clash ? [] : [.. asked.Boundary.Select((b, k) => (b.Environment?.Name, Flow: byLine[k] * step))
            .Where(f => f.Name is not null).GroupBy(f => f.Name!).Select(f => (f.Key, f.Sum(e => e.Flow)))];
        var largest = flows.Length == 0 ? 0 : flows.Max(f => Math.Abs(f.Flow));
        var error = field.Upper - field.Lower;
        var warnings = new List<string>();
        if (field.Temperature.Clash)
        {
            warnings.Add(Messages.Unbounded);
        }
        else if (temperatures.Length > 2)
        {
            warnings.Add(Messages.ManyTemperatures);
        }

        if (subdivision is { Met: false })
        {
            warnings.Add(Messages.SubdivisionNotMet);
        }

        if (bounded && error > asked.WantedError * field.Upper)
        {
            warnings.Add(Messages.ErrorNotReached);
        }

        TemperatureField? humid = asked.HumidityFilm is { } film ? new(field.Mesh, Conditions.Of(asked, coldest, step, film), new(field.Mesh)) : null;
        return new(
            Coupling: bounded ? field.Upper : null,
            HeatFlow: bounded ? field.Upper * step : null,
            Flows: flows,
            ErrorEstimate: bounded ? error : null,
            Bounds: bounded ? (field.Lower, field.Upper) : null,
            Factor: Factor(asked, field.Temperature, coldest, step, factorChange),
            Subdivision: subdivision,
            HumidityFactor: humid is null ? null : Factor(asked, humid, coldest, step, null),
            HeatBalance: largest > 0 ? flows.Sum(f => f.Flow) / largest : null,
            Unknowns: field.Unknowns,
            Temperatures: [.. asked.Points.Select(p => coldest + (step * field.Temperature.At(p.At.X, p.At.Y, Reach)!.Value))],
            Warnings: [.. warnings])
        {
            Isotherms = field.Temperature.Clash ? null : new(field.Temperature, coldest, step),
            FluxLines = field.Flow is { } flow ? new(flow.Mesh, flow.Field, step) : null,
            Surfaces = field.Temperature.Clash ? null : new(field.Temperature, asked, coldest, step),
        };
    }

    private static TemperatureFactor? Factor(FieldCase asked, TemperatureField field, double coldest, double step, double? change)
    {
        var inside = asked.Boundary.Where(b => b.Environment?.Side == FieldSide.Internal).Select(b => b.Environment!.Temperature).ToArray();
        var outside = asked.Boundary.Where(b => b.Environment?.Side == FieldSide.External).Select(b => b.Environment!.Temperature).ToArray();
        if (inside.Length == 0 || outside.Length == 0 || inside.Max() == outside.Min()
            || Coldest(asked, field) is not { } at)
        {
            return null;
        }

        return new((coldest + (step * at.Value) - outside.Min()) / (inside.Max() - outside.Min()), new(at.X, at.Y), change * step / (inside.Max() - outside.Min()));
    }
}
