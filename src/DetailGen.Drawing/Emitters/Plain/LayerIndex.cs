using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>The layer map by row id: every item asks for its row.</summary>
internal sealed class LayerIndex
{
    private readonly Dictionary<string, LayerRow> _rows;

    public LayerIndex(IReadOnlyList<LayerRow> layers)
    {
        _rows = new(layers.Count, StringComparer.Ordinal);
        foreach (var layer in layers)
        {
            _rows.TryAdd(layer.Row, layer);
        }
    }

    public LayerRow this[string row] => _rows.TryGetValue(row, out var layer) ? layer : throw new KeyNotFoundException($"The layer map has no row {row}.");
}
