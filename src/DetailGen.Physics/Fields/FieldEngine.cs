using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>Two-dimensional steady conduction (the calculation of ISO 10211): mesh, solve, refine where the two fluxes disagree, until the gap of the
/// bounds is small enough.</summary>
public static class FieldEngine
{
    private const int MostTriangles = 20_000;
    private const int MostRounds = 30;
    private const int Halvings = 3; // of the triangles at a place watched in a round: solving costs, a few small triangles do not
    private const int LastHalvings = 10; // where the bounds are close enough and only places watched are left: rounds cost more than triangles
    private const double Akin = 3; // times as large may one film be as another that the mesh was made for; our choice
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

        var (origin, step) = Span(asked, temperatures);
        var conditions = Conditions.Of(asked, origin, step, null);
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

        var (adapted, watch, subdivision) = Adapted(asked, field, conditions, two: temperatures.Length == 2);
        return new FieldOutcome.Solved(Answer(asked, adapted, temperatures, watch, subdivision));
    }

    /// <param name="two">Whether there are two temperatures, so that the bounds hold the sum of the flows.</param>
    // In every round the mesh is refined too where the inside surface may be coldest and where a temperature is asked for, until these settle.
    private static (MeshField Field, Watch Watch, Subdivision? Subdivision) Adapted(FieldCase asked, MeshField field, Conditions conditions, bool two)
    {
        var sums = new List<(int Triangles, double Sum)>();
        var watch = new Watch(asked);
        watch.Meet(field.Temperature);
        for (var round = 0; round < MostRounds; round++)
        {
            sums.Add((field.Mesh.Triangles.Length, Entering(asked, field.Temperature)));
            var small = field.Mesh.Triangles.Length < MostTriangles;
            var wide = small && field.Upper - field.Lower > asked.WantedError * field.Lower;
            var mesh = wide ? Refinement.Closer(field, asked.WantedError * field.Lower) : field.Mesh;
            mesh = watch.Around(mesh, small && !IsExact(field) ? watch.Open(field.Doubt) : [], wide ? Halvings : LastHalvings);

            if (small && mesh.Triangles.Length == field.Mesh.Triangles.Length && sums[0].Triangles * 2 > mesh.Triangles.Length)
            {
                mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh; // for the comparison of two subdivisions
            }

            if (mesh.Triangles.Length == field.Mesh.Triangles.Length)
            {
                break;
            }

            field = wide ? new(mesh, conditions) : field.Finer(mesh); // bounds that are close enough are not sought again for single temperatures
            watch.Meet(field.Temperature);
        }

        var (fine, sum) = (field.Mesh.Triangles.Length, Entering(asked, field.Temperature));
        var coarse = sums.FindLast(one => 2 * one.Triangles <= fine);
        Subdivision? subdivision = coarse.Triangles == 0 ? null : new(coarse.Triangles, fine, Math.Abs(sum - coarse.Sum) / sum);
        if (subdivision is not { Met: false } || fine >= MostTriangles)
        {
            return (field, watch, subdivision);
        }

        // The sum is the coupling, twice; that of any finer mesh lies between the two bounds too.
        if (two && field.Upper - field.Lower <= Subdivision.Limit * field.Lower)
        {
            return (field, watch, new(fine, 2 * fine, (field.Upper - field.Lower) / field.Lower) { IsProven = true });
        }

        // the last round may have made very many triangles of few: what twice as many would change is what is asked
        field = field.Finer(field.Mesh.Refine([.. field.Mesh.Triangles.Select(_ => true)]).Mesh);
        watch.Meet(field.Temperature);
        var finer = Entering(asked, field.Temperature);
        return (field, watch, new(fine, field.Mesh.Triangles.Length, Math.Abs(finer - sum) / finer));
    }

    /// <summary>Sum of the amounts of the heat flows of all environments, for a temperature difference of 1 K.</summary>
    private static double Entering(FieldCase asked, TemperatureField field)
    {
        var byLine = field.Flows();
        return asked.Boundary.Select((line, k) => (line.Environment, Flow: byLine[k])).Where(one => one.Environment is not null).GroupBy(one => one.Environment!.Name)
            .Sum(group => Math.Abs(group.Sum(one => one.Flow)));
    }

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
        FlowsByLine = [.. answer.FlowsByLine.Select(_ => 0.0)],
        ErrorEstimate = answer.ErrorEstimate is null ? null : 0,
        Bounds = answer.Bounds is null ? null : (0, 0),
        HeatBalance = null,
        Warnings = [.. answer.Warnings.Where(warning => warning != Messages.ErrorNotReached), Messages.NothingJoins],
    };

    private static bool IsExact(MeshField field) => field.Gap <= Watch.Exact * field.Lower;

    /// <param name="watch">Of the film of the heat flow; null where nothing was refined for single temperatures.</param>
    private static FieldAnswer Answer(FieldCase asked, MeshField field, double[] temperatures, Watch? watch, Subdivision? subdivision)
    {
        if (watch is null)
        {
            watch = new(asked);
            watch.Meet(field.Temperature);
        }

        var (origin, step) = Span(asked, temperatures);
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

        return new(
            Coupling: bounded ? field.Upper : null,
            HeatFlow: bounded ? field.Upper * Math.Abs(step) : null,
            Flows: flows,
            ErrorEstimate: bounded ? error : null,
            Bounds: bounded ? (field.Lower, field.Upper) : null,
            Factor: watch.Factor(origin, step),
            Subdivision: subdivision,
            HumidityFactor: asked.HumidityFilm is { } film ? Humid(asked, film, field, watch, Conditions.Of(asked, origin, step, film)).Factor(origin, step) : null,
            HeatBalance: largest > 0 ? flows.Sum(f => f.Flow) / largest : null,
            Unknowns: field.Unknowns,
            Temperatures: [.. asked.Points.Select(p => origin + (step * field.Temperature.At(p.At.X, p.At.Y, Reach)!.Value))],
            Warnings: [.. warnings])
        {
            FlowsByLine = field.Temperature.Clash ? [] : [.. byLine.Select(flow => flow * step)],
            Isotherms = field.Temperature.Clash ? null : new(field.Temperature, origin, step),
            FluxLines = field.Flow is { } flow ? new(flow.Mesh, flow.Field, step) : null,
            Surfaces = field.Temperature.Clash ? null : new(field.Temperature, asked, origin, step),
        };
    }

    /// <summary>The temperature that counts as 0, and how far from it lies what counts as 1. Where it is warmer outside than inside they change places, so that the place of the least
    /// temperature factor is still the one of the least value.</summary>
    private static (double Origin, double Step) Span(FieldCase asked, double[] temperatures)
    {
        var (inside, outside) = (asked.Temperatures(FieldSide.Internal), asked.Temperatures(FieldSide.External));
        var (cold, warm) = (temperatures[0], temperatures[^1]);
        return inside.Length > 0 && outside.Length > 0 && inside.Max() < outside.Min() ? (warm, cold - warm) : (cold, warm - cold);
    }

    /// <summary>Where the film is akin to those of the heat flow, the mesh is good enough but round a coldest place that is another now. Where it is not, the bounds are sought anew.</summary>
    private static Watch Humid(FieldCase asked, double film, MeshField field, Watch watch, Conditions conditions)
    {
        if (asked.Boundary.Any(line => line.Environment?.Side == FieldSide.Internal && (line.Film > Akin * film || film > Akin * line.Film)))
        {
            return Adapted(asked with { Points = [] }, new(field.Mesh, conditions), conditions, two: false).Watch;
        }

        TemperatureField On(Mesh mesh) => new(mesh, conditions, new(mesh));
        var humid = watch.Again(On);
        for (var round = 0; round < MostRounds && humid.Last.Mesh.Triangles.Length < MostTriangles && !humid.Last.Clash && !IsExact(field); round++)
        {
            var mesh = humid.Around(humid.Last.Mesh, humid.Open(field.Doubt), LastHalvings);
            if (mesh.Triangles.Length == humid.Last.Mesh.Triangles.Length)
            {
                break;
            }

            humid.Meet(On(mesh));
        }

        return humid;
    }
}
