using DetailGen.Details.Parameters;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Solver;
using Domain = DetailGen.Solver.Domain;

namespace DetailGen.Details.Solving;

/// <summary>
/// Thermal resistance of wall and roof as a sum over the unknown thicknesses: R = Rsi + Σ dᵢ/λᵢ + Rse, plain layers after EN ISO 6946. One unit is 10⁻¹² m²·K/W;
/// 1/λ is rounded down, so that what is built is never worse than what is told.
/// </summary>
internal sealed class Resistances(Model model, Situation situation, Translation translation)
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

    /// <param name="element">wall or roof.</param>
    public Linear Of(string element)
    {
        Linear sum = (long)(Surfaces(element) * Unit);
        foreach (var (layer, kind, material) in Layers(situation, element))
        {
            var thickness = translation.Sum(layer.Thickness);
            sum += kind == LayerKind.Air ? AirLayer(element, layer, thickness) : Solid(thickness, material!.Conductivity!.Value);
        }

        return sum;
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
            var isAir = layer.Kind == LayerKind.Air || material?.Conductivity is null;
            yield return (layer, isAir ? LayerKind.Air : layer.Kind ?? LayerKind.Solid, material);
        }
    }

    private static Linear Solid(Sum thickness, double conductivity)
    {
        var factor = PerMicrometre(conductivity) / thickness.Scale;
        return thickness.Value * factor;
    }

    private static long PerMicrometre(double conductivity) => (long)Math.Floor(1_000_000m / (decimal)conductivity);

    private Linear AirLayer(string element, ResistanceLayer layer, Sum thickness)
    {
        var segments = Segments(element);
        if (thickness.Value is Variable { Domain.Low: >= 25_000 })
        {
            return segments[^1].Start; // beyond 25 mm the thickness no longer matters
        }

        var air = model.Add($"resistance of {layer.Slot}", Domain.Range(-100 * Unit, (long)(0.18m * Unit)));
        var reached = new List<DetailGen.Solver.Claim>();
        foreach (var segment in segments)
        {
            // the table is concave, so the straight lines between its rows all lie above it: the least of them is the value between rows
            var line = thickness.Value * segment.Slope + segment.Start * thickness.Scale;
            model.Require(null, air * thickness.Scale <= line);
            reached.Add(air * thickness.Scale >= line);
        }

        model.Require(null, DetailGen.Solver.Claim.Any([.. reached]));
        return air;
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
