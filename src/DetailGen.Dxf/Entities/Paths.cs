using System.Collections.Immutable;

namespace DetailGen.Dxf.Entities;

/// <summary>What polylines and the paths of fills have in common.</summary>
internal static class Paths
{
    /// <summary>The most vertices in one path.</summary>
    public const int MostVertices = 10_000;

    /// <summary>The path without repeated vertices, and in a closed one without the first repeated at the end. Of two that coincide the
    /// place of the first stays and the way on from the second.</summary>
    /// <exception cref="ArgumentException">More than <see cref="MostVertices"/>, or one that is no place.</exception>
    public static ImmutableArray<Vertex> Cleaned(ImmutableArray<Vertex> path, bool closed)
    {
        if (path.Length > MostVertices)
        {
            throw new ArgumentException($"A path has {path.Length} vertices; {MostVertices} is the most.");
        }

        foreach (var vertex in path)
        {
            if (!double.IsFinite(vertex.X + vertex.Y + vertex.Bulge))
            {
                throw new ArgumentException("A vertex of a path is not finite."); // its area would be none, and the path would vanish
            }
        }

        return IsClean(path, closed) ? path : WithoutRepeats(path, closed);
    }

    /// <summary>Signed area, positive counter-clockwise, arcs included.</summary>
    public static double Area(ImmutableArray<Vertex> path)
    {
        var area = 0.0;
        for (var i = 0; i < path.Length; i++)
        {
            var (a, b) = (path[i], path[(i + 1) % path.Length]);
            area += ((a.X * b.Y) - (b.X * a.Y)) / 2;
            if (a.Bulge != 0)
            {
                // The segment between chord and arc: (θ - sin θ) r² / 2 with θ = 4 atan b and r = c (1 + b²) / (4 |b|).
                var chord = a.Point.DistanceTo(b.Point);
                var angle = 4 * Math.Atan(a.Bulge);
                var radius = chord * (1 + (a.Bulge * a.Bulge)) / (4 * Math.Abs(a.Bulge));
                area += (angle - Math.Sin(angle)) * radius * radius / 2;
            }
        }

        return area;
    }

    public static bool HasBulges(ImmutableArray<Vertex> path)
    {
        foreach (var vertex in path)
        {
            if (vertex.Bulge != 0)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsClean(ImmutableArray<Vertex> path, bool closed)
    {
        for (var i = 1; i < path.Length; i++)
        {
            if (Coincide(path[i - 1], path[i]))
            {
                return false;
            }
        }

        return !closed || path.Length < 2 || !Coincide(path[0], path[^1]);
    }

    private static ImmutableArray<Vertex> WithoutRepeats(ImmutableArray<Vertex> path, bool closed)
    {
        var clean = ImmutableArray.CreateBuilder<Vertex>(path.Length);
        foreach (var vertex in path)
        {
            if (clean.Count > 0 && Coincide(clean[^1], vertex))
            {
                clean[^1] = clean[^1] with { Bulge = vertex.Bulge };
            }
            else
            {
                clean.Add(vertex);
            }
        }

        while (closed && clean.Count > 1 && Coincide(clean[0], clean[^1]))
        {
            clean.RemoveAt(clean.Count - 1); // the vertex before already leads to the first
        }

        return clean.ToImmutable();
    }

    private static bool Coincide(Vertex a, Vertex b)
    {
        var (x, y) = (a.X - b.X, a.Y - b.Y);
        return (x * x) + (y * y) < Entity.LeastLength * Entity.LeastLength;
    }
}
