namespace DetailGen.Dxf;

/// <summary>A colour: an index of the format's palette, and beside it the true colour where there is one.</summary>
/// <param name="Index">1 to 255; 7 turns with the background and plots black.</param>
/// <param name="TrueColor">r·65536 + g·256 + b, or null.</param>
public readonly record struct DxfColor(int Index, int? TrueColor = null)
{
    /// <summary>Black on paper, white on a dark screen: the colour of drawn lines and letters.</summary>
    public static DxfColor Ink { get; } = new(7);

    /// <summary>A grey or a hue, with the nearest index for readers that know no true colour. Pure black is <see cref="Ink"/>,
    /// because true black vanishes on a dark screen.</summary>
    public static DxfColor FromRgb(byte red, byte green, byte blue) =>
        (red, green, blue) is (0, 0, 0) ? Ink : new(Palette.Nearest(red, green, blue), (red << 16) | (green << 8) | blue);
}
