using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>The names that a document defines; whoever refers to another name is told before anything is written.</summary>
internal sealed class References
{
    private static readonly string[] OwnLinetypes = ["ByBlock", "ByLayer", Linetype.Continuous];

    private readonly Dictionary<string, Layer> _layers = new(Names.Comparer);
    private readonly Dictionary<string, HatchPattern> _patterns = new(StringComparer.Ordinal);
    private readonly HashSet<string> _linetypes;
    private readonly HashSet<string> _dimensionStyles;
    private readonly HashSet<string> _blocks;

    public References(DxfDocument document, IReadOnlyList<Layer> ownLayers)
    {
        _linetypes = Names.Unique(document.Linetypes.Select(linetype => linetype.Name).Concat(OwnLinetypes), "linetype");
        _dimensionStyles = Names.Unique(document.DimensionStyles.Select(style => style.Name).Append(DimensionStyle.Standard), "dimension style");
        _blocks = Names.Unique(document.Blocks.Select(block => block.Name), "block");
        Names.Unique(ownLayers.Select(layer => layer.Name), "layer");
        foreach (var layer in ownLayers)
        {
            _layers.Add(layer.Name, layer);
            DemandLinetype(layer.Linetype);
            DemandWeight(layer.Weight);
            DemandColor(layer.Color);
        }

        foreach (var linetype in document.Linetypes)
        {
            DemandDashes(linetype);
        }

        foreach (var style in document.DimensionStyles)
        {
            if (!(style.Scale > 0 && style.TextOnPaper > 0))
            {
                throw new ArgumentException($"The dimension style {style.Name} has no scale or no height of text.");
            }
        }
    }

    public void DemandLayer(string name)
    {
        if (!_layers.ContainsKey(name))
        {
            throw new ArgumentException($"There is no layer '{name}'.");
        }
    }

    /// <summary>Whether the dashes of the entity, its own or its layer's, take a scale.</summary>
    public bool IsDashed(Entity entity) => !Names.Comparer.Equals(entity.Linetype ?? _layers[entity.Layer].Linetype, Linetype.Continuous);

    /// <exception cref="ArgumentException">The entity names something that the document lacks, or a property is out of range.</exception>
    public void Demand(Entity entity)
    {
        DemandLayer(entity.Layer);
        if (entity.Linetype is { } linetype)
        {
            DemandLinetype(linetype);
        }

        if (entity.Weight is { } weight)
        {
            DemandWeight(weight);
        }

        if (entity.Color is { } color)
        {
            DemandColor(color);
        }

        switch (entity)
        {
            case Hatch { Pattern: { } pattern }:
                DemandSameLines(pattern);
                break;
            case Dimension dimension when !_dimensionStyles.Contains(dimension.Style):
                throw new ArgumentException($"There is no dimension style '{dimension.Style}'.");
            case Insert insert when !_blocks.Contains(insert.Block):
                throw new ArgumentException($"There is no block '{insert.Block}'.");
        }
    }

    private static void DemandWeight(int weight)
    {
        if (!LineWeights.Contains(weight))
        {
            throw new ArgumentException($"{weight} is no line weight of the format.");
        }
    }

    private static void DemandColor(DxfColor color)
    {
        if (color.Index is < 1 or > 255 || color.TrueColor is < 0 or > 0xFFFFFF)
        {
            throw new ArgumentException($"{color} is no colour.");
        }
    }

    private static void DemandDashes(Linetype linetype)
    {
        var dashes = linetype.Dashes;
        if (dashes.Length < 2 || dashes[0] < 0 || !(linetype.Period >= Entity.LeastLength))
        {
            throw new ArgumentException($"The linetype {linetype.Name} must begin with a dash or a dot and have a gap.");
        }
    }

    private void DemandLinetype(string name)
    {
        if (!_linetypes.Contains(name))
        {
            throw new ArgumentException($"There is no linetype '{name}'.");
        }
    }

    // Readers keep one definition for each name, so a second one under it would be lost.
    private void DemandSameLines(HatchPattern pattern)
    {
        if (!_patterns.TryGetValue(pattern.Name, out var known))
        {
            _patterns.Add(pattern.Name, pattern);
        }
        else if (!ReferenceEquals(known, pattern) && !SameLines(known, pattern))
        {
            throw new ArgumentException($"The pattern {pattern.Name} has two definitions.");
        }
    }

    private static bool SameLines(HatchPattern a, HatchPattern b)
    {
        if (a.Lines.Length != b.Lines.Length)
        {
            return false;
        }

        foreach (var (one, other) in a.Lines.Zip(b.Lines))
        {
            if (!Same(one.Angle, other.Angle) || !Same(one.Offset.X, other.Offset.X) || !Same(one.Offset.Y, other.Offset.Y)
                || one.Dashes.Length != other.Dashes.Length || !one.Dashes.Zip(other.Dashes).All(pair => Same(pair.First, pair.Second)))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Same(double a, double b) => Math.Abs(a - b) < 1e-6; // the grid of lengths
}
