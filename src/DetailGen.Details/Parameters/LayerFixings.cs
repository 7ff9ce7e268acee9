using System.Globalization;
using DetailGen.Details.Reading;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Parameters;

/// <summary>Ties or fixings through a layer as a construction gives them; there are none where the detail has no slot of that name.</summary>
/// <param name="Slot">Place for their material.</param>
/// <param name="Count">Key of how many there are over the area; null for one.</param>
/// <param name="Over">The two sides of that area.</param>
/// <param name="Diameter">Of a round bar with the metal of one.</param>
/// <param name="Into">Key of how far they go into the leaf behind the layer; null where they are not drawn, or others draw them.</param>
public sealed record LayerFixings(string Name, string Slot, string? Count, (FixingSize Along, FixingSize Across) Over, FixingSize Diameter, string? Into = null)
{
    /// <summary>Null where the layer has none.</summary>
    /// <param name="layer">A layer of a wall or roof.</param>
    public static LayerFixings? Of(MapNode layer) => layer["fixings"] is MapNode map && map.Words("over") is [var along, var across, ..]
        ? new(map.Must("name"), map.Must("slot"), map.Text("count"), (FixingSize.Of(along), FixingSize.Of(across)), FixingSize.Of(map.Must("diameter")), map.Text("into"))
        : null;

    /// <summary>Most that they add to U as a share of it, where their layer makes up the whole resistance: κ = 0.8·λ·A·n / λ(layer), so that ΔU / U = κ·R₁/R.</summary>
    /// <remarks>EN ISO 6946:2007, D.3.2 with R₁ = d₀/λ, from memory; below 1 W/(m·K) a fixing needs no correction.</remarks>
    /// <param name="values">Micrometres, or the count, by key.</param>
    public double Share(double conductivity, double layer, Func<string, decimal> values)
    {
        var (number, area, diameter) = (Count is { } key ? (double)values(key) : 1, (double)(Over.Along.In(values) * Over.Across.In(values)) / 1e12, (double)Diameter.In(values) / 1e6);
        return conductivity < 1 ? 0 : 0.8 * conductivity * (Math.PI / 4 * diameter * diameter) * number / area / layer;
    }

    /// <summary>Keys of the sizes and the count.</summary>
    public IEnumerable<string> Keys => new[] { Count, Over.Along.Key, Over.Across.Key, Diameter.Key }.OfType<string>();
}

/// <summary>A length that a key or a figure in mm gives.</summary>
/// <param name="Key">Null for a figure.</param>
/// <param name="Micrometres">Where there is no key.</param>
public readonly record struct FixingSize(string? Key, decimal Micrometres)
{
    private const string Millimetres = " mm";

    public static FixingSize Of(string text) =>
        text.EndsWith(Millimetres, StringComparison.Ordinal) && decimal.TryParse(text[..^Millimetres.Length], NumberStyles.Float, CultureInfo.InvariantCulture, out var size)
            ? new(null, size * 1000)
            : new(text, 0);

    public decimal In(Func<string, decimal> values) => Key is { } key ? values(key) : Micrometres;
}
