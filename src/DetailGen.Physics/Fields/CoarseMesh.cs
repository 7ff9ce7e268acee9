using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>The mesh that a case begins with, before any field is solved.</summary>
/// <param name="Triangles">0 where the geometry has faults.</param>
/// <param name="Least">Area of the smallest triangle, mm².</param>
/// <param name="Areas">mm² that each region of the case got, in their order; empty where the geometry has faults.</param>
/// <param name="Faults">What is wrong with the geometry.</param>
public sealed record CoarseMesh(int Triangles, double Least, ImmutableArray<double> Areas, ImmutableArray<FieldFault> Faults)
{
    /// <summary>Meshes a case and solves nothing.</summary>
    public static CoarseMesh Of(FieldCase asked)
    {
        var (mesh, faults) = Arrangement.Build(asked);
        if (mesh is null)
        {
            return new(0, 0, [], faults);
        }

        var areas = new double[asked.Regions.Length];
        var least = double.PositiveInfinity;
        foreach (var triangle in mesh.Triangles)
        {
            var (a, b, c) = (mesh.Places[triangle.A], mesh.Places[triangle.B], mesh.Places[triangle.C]);
            var area = (((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X))) / 2;
            areas[triangle.Region] += area;
            least = Math.Min(least, area);
        }

        return new(mesh.Triangles.Length, least, [.. areas], faults);
    }
}
