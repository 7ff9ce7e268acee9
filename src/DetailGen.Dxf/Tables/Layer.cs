namespace DetailGen.Dxf.Tables;

/// <summary>A layer. Layer 0 is always written, whether it is listed or not.</summary>
public sealed record Layer(string Name)
{
    public DxfColor Color { get; init; } = DxfColor.Ink;

    /// <summary>A linetype of the document, or <see cref="Linetype.Continuous"/>.</summary>
    public string Linetype { get; init; } = Tables.Linetype.Continuous;

    /// <summary>In 1/100 mm, one of <see cref="LineWeights"/>.</summary>
    public int Weight { get; init; } = LineWeights.Default;

    /// <summary>False for help lines and the frames of viewports.</summary>
    public bool IsPlotted { get; init; } = true;
}
