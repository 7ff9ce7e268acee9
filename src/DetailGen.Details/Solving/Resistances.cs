using DetailGen.Details.Parameters;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Solver;

namespace DetailGen.Details.Solving;

/// <summary>
/// Thermal resistance of wall and roof over the unknown thicknesses: R = Rsi + Σ dᵢ/λᵢ + Rse, plain layers after EN ISO 6946. One unit is 10⁻¹² m²·K/W;
/// 1/λ is rounded down, so that what is built is never worse than what is told.
/// </summary>
/// <remarks>
/// The table of air layers is concave, so an air layer is the least of the straight lines through its rows, and R the least of a few plain sums. A bound on R
/// is then a bound on each of them. An unknown for the air was tried: the search lost itself in its fine steps.
/// </remarks>
internal sealed class Resistances(Translation translation, Bounds bounds, Situation situation)
{
    public const long Unit = 1_000_000_000_000;

    // EN ISO 6946:2007, Table 2, unventilated air layers: thickness in mm, R in m²·K/W horizontally and upwards; read in a transcription
    private static readonly (int Thickness, decimal Horizontal, decimal Upwards)[] Air =
    [
        (0, 0m, 0m), (5, 0.11m, 0.11m), (7, 0.13m, 0.13m), (10, 0.15m, 0.15m), (15, 0.17m, 0.16m), (25, 0.18m, 0.16m), (300, 0.18m, 0.16m),
    ];

    /// <summary>Rsi + Rse in m²·K/W: EN ISO 6946, 0.13 + 0.04 for a wall, 0.10 + 0.04 for a roof; read in a secondary text.</summary>
    public static decimal Surfaces(string element) => Surface(element + ".rsi") + Surface(element + ".rse");

    /// <summary>One surface: wall.rsi, wall.rse, roof.rsi or roof.rse, in m²·K/W.</summary>
    public static decimal Surface(string key) => key switch { "wall.rsi" => 0.13m, "roof.rsi" => 0.10m, _ => 0.04m };

    /// <summary>The sums whose least is R.</summary>
    /// <param name="element">wall or roof.</param>
    public IReadOnlyList<Linear> Of(string element)
    {
        List<Linear> sums = [(long)(Surfaces(element) * Unit)];
        foreach (var (layer, kind, material) in Layers(situation, element))
        {
            var thickness = translation.Sum(layer.Thickness);
            sums = kind == LayerKind.Air
                ? [.. sums.SelectMany(_ => Needed(element, bounds.Of(layer.Thickness)), (sum, segment) => sum + Line(segment, thickness))]
                : sums.ConvertAll(sum => sum + Solid(thickness, material!.Conductivity!.Value));
        }

        return sums;
    }

    /// <summary>The same for a solved detail, by the same whole numbers.</summary>
    public static decimal Of(string element, Situation situation, IFacts solved)
    {
        var sum = Surfaces(element) * Unit;
        foreach (var (layer, kind, material) in Layers(situation, element))
        {
            var thickness = layer.Thickness.In(solved).Number;
            sum += kind == LayerKind.Air ? Segments(element).Min(segment => segment.At(thickness)) : thickness * PerMicrometre(material!.Conductivity!.Value);
        }

        return sum / Unit;
    }

    /// <summary>The layers that count, in order.</summary>
    public static IEnumerable<(ResistanceLayer Layer, LayerKind Kind, Material? Material)> Layers(Situation situation, string element)
    {
        Component component = element == "wall" ? situation.Preset.Wall : situation.Preset.Roof;
        foreach (var layer in situation.Catalogue.Layers(component))
        {
            if ((layer.When is { } when && !when.In(situation).Holds) || layer.Thickness.In(situation).Knowledge == Knowledge.Missing)
            {
                continue;
            }

            var material = situation.MaterialIn(layer.Slot);
            var isAir = layer.AirBetween || layer.Kind == LayerKind.Air || material?.Conductivity is null;
            yield return (layer, isAir ? LayerKind.Air : layer.Kind ?? LayerKind.Solid, material);
        }
    }

    private static Linear Solid(Sum thickness, double conductivity)
    {
        var factor = PerMicrometre(conductivity) / thickness.Scale;
        return thickness.Value * factor;
    }

    private static long PerMicrometre(double conductivity) => (long)Math.Floor(1_000_000m / (decimal)conductivity);

    private static Linear Line(Segment segment, Sum thickness) => thickness.Value * (segment.Slope / thickness.Scale) + segment.Start;

    // a line is wanted only where it is the lowest somewhere between the thicknesses that there can be
    private static List<Segment> Needed(string element, (decimal Least, decimal Most) thickness)
    {
        var segments = Segments(element);
        return [.. segments.Where((_, i) =>
            (i == 0 || thickness.Least < Air[i + 1].Thickness * 1000 || i == segments.Count - 1) && (i == 0 || thickness.Most > Air[i].Thickness * 1000))];
    }

    private static List<Segment> Segments(string element)
    {
        var segments = new List<Segment>();
        for (var i = 1; i < Air.Length; i++)
        {
            var (from, to) = (Air[i - 1], Air[i]);
            var (low, high) = element == "wall" ? (from.Horizontal, to.Horizontal) : (from.Upwards, to.Upwards);
            var slope = (long)Math.Floor((high - low) * Unit / ((to.Thickness - from.Thickness) * 1000));
            segments.Add(new Segment((long)(low * Unit) - slope * from.Thickness * 1000, slope));
        }

        return segments;
    }

    /// <summary>R = Start + Slope · d, with d in micrometres.</summary>
    private readonly record struct Segment(long Start, long Slope)
    {
        public decimal At(decimal thickness) => Start + Slope * thickness;
    }
}
