using System.Collections.Immutable;
using DetailGen.Physics.Fields;

namespace DetailGen.Physics.Tests.Fields;

public class DissectionTests
{
    private static readonly FieldEnvironment Inside = new("inside", 20, FieldSide.Internal), Outside = new("outside", 0, FieldSide.External);

    /// <summary>Between two arcs of many chords lie needles, which any straight line crosses in great number: halved along one, elimination takes the third power of that.</summary>
    [Theory]
    [InlineData(60)]
    [InlineData(600)]
    [InlineData(2000)]
    public void A_ring_of_needles_is_halved_across_few_sides(int chords)
    {
        var mesh = Arrangement.Build(Pipe(chords)).Mesh!;
        for (var refined = 0; refined < 3; refined++)
        {
            Holds(mesh);
            mesh = mesh.Refine([.. mesh.Triangles.Select(_ => true)]).Mesh;
        }
    }

    private static void Holds(Mesh mesh)
    {
        var dissection = new Dissection(mesh);
        Assert.Equal(Enumerable.Range(0, mesh.Triangles.Length), dissection.Order.Order());
        foreach (var part in dissection.Parts.Where(part => part.To - part.From > 200))
        {
            var place = new int[mesh.Triangles.Length];
            for (var i = part.From; i < part.To; i++)
            {
                place[dissection.Order[i]] = i < (part.From + part.To) / 2 ? 1 : 2;
            }

            var parted = mesh.Sides.Count(side => side.Other >= 0 && place[side.Slot / 3] * place[side.Other / 3] == 2);
            Assert.InRange(parted, 0, 4 * Math.Sqrt(part.To - part.From));
        }
    }

    /// <summary>A quarter of a thick pipe.</summary>
    private static FieldCase Pipe(int chords)
    {
        ImmutableArray<FieldPlace> Arc(double radius) => [.. Enumerable.Range(0, chords + 1).Select(i => Math.PI / 2 * i / chords).Select(a => new FieldPlace(radius * Math.Cos(a), radius * Math.Sin(a)))];
        var (inner, outer) = (Arc(200), Arc(400));
        return new("pipe", [new("wall", 0.04, [.. outer, .. inner.Reverse()], [])],
            [new(Inside, 0.13, inner), new(Outside, 0.04, outer), new(null, 0, [inner[0], outer[0]]), new(null, 0, [inner[^1], outer[^1]])], [], [], null, 0.01);
    }
}
