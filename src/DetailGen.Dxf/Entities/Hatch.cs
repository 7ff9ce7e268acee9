using System.Collections.Immutable;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A fill of one region: an outer path and its holes. Paths are cleaned as polylines are, and dropped when they enclose less
/// than <see cref="Entity.LeastArea"/>; without its outer path the fill is left out, and so is one whose pattern is wider than the
/// region (see <see cref="LinesAcross"/>), since readers draw nothing there or warn.</summary>
/// <param name="Outer">Closed, simple, in either direction; the first vertex is not repeated.</param>
/// <param name="Pattern">Null for a solid fill.</param>
public sealed record Hatch(ImmutableArray<Vertex> Outer, HatchPattern? Pattern) : Entity
{
    /// <summary>The most pattern lines across a region: others drop denser fills.</summary>
    public const double MostLines = 3000;

    private const double MostDashes = 100_000;

    /// <summary>Closed and simple, within the outer path and clear of each other; touching in a vertex is allowed.</summary>
    public ImmutableArray<ImmutableArray<Vertex>> Holes { get; init; } = [];

    /// <summary>About how many pattern lines cross the region: its diagonal over the spacing, summed over the families. 0 for a solid fill.</summary>
    public double LinesAcross => Pattern is null ? 0 : Pattern.Lines.Sum(line => Diagonal / line.Spacing);

    internal static readonly AttributeTable<Hatch> Table = new("HATCH")
    {
        "AcDbHatch",
        { 10, 0 },
        { 20, 0 },
        { 30, 0 },
        { 210, 0 },
        { 220, 0 },
        { 230, 1 },
        { 2, hatch => hatch.Pattern?.Name ?? "SOLID" },
        { 70, hatch => hatch.Pattern is null ? 1 : 0 },
        { 71, 0 },
        { 91, hatch => 1 + hatch.Holes.Length },
        WritePaths,
        { 75, 0 },
        { 76, hatch => hatch.Pattern is null ? 1 : 2 },
        WritePattern,
        { 98, 0 },
    };

    internal override string Kind => Table.Kind;

    private double Diagonal
    {
        get
        {
            var bounds = new Bounds();
            foreach (var vertex in Outer)
            {
                bounds.Add(vertex.Point);
            }

            return bounds.IsEmpty ? 0 : new DxfPoint(bounds.Left, bounds.Bottom).DistanceTo(new(bounds.Right, bounds.Top));
        }
    }

    internal override Entity? Cleaned()
    {
        Pattern?.Demand();
        var outer = Paths.Cleaned(Outer, closed: true);
        if (!Encloses(outer))
        {
            return null;
        }

        var clean = outer == Outer ? this : this with { Outer = outer };
        if (!Holes.IsEmpty)
        {
            clean = clean with { Holes = [.. Holes.Select(hole => Paths.Cleaned(hole, closed: true)).Where(Encloses)] };
        }

        return clean.HasDrawablePattern() ? clean : null;
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds) => bounds.AddPath(Outer.AsSpan(), closed: true);

    private static bool Encloses(ImmutableArray<Vertex> path) => path.Length >= 2 && Math.Abs(Paths.Area(path)) >= LeastArea;

    private bool HasDrawablePattern()
    {
        if (Pattern is null)
        {
            return true;
        }

        var (diagonal, lines, dashes) = (Diagonal, 0.0, 0.0);
        foreach (var line in Pattern.Lines)
        {
            lines += diagonal / line.Spacing;
            dashes += line.Dashes.IsEmpty ? 0 : diagonal / line.Spacing * diagonal / line.Period * line.Dashes.Length;
        }

        return lines > MostLines || dashes > MostDashes
            ? throw new ArgumentException($"The pattern {Pattern.Name} is too dense for its region: {lines:0} lines and {dashes:0} dashes.")
            : lines >= 1;
    }

    private static void WritePaths(Hatch hatch, ITagSink sink)
    {
        WritePath(hatch.Outer, 3, sink); // 1 outer + 2 polyline
        foreach (var hole in hatch.Holes)
        {
            WritePath(hole, 18, sink); // 16 hole + 2 polyline
        }
    }

    private static void WritePath(ImmutableArray<Vertex> path, int flags, ITagSink sink)
    {
        var hasBulges = Paths.HasBulges(path);
        sink.Integer(92, flags);
        sink.Integer(72, hasBulges ? 1 : 0);
        sink.Integer(73, 1);
        sink.Integer(93, path.Length);
        foreach (var vertex in path)
        {
            sink.FlatPoint(10, vertex.Point);
            if (hasBulges)
            {
                sink.Number(42, vertex.Bulge, Grid.Ratio);
            }
        }

        sink.Integer(97, 0);
    }

    private static void WritePattern(Hatch hatch, ITagSink sink)
    {
        if (hatch.Pattern is not { } pattern)
        {
            return;
        }

        if (!sink.ValuesOnly)
        {
            sink.Number(52, 0, Grid.Angle);
            sink.Number(41, 1, Grid.Ratio);
            sink.Integer(77, 0);
        }

        sink.Integer(78, pattern.Lines.Length);
        foreach (var line in pattern.Lines)
        {
            sink.Number(53, line.Angle, Grid.Angle);
            sink.Place(43, 44, line.Base);
            sink.Number(45, line.Offset.X, Grid.Length);
            sink.Number(46, line.Offset.Y, Grid.Length);
            sink.Integer(79, line.Dashes.Length);
            foreach (var dash in line.Dashes)
            {
                sink.Number(49, dash, Grid.Length);
            }
        }
    }
}
