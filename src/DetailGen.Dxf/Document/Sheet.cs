using System.Collections.Immutable;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Document;

/// <summary>A sheet of paper; one unit is 1 mm and the lower left corner of the paper is the origin.</summary>
/// <param name="Name">Shown on the sheet's tab; unique, not Model.</param>
/// <param name="Paper">The size by its standard, such as <c>ISO A3</c>; width and height are what counts.</param>
/// <param name="Width">As seen, in mm.</param>
/// <param name="Height">As seen, in mm.</param>
public sealed record Sheet(string Name, string Paper, double Width, double Height)
{
    public ImmutableArray<Entity> Content { get; init; } = [];

    public ImmutableArray<Viewport> Viewports { get; init; } = [];
}

/// <summary>A window of a sheet onto model space, square to it and locked.</summary>
/// <param name="Layer">Best one that is not plotted, so that the frame is not.</param>
/// <param name="Centre">On the sheet, in mm.</param>
/// <param name="Width">On the sheet, in mm.</param>
/// <param name="Height">On the sheet, in mm.</param>
/// <param name="Looks">The point of the model in the window's middle.</param>
/// <param name="Scale">Denominator: 10 for 1:10.</param>
public sealed record Viewport(string Layer, DxfPoint Centre, double Width, double Height, DxfPoint Looks, double Scale)
{
    /// <summary>Layers that are not shown in this window.</summary>
    public ImmutableArray<string> Frozen { get; init; } = [];
}
