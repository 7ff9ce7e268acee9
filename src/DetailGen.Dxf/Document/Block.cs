using System.Collections.Immutable;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Document;

/// <summary>Something drawn once and inserted elsewhere, such as a title block. It holds no inserts and no dimensions.</summary>
/// <param name="Content">Entities on layer 0 take the layer of the insert.</param>
public sealed record Block(string Name, ImmutableArray<Entity> Content)
{
    /// <summary>The point that comes to lie on the insert's position.</summary>
    public DxfPoint Base { get; init; }

    public ImmutableArray<AttributeDefinition> Fields { get; init; } = [];
}
