using System.Collections.Immutable;
using DetailGen.Physics.Layers;

namespace DetailGen.Physics.Fields;

/// <summary>A case of two-dimensional heat flow as it was written, before its geometry is looked into: numbers are finite, lists are long enough,
/// every material and environment is known. Lengths in mm, temperatures in °C.</summary>
/// <param name="Regions">In the order of the file; <see cref="FieldFault.Path"/> counts them from 0.</param>
/// <param name="Boundary">In the order of the file, adiabatic lines among them.</param>
/// <param name="Points">Places whose temperature is wanted, in the order of the file.</param>
/// <param name="HumidityFilm">Surface resistance in m²·K/W of a second calculation on every internal line, for the temperature factor only; null for none.</param>
/// <param name="WantedError">Share of the coupling coefficient that its stated error should not pass; 1e-6 to 0.1.</param>
public sealed record FieldCase(
    string Id,
    ImmutableArray<FieldRegion> Regions,
    ImmutableArray<FieldBoundary> Boundary,
    ImmutableArray<FieldPoint> Points,
    ImmutableArray<FlankingElement> Flanking,
    double? HumidityFilm,
    double WantedError)
{
    internal double[] Temperatures(FieldSide side) => [.. Boundary.Where(line => line.Environment?.Side == side).Select(line => line.Environment!.Temperature)];
}

/// <summary>A corner in mm.</summary>
public readonly record struct FieldPlace(double X, double Y);

/// <summary>One solid. A rectangle of the file comes as its four corners.</summary>
/// <param name="Conductivity">W/(m·K), above 0.</param>
/// <param name="Outline">3 corners or more, in either direction; the last is not the first again.</param>
/// <param name="Holes">Outlines like the outer one.</param>
public sealed record FieldRegion(string Material, double Conductivity, ImmutableArray<FieldPlace> Outline, ImmutableArray<ImmutableArray<FieldPlace>> Holes);

/// <summary>Which air an environment is.</summary>
public enum FieldSide
{
    Internal,
    External,
    Other,
}

/// <summary>What lies beyond a boundary line: air, or a surface that is held at a temperature.</summary>
/// <param name="Temperature">°C; of the air, or of the surface where the film is 0.</param>
public sealed record FieldEnvironment(string Name, double Temperature, FieldSide Side);

/// <summary>A line along exposed edges.</summary>
/// <param name="Environment">Null where no heat passes (adiabatic).</param>
/// <param name="Film">Surface resistance in m²·K/W, 0 or more; 0 holds the surface at the temperature; 0 too where no heat passes.</param>
/// <param name="Line">2 corners or more.</param>
public sealed record FieldBoundary(FieldEnvironment? Environment, double Film, ImmutableArray<FieldPlace> Line);

/// <summary>A named place whose temperature is wanted.</summary>
public sealed record FieldPoint(string Name, FieldPlace At);

/// <summary>A plane element beside the junction, whose heat flow is taken off the whole for psi.</summary>
/// <param name="Element">Its layers; U is taken without corrections.</param>
/// <param name="LengthInternal">mm, above 0.</param>
/// <param name="LengthExternal">mm, above 0.</param>
public sealed record FlankingElement(string Name, Element Element, double LengthInternal, double LengthExternal);

/// <summary>What the engine says to a case: the field's figures, or what is wrong with its geometry (all faults at once).</summary>
public abstract record FieldOutcome
{
    private FieldOutcome()
    {
    }

    /// <summary>The field was solved.</summary>
    public sealed record Solved(FieldAnswer Answer) : FieldOutcome;

    /// <summary>The geometry is faulty.</summary>
    public sealed record Refused(ImmutableArray<FieldFault> Faults) : FieldOutcome;
}

/// <summary>One fault of the geometry.</summary>
/// <param name="Path">Place in the case, such as <c>regions.3</c>, <c>regions.3.polygon.7</c>, <c>boundary.2.line</c> or <c>points.corner</c>; the reader turns it into line and column.</param>
/// <param name="Reason">One sentence, with coordinates in mm.</param>
public sealed record FieldFault(string Path, string Reason, string Hint);

/// <summary>The figures of a solved field. What does not exist for the case is null, never 0 and never NaN.</summary>
/// <param name="Coupling">L2D in W/(m·K); null with more than two temperatures, or where two fixed temperatures meet at a point.</param>
/// <param name="HeatFlow">W/m from the warm to the cold side; null in the same cases.</param>
/// <param name="Flows">W/m into the solid, one entry for each environment used, in the order of first use on the boundary.</param>
/// <param name="ErrorEstimate">W/(m·K), a stated bound of the error of L2D.</param>
/// <param name="Bounds">Lower and upper in W/(m·K), only when both are guaranteed.</param>
/// <param name="Factor">Least temperature factor on all internal lines, and where; null without an internal or an external environment.</param>
/// <param name="HumidityFactor">The same with the humidity film.</param>
/// <param name="Subdivision">The comparison of two subdivisions; null where two fixed temperatures meet at a point, or the first mesh is too large already.</param>
/// <param name="HeatBalance">Sum of the flows over the largest one.</param>
/// <param name="Unknowns">Of the largest system solved.</param>
/// <param name="Temperatures">°C at the case's points, in their order.</param>
public sealed record FieldAnswer(
    double? Coupling,
    double? HeatFlow,
    ImmutableArray<(string Environment, double Flow)> Flows,
    double? ErrorEstimate,
    (double Lower, double Upper)? Bounds,
    TemperatureFactor? Factor,
    TemperatureFactor? HumidityFactor,
    Subdivision? Subdivision,
    double? HeatBalance,
    int Unknowns,
    ImmutableArray<double> Temperatures,
    ImmutableArray<string> Warnings)
{
    /// <summary>W/m into the solid through each line of the boundary, in their order; empty where two fixed temperatures clash.</summary>
    public ImmutableArray<double> FlowsByLine { get; init; } = [];

    /// <summary>With the films of the heat flow; null where two fixed temperatures clash.</summary>
    public Isotherms? Isotherms { get; init; }

    /// <summary>With the films of the heat flow; null where two fixed temperatures clash.</summary>
    public FluxLines? FluxLines { get; init; }

    /// <summary>With the films of the heat flow; null where two fixed temperatures clash.</summary>
    public SurfaceTemperatures? Surfaces { get; init; }
}

/// <summary>(t_si − t_e) / (t_i − t_e) with the highest internal and the lowest external temperature, and where it is.</summary>
/// <param name="Change">By how much the value changed since the mesh round its place was last refined: an indication, no bound. Null where it never was.</param>
public sealed record TemperatureFactor(double Value, FieldPlace At, double? Change);

/// <summary>The sum of the amounts of the heat flows of all environments on two meshes, the finer with at least twice as many triangles as the coarser: it should not change by more
/// than 1 % (ISO 10211:2017, number of subdivisions, from memory; clause number still to be read).</summary>
/// <param name="Coarse">Triangles.</param>
/// <param name="Fine">Triangles.</param>
/// <param name="Change">Share of the sum on the finer mesh.</param>
public sealed record Subdivision(int Coarse, int Fine, double Change)
{
    public const double Limit = 0.01;

    public bool Met => Change <= Limit;

    /// <summary>The finer mesh was not made: the bounds prove that none changes the sum by more.</summary>
    public bool IsProven { get; init; }
}
