using DetailGen.Details.Constructions;
using DetailGen.Sections;

namespace DetailGen.Details.Junctions;

/// <summary>Dimensions that every junction carries: across the wall, down the roof. Sheets under 5 mm are left out, and the sums run without them.</summary>
internal static class Dimensions
{
    private const double Least = 5;

    /// <summary>An overall size that sheets left out of its chain make shorter than it is by more than this says so; mm.</summary>
    private const double Told = 1;

    /// <summary>Layers of the wall along a level, and their sum.</summary>
    public static IEnumerable<Measure> AcrossWall(PlacedWall wall, Buildup buildup, double y, string chain)
    {
        var turned = wall.Layers[0].Right <= 0.0005;
        var at = 0.0;
        var sum = 0.0;
        foreach (var layer in buildup.Layers)
        {
            var next = at + (turned ? -layer.Thickness : layer.Thickness);
            if (layer.Thickness >= Least)
            {
                yield return new(layer.Slot, new(at, y), new(next, y), Axis.Horizontal, chain);
                sum = next;
            }

            at = next;
        }

        yield return new("wall.overall", new(0, y), new(sum, y), Axis.Horizontal, chain, 1);
    }

    /// <summary>Layers of the roof at a station, from the ceiling to the finished surface, and their sum.</summary>
    public static IEnumerable<Measure> DownRoof(PlacedRoof roof, double x, IReadOnlyList<double> boards)
    {
        var (reached, sum) = (roof.Foot, 0.0);
        foreach (var placed in roof.Layers.Reverse())
        {
            if (placed.Thickness < Least)
            {
                continue;
            }

            var tapered = placed.Layer.As is RoofBehaviour.Firring or RoofBehaviour.Screed;
            var flat = placed.Layer.As is RoofBehaviour.Joists or RoofBehaviour.Slab or RoofBehaviour.Ceiling;
            var bottom = placed.Bottom + (tapered || flat ? 0 : roof.Plane.At(x));
            var top = placed.Top + (flat ? 0 : roof.Plane.At(x));
            IReadOnlyList<double> depths = placed.Layer.As == RoofBehaviour.Insulation ? boards : [top - bottom];
            var low = bottom;
            for (var i = 0; i < depths.Count; i++)
            {
                var id = depths.Count == 1 ? placed.Layer.Slot : $"{placed.Layer.Slot}.{i + 1}";
                yield return new(id, new(x, low), new(x, low + depths[i]), Axis.Vertical, Chains.RoofEnd);
                low += depths[i];
            }

            (reached, sum) = (top, sum + top - bottom);
        }

        yield return new("roof.overall", new(x, roof.Foot), new(x, reached), Axis.Vertical, Chains.RoofEnd, 1, reached - roof.Foot - sum > Told ? "+ sheets" : "");
    }
}
