using System.Collections.Immutable;
using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Tables;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>The rows of the layer map as layers and line types of the drawing; only what is used is kept.</summary>
internal sealed class DxfLayers(IReadOnlyList<LayerRow> rows)
{
    // Frames of viewports lie where nothing is plotted: the layer of construction geometry in the layer map.
    private const string FrameLayer = "A-------U1";

    private readonly LayerIndex _index = new(rows);
    private readonly HashSet<string> _used = new(StringComparer.Ordinal);
    private bool _hasFrames;

    /// <summary>The name of a row's layer, which is written from now on.</summary>
    public string Use(string row)
    {
        var layer = _index[row];
        _used.Add(row);
        return layer.Name;
    }

    public string UseForFrames()
    {
        _hasFrames = true;
        return FrameLayer;
    }

    /// <exception cref="ArgumentException">Two rows of one name look different: a drawing has one look for each layer.</exception>
    public (ImmutableArray<Layer> Layers, ImmutableArray<Linetype> Linetypes) Tables()
    {
        var layers = new List<Layer>();
        var linetypes = new List<Linetype>();
        foreach (var row in rows)
        {
            if (!_used.Contains(row.Row))
            {
                continue;
            }

            var layer = Layer(row, linetypes);
            var same = layers.Find(other => other.Name == layer.Name);
            if (same is null)
            {
                layers.Add(layer);
            }
            else if (same != layer)
            {
                throw new ArgumentException($"The layer map gives the layer {layer.Name} two looks; one of them is that of {row.Row}.");
            }
        }

        if (_hasFrames && !layers.Exists(layer => layer.Name == FrameLayer))
        {
            layers.Add(new(FrameLayer) { Weight = 13, IsPlotted = false });
        }

        return ([.. layers], [.. linetypes]);
    }

    private static Layer Layer(LayerRow row, List<Linetype> linetypes)
    {
        var weight = LineWeights.Nearest(row.Width);
        var name = Linetype.Continuous;
        if (Dashes.Pattern(row) is { Length: > 0 } pattern)
        {
            // Dashes are multiples of the width, so each width has a line type of its own.
            name = FormattableString.Invariant($"{row.LineType}-{weight}");
            if (!linetypes.Exists(known => known.Name == name))
            {
                linetypes.Add(new(name, Describe(row), [.. pattern.Select((length, i) => i % 2 == 0 ? (length < row.Width ? 0 : length) : -length)]));
            }
        }

        return new(row.Name) { Color = DxfColor.FromRgb(row.Ink.Red, row.Ink.Green, row.Ink.Blue), Linetype = name, Weight = weight, IsPlotted = row.Plotted };
    }

    private static string Describe(LayerRow row) => FormattableString.Invariant($"{row.LineType} for lines {row.Width} wide");
}
