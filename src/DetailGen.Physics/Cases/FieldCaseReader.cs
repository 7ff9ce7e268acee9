using System.Collections.Immutable;
using DetailGen.Physics.Fields;
using DetailGen.Physics.Layers;

namespace DetailGen.Physics.Cases;

/// <summary>Reads cases of kind <c>heat2d</c>: form, names and numbers. Whether the geometry holds together is for the engine to say.</summary>
internal static class FieldCaseReader
{
    internal static readonly string[] Keys = ["environments", "regions", "boundary", "points", "flanking", "humidity_rsi_m2k_w", "wanted_error"];

    private const int MostRegions = 5000;
    private const int MostCorners = 50_000;
    private const int MostPoints = 10_000;
    private const string Adiabatic = "adiabatic";

    internal static FieldCase Read(Fields fields, string id, Faults faults)
    {
        var before = faults.Count;
        var materials = LayerReader.Materials(fields);
        var environments = Environments(fields);
        ImmutableArray<FieldRegion> regions = [.. fields.NeededList("regions").Select(item => Region(fields, item.Item, item.Path, materials)).OfType<FieldRegion>()];
        ImmutableArray<FieldBoundary> boundary = [.. fields.NeededList("boundary").Select(item => Boundary(fields, item.Item, item.Path, environments)).OfType<FieldBoundary>()];
        ImmutableArray<FieldPoint> points = fields.Map("points") is { } map ? [.. map.Entries.Select(entry => new FieldPoint(entry.Key, Place(map, entry.Value, map.Path(entry.Key))))] : [];
        ImmutableArray<FlankingElement> flanking = [.. fields.List("flanking").Select(item => Flanking(fields, item.Item, item.Path, materials)).OfType<FlankingElement>()];
        var film = fields.Number("humidity_rsi_m2k_w", Bound.Resistance);
        var wanted = fields.Number("wanted_error", Bound.Between(1e-6, 0.1, "")) ?? 0.001;
        Count(fields, "regions", regions.Length, MostRegions);
        Count(fields, "corners", regions.Sum(region => region.Outline.Length + region.Holes.Sum(hole => hole.Length)) + boundary.Sum(line => line.Line.Length), MostCorners);
        Count(fields, "points", points.Length, MostPoints);
        if (faults.Count == before)
        {
            Temperatures(fields, boundary);
        }

        return new(id, regions, boundary, points, flanking, film, wanted);
    }

    private static void Count(Fields fields, string what, int count, int most)
    {
        if (count > most)
        {
            fields.Fault(Messages.TooMany(what, count, most));
        }
    }

    private static void Temperatures(Fields fields, ImmutableArray<FieldBoundary> boundary)
    {
        double[] used = [.. boundary.Select(line => line.Environment).OfType<FieldEnvironment>().Select(environment => environment.Temperature).Distinct()];
        if (used.Length == 0)
        {
            fields.Fault("boundary", Messages.NoEnvironmentUsed());
        }
        else if (used.Length == 1)
        {
            fields.Fault("environments", Messages.OneTemperature(Messages.Number(used[0])));
        }
    }

    private static Dictionary<string, FieldEnvironment> Environments(Fields fields)
    {
        var environments = new Dictionary<string, FieldEnvironment>(StringComparer.Ordinal);
        if (!fields.Has("environments"))
        {
            return fields.Missing("environments", environments);
        }

        if (fields.Map("environments") is not { } map)
        {
            return environments;
        }

        foreach (var entry in map.Entries)
        {
            if (string.Equals(entry.Key, Adiabatic, StringComparison.Ordinal))
            {
                map.Fault(entry.Key, Messages.ReservedName(entry.Key));
            }

            if (map.MapOf(entry.Value, map.Path(entry.Key), "t_c", "side") is { } environment)
            {
                environments[entry.Key] = new(entry.Key, environment.Needed("t_c", Bound.Temperature), (environment.Has("side") ? environment.Choice("side", "internal", "external", "other") : environment.Missing("side", "other")) switch
                {
                    "internal" => FieldSide.Internal,
                    "external" => FieldSide.External,
                    _ => FieldSide.Other,
                });
            }
        }

        return environments;
    }

    private static FieldRegion? Region(Fields owner, Written written, string path, IReadOnlyDictionary<string, CaseMaterial> materials)
    {
        if (owner.MapOf(written, path, "material", "rect", "polygon", "holes") is not { } fields)
        {
            return null;
        }

        var name = fields.NeededWords("material");
        var known = name is not null && materials.TryGetValue(name, out _);
        if (name is not null && !known)
        {
            fields.Fault("material", Messages.UnknownName(fields.Path("material"), name, [.. materials.Keys]));
        }

        if (fields.Has("rect") == fields.Has("polygon"))
        {
            fields.Fault(Messages.EitherOr(path, "rect", "polygon", both: fields.Has("rect")));
            return null;
        }

        var outline = fields.Has("rect") ? Rectangle(fields) : Line(fields, fields.At.Get("polygon")!, fields.Path("polygon"), least: 3);
        return known ? new(name!, materials[name!].Conductivity, outline, [.. fields.List("holes").Select(hole => Line(fields, hole.Item, hole.Path, least: 3))]) : null;
    }

    private static ImmutableArray<FieldPlace> Rectangle(Fields fields)
    {
        var path = fields.Path("rect");
        double[] edges = [.. fields.List("rect").Select(item => fields.NumberOf(item.Item, item.Path, Bound.Coordinate))];
        if (edges.Length != 4)
        {
            fields.Fault("rect", Messages.Coordinates(path, edges.Length, "4: [x0, y0, x1, y1]"));
            return [];
        }

        if (edges[0] >= edges[2] || edges[1] >= edges[3])
        {
            fields.Fault("rect", Messages.EmptyRectangle(path));
        }

        return [new(edges[0], edges[1]), new(edges[2], edges[1]), new(edges[2], edges[3]), new(edges[0], edges[3])];
    }

    private static FieldBoundary? Boundary(Fields owner, Written written, string path, Dictionary<string, FieldEnvironment> environments)
    {
        if (owner.MapOf(written, path, "env", "rs_m2k_w", "line") is not { } fields)
        {
            return null;
        }

        var name = fields.NeededWords("env");
        var adiabatic = string.Equals(name, Adiabatic, StringComparison.Ordinal);
        var environment = name is not null && environments.TryGetValue(name, out var found) ? found : null;
        if (name is not null && !adiabatic && environment is null)
        {
            fields.Fault("env", Messages.UnknownName(fields.Path("env"), name, [.. environments.Keys, Adiabatic]));
        }

        if (adiabatic && fields.Has("rs_m2k_w"))
        {
            fields.Fault("rs_m2k_w", Messages.FilmOnAdiabatic(path));
        }

        var film = adiabatic ? 0 : fields.Needed("rs_m2k_w", Bound.Resistance);
        var line = fields.At.Get("line") is { } points ? Line(fields, points, fields.Path("line"), least: 2) : fields.Missing<ImmutableArray<FieldPlace>>("line", []);
        return new(adiabatic ? null : environment, film, line);
    }

    private static FlankingElement? Flanking(Fields owner, Written written, string path, IReadOnlyDictionary<string, CaseMaterial> materials)
    {
        if (owner.MapOf(written, path, "name", "rsi_m2k_w", "rse_m2k_w", "layers", "length_internal_mm", "length_external_mm") is not { } fields)
        {
            return null;
        }

        var inside = fields.Needed("rsi_m2k_w", Bound.Resistance);
        var element = new Element(inside, fields.Needed("rse_m2k_w", Bound.Resistance), inside, LayerReader.Layers(fields, materials));
        return new(
            fields.NeededWords("name") ?? "", element, fields.Needed("length_internal_mm", Bound.Thickness), fields.Needed("length_external_mm", Bound.Thickness));
    }

    private static ImmutableArray<FieldPlace> Line(Fields fields, Written written, string path, int least)
    {
        ImmutableArray<FieldPlace> line = [.. fields.ListOf(written, path).Select(item => Place(fields, item.Item, item.Path))];
        if (line.Length > 1 && least > 2 && line[0] == line[^1])
        {
            line = line[..^1]; // an outline closes by itself; written closed, it says the same
        }

        if (line.Length < least && written is Written.List)
        {
            fields.Fault(written, path, Messages.TooFewPoints(path, line.Length, least));
        }

        return line;
    }

    private static FieldPlace Place(Fields fields, Written written, string path)
    {
        double[] numbers = [.. fields.ListOf(written, path).Select(item => fields.NumberOf(item.Item, item.Path, Bound.Coordinate))];
        if (numbers.Length != 2 && written is Written.List)
        {
            fields.Fault(written, path, Messages.Coordinates(path, numbers.Length, "2: [x, y]"));
        }

        return numbers.Length == 2 ? new(numbers[0], numbers[1]) : new(double.NaN, double.NaN);
    }
}
