using DetailGen.Details.Parameters;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Solver;
using Claim = DetailGen.Solver.Claim;

namespace DetailGen.Details.Solving;

/// <summary>
/// Thermal resistance of wall and roof over the unknown thicknesses: R = Rsi + Σ Rᵢ + Rse after EN ISO 6946, Rᵢ = dᵢ/λᵢ of a plain layer, and of an air layer with
/// dabs 1/Rᵢ = f/R(dab) + (1 − f)/R(air): the lower limit of the combined method. One unit is 10⁻¹² m²·K/W; 1/λ is rounded down, so that what is built is never
/// worse than what is told. In a claim fixings divide R by the most that they may add to U.
/// </summary>
/// <remarks>
/// The table of air layers is concave, so an air layer is the least of the straight lines through its rows, and R the least of a few plain sums. A bound on R
/// is then a bound on each of them. An unknown for the air was tried: the search lost itself in its fine steps.
/// </remarks>
internal sealed class Resistances(Translation translation, Bounds bounds, Situation situation)
{
    public const long Unit = 1_000_000_000_000;

    // EN ISO 6946:2007, Table 2, unventilated air layers: thickness in mm, R in m²·K/W horizontally and upwards; read in a transcription.
    // The schedule takes it from Physics, which this project does not see; TransmittanceAgreementTests holds both together.
    private static readonly (int Thickness, decimal Horizontal, decimal Upwards)[] Air =
    [
        (0, 0m, 0m), (5, 0.11m, 0.11m), (7, 0.13m, 0.13m), (10, 0.15m, 0.15m), (15, 0.17m, 0.16m), (25, 0.18m, 0.16m), (50, 0.18m, 0.16m), (300, 0.18m, 0.16m),
    ];

    /// <summary>Rsi + Rse in m²·K/W: EN ISO 6946, 0.13 + 0.04 for a wall, 0.10 + 0.04 for a roof; read in a secondary text.</summary>
    public static decimal Surfaces(string element) => Surface(element + ".rsi") + Surface(element + ".rse");

    /// <summary>One surface: wall.rsi, wall.rse, roof.rsi or roof.rse, in m²·K/W.</summary>
    public static decimal Surface(string key) => key switch { "wall.rsi" => 0.13m, "roof.rsi" => 0.10m, _ => 0.04m };

    /// <summary>The claim that R is at least so much.</summary>
    /// <param name="element">wall or roof.</param>
    /// <param name="corrected">1/U with the corrections for fixings, in place of R.</param>
    public Claim AtLeast(string element, long least, bool corrected) =>
        Claim.Any([.. Supposition.Of(situation, element).SelectMany(one => corrected && one.Most > Supposition.Small ? (IEnumerable<Claim>)[Little(element, one, least), Much(element, one, least)] : [Plain(element, one, least)])]);

    /// <summary>The claim that R, without what crosses the layers, is at most so much.</summary>
    public Claim AtMost(string element, long most) => Claim.Any([.. Of(element, Supposition.None).Select(sum => sum <= most)]);

    private Claim Plain(string element, Supposition one, long least) => Claim.All([.. Sizes(one), .. Of(element, one).Select(sum => sum >= least)]);

    private Claim Much(string element, Supposition one, long least) => Claim.All([.. Sizes(one), .. Of(element, one, 1 + one.Most).Select(sum => sum >= least)]);

    // so little that it is left out: Σ κ·R₁ is a small share of R; both over the greatest κ, so that the numbers stay small
    private Claim Little(string element, Supposition one, long least)
    {
        var added = (Linear)0;
        foreach (var (layer, _, material) in Layers(situation, element).Where(row => one.Fixings.GetValueOrDefault(row.Layer.Slot) > 0))
        {
            added += Solid(translation.Thickness(layer), material!.Conductivity!.Value, one.Most / one.Fixings[layer.Slot]);
        }

        return Claim.All([.. Sizes(one), .. Of(element, one).Select(sum => sum >= least), .. Of(element, one, one.Most / Supposition.Small).Select(sum => sum >= added)]);
    }

    private IEnumerable<Claim> Sizes(Supposition one) => one.Sizes.Select(supposed => supposed.Claim(key => translation.Sum(new Key(key, Kind.Length)).Value));

    /// <summary>The sums whose least is R, over a divisor.</summary>
    private List<Linear> Of(string element, Supposition one, decimal divisor = 1)
    {
        List<Linear> sums = [(long)(Surfaces(element) * Unit / divisor)];
        foreach (var (layer, kind, material) in Layers(situation, element))
        {
            var thickness = translation.Thickness(layer);
            sums = kind == LayerKind.Air
                ? [.. sums.SelectMany(_ => Needed(AirRows(element, layer, material, one), bounds.Of(layer.Thickness)), (sum, segment) => sum + Line(segment, thickness, divisor))]
                : sums.ConvertAll(sum => sum + Solid(thickness, material!.Conductivity!.Value, divisor));
        }

        return sums;
    }

    /// <summary>R and 1/U of a solved detail by the same whole numbers in m²·K/W: air and rounding on the safe side, fixings and dabs as they are.</summary>
    public static (decimal Resistance, decimal Corrected) Of(string element, Situation situation, IFacts solved)
    {
        var built = Supposition.Built(situation, element, solved);
        var (sum, added) = (Surfaces(element) * Unit, 0m);
        foreach (var (layer, kind, material) in Layers(situation, element))
        {
            var thickness = layer.Thickness.In(solved).Number;
            var own = kind == LayerKind.Air ? Segments(AirRows(element, layer, material, built)).Min(segment => segment.At(thickness)) : thickness * PerMicrometre(material!.Conductivity!.Value);
            sum += own;
            added += built.Fixings.GetValueOrDefault(layer.Slot) * own;
        }

        return (sum / Unit, sum / Unit / (added < Supposition.LeftOut * sum ? 1 : 1 + (added / sum)));
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

    private static Linear Solid(Sum thickness, double conductivity, decimal divisor = 1)
    {
        var factor = (long)Math.Floor(PerMicrometre(conductivity) / divisor) / thickness.Scale;
        return thickness.Value * factor;
    }

    private static long PerMicrometre(double conductivity) => (long)Math.Floor(1_000_000m / (decimal)conductivity);

    private static Linear Line(Segment segment, Sum thickness, decimal divisor) =>
        thickness.Value * ((long)Math.Floor(segment.Slope / divisor) / thickness.Scale) + (long)Math.Floor(segment.Start / divisor);

    // what is alike side by side is a concave curve of the thickness, so straight lines between its points lie below it
    private static IReadOnlyList<(int Thickness, decimal Resistance)> AirRows(string element, ResistanceLayer layer, Material? material, Supposition one)
    {
        var rows = Air.Select(row => (row.Thickness, Resistance: element == "wall" ? row.Horizontal : row.Upwards));
        if (one.Shares.GetValueOrDefault(layer.Slot) is not (> 0 and var share) || material?.Conductivity is not { } conductivity)
        {
            return [.. rows];
        }

        return
        [
            .. rows.Select(row =>
            {
                var member = row.Thickness / 1000m / (decimal)conductivity;
                return (row.Thickness, row.Thickness == 0 ? 0 : Math.Min(row.Resistance, 1 / ((share / member) + ((1 - share) / row.Resistance))));
            }),
        ];
    }

    // a line is wanted only where it is the lowest somewhere between the thicknesses that there can be
    private static List<Segment> Needed(IReadOnlyList<(int, decimal)> rows, (decimal Least, decimal Most) thickness)
    {
        var segments = Segments(rows);
        return [.. segments.Where((_, i) =>
            (i == 0 || thickness.Least < Air[i + 1].Thickness * 1000 || i == segments.Count - 1) && (i == 0 || thickness.Most > Air[i].Thickness * 1000))];
    }

    private static List<Segment> Segments(IReadOnlyList<(int Thickness, decimal Resistance)> rows)
    {
        var segments = new List<Segment>();
        for (var i = 1; i < Air.Length; i++)
        {
            var (from, to) = (rows[i - 1], rows[i]);
            var slope = (long)Math.Floor((to.Resistance - from.Resistance) * Unit / ((to.Thickness - from.Thickness) * 1000));
            segments.Add(new Segment((long)(from.Resistance * Unit) - slope * from.Thickness * 1000, slope));
        }

        return segments;
    }

    /// <summary>R = Start + Slope · d, with d in micrometres.</summary>
    private readonly record struct Segment(long Start, long Slope)
    {
        public decimal At(decimal thickness) => Start + Slope * thickness;
    }
}
