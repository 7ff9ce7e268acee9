using System.Collections.Immutable;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>A window of a sheet as it is compared with what was issued: where it stands on the sheet, and what of the model it shows.</summary>
/// <param name="Tall">Height of what it shows, in the model's unit.</param>
internal sealed record Window(DxfPoint Centre, double Width, double Height, DxfPoint Looks, double Tall) : Entity
{
    /// <summary>Layers that are not shown in it; sorted.</summary>
    internal ImmutableArray<string> Frozen { get; init; } = [];

    internal static Window Of(Viewport viewport) =>
        new(viewport.Centre, viewport.Width, viewport.Height, viewport.Looks, DxfNumber.OnGrid(viewport.Height, Grid.Length) * viewport.Scale)
        {
            Layer = viewport.Layer,
            Frozen = [.. viewport.Frozen.Order(StringComparer.Ordinal)],
        };

    internal override string Kind => "VIEWPORT";

    internal override Entity Cleaned() => this;

    // What it shows lies in the model, and does not go with it where it is moved.
    internal override void Walk(ITagSink sink)
    {
        sink.Place(10, 20, Centre);
        sink.Number(40, Width, Grid.Length);
        sink.Number(41, Height, Grid.Length);
        sink.Number(12, Looks.X, Grid.Length);
        sink.Number(22, Looks.Y, Grid.Length);
        sink.Number(45, Tall, Grid.Length);
        foreach (var layer in Frozen)
        {
            sink.Text(331, layer);
        }
    }

    internal override void Extend(Bounds bounds)
    {
        // a sheet is as large as its paper
    }
}
