using System.Globalization;
using DetailGen.Physics.Fields;

namespace DetailGen.Physics;

/// <summary>What is said about the geometry of a two-dimensional field, and about its figures.</summary>
internal static partial class Messages
{
    internal static FieldFault ShortEdge(string path, FieldPlace at) =>
        new(path, $"An edge of {path} at {Say(at)} is shorter than 0.01 mm.", "Leave one of its two corners out.");

    internal static FieldFault CrossesItself(string path, FieldPlace at) =>
        new(path, $"The outline of {path} crosses itself at {Say(at)}.", "Write the corners in their order round the region.");

    internal static FieldFault NoArea(string path, bool hole, FieldPlace at) =>
        new(path, $"{(hole ? "A hole of " : "")}{path}, at {Say(at)}, has no area: its corners lie on a line, or its outline runs to and fro.", "Look for a corner written twice or a coordinate that should differ.");

    internal static FieldFault HoleOutside(string path) =>
        new(path, $"A hole of {path} lies outside its region.", "A hole must lie within the outline.");

    internal static FieldFault Overlap(int first, int second, double area, FieldPlace at) => new($"regions.{second}",
        string.Create(CultureInfo.InvariantCulture, $"Regions {first} and {second} overlap by {area:0.####} mm², around {Say(at)}."), "Regions may touch, not share an area.");

    internal static FieldFault ManyCrossings(int first, int second, FieldPlace at, int most) => new($"regions.{second}",
        $"Regions {first} and {second} overlap around {Say(at)}; the edges of regions cross more than {most} times in all.", "Regions may touch, not share an area.");

    internal static FieldFault LineOffEdge(string path, FieldPlace a, FieldPlace b) =>
        new(path, $"{path} from {Say(a)} to {Say(b)} lies on no exposed edge.", "Boundary lines run along edges with solid on one side only.");

    internal static FieldFault CoveredTwice(string path, FieldPlace a, FieldPlace b) =>
        new(path, $"The edge from {Say(a)} to {Say(b)} is covered twice, the second time by {path}.", "One boundary line for each exposed edge.");

    internal static FieldFault Uncovered(FieldPlace a, FieldPlace b) =>
        new("boundary", $"The exposed edge from {Say(a)} to {Say(b)} has no boundary line.", "Say adiabatic where no heat passes.");

    internal static FieldFault NotConnected(FieldPlace at) =>
        new("boundary", $"The solid around {Say(at)} is connected to no film and no fixed temperature.", "Give one of its edges an environment.");

    internal static FieldFault CannotMesh(FieldPlace a, FieldPlace b) =>
        new("regions", $"No mesh can be made along the edge from {Say(a)} to {Say(b)}.", "Look for corners and edges closer than 0.01 mm there.");

    internal static FieldFault OneTemperature() =>
        new("environments", "All environments used have one temperature: no heat flows.", "Give two different temperatures.");

    internal static FieldFault PointOutside(string name, FieldPlace at) =>
        new($"points.{name}", $"Point {name} at {Say(at)} lies outside all regions.", "Move it into a region or onto its edge.");

    internal const string Unbounded = "Two fixed temperatures meet at a point: heat flow and coupling coefficient are unbounded.";

    internal const string ManyTemperatures = "More than two temperatures: there is no single coupling coefficient.";

    internal const string NothingJoins = "No solid joins environments of unlike temperature: no heat flows.";

    internal const string SubdivisionNotMet = "Between two subdivisions the heat flow still changes by more than 1 %.";

    internal const string ErrorNotReached = "The wanted error was not reached; the stated one holds.";

    private static string Say(FieldPlace at) => string.Create(CultureInfo.InvariantCulture, $"({at.X:0.###}, {at.Y:0.###})");
}
