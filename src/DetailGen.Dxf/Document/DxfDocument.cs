using System.Collections.Immutable;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;

namespace DetailGen.Dxf.Document;

/// <summary>A whole drawing. Model space is in mm at full size and complete without its sheets, since many readers know no sheets.</summary>
public sealed record DxfDocument
{
    public Identity Identity { get; init; } = Identity.None;

    /// <summary>Denominator of the main view's scale: 10 at 1:10. Dashes are given in mm of paper and drawn this much longer.</summary>
    public double PlotScale { get; init; } = 1;

    public TextStyle TextStyle { get; init; } = TextStyle.Sans;

    public ImmutableArray<Layer> Layers { get; init; } = [];

    public ImmutableArray<Linetype> Linetypes { get; init; } = [];

    /// <summary>One for each scale; Standard is always written.</summary>
    public ImmutableArray<DimensionStyle> DimensionStyles { get; init; } = [];

    public ImmutableArray<Block> Blocks { get; init; } = [];

    /// <summary>In the order of drawing: fills, thin lines, thick lines, dimensions, texts.</summary>
    public ImmutableArray<Entity> Model { get; init; } = [];

    /// <summary>Without any, an empty A3 sheet is written, since the format asks for one.</summary>
    public ImmutableArray<Sheet> Sheets { get; init; } = [];

    /// <summary>Null leaves out the preset, the digest and the entities' parts.</summary>
    public Provenance? Provenance { get; init; }
}
