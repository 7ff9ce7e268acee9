using SkiaSharp;

namespace DetailGen.Drawing.Lettering;

/// <summary>The two fonts of a typeface as the renderer knows them.</summary>
internal sealed class SkiaFaces : IDisposable
{
    private SkiaFaces(SKTypeface regular, SKTypeface bold) => (Regular, Bold) = (regular, bold);

    public SKTypeface Regular { get; }

    public SKTypeface Bold { get; }

    /// <exception cref="InvalidOperationException">The renderer does not take a font.</exception>
    public static SkiaFaces Of(ReadOnlySpan<byte> regular, ReadOnlySpan<byte> bold) => new(
        Open(regular) ?? throw new InvalidOperationException("The regular font cannot be opened."),
        Open(bold) ?? throw new InvalidOperationException("The bold font cannot be opened."));

    /// <summary>Whether the renderer takes the font, which has a mind of its own about damage.</summary>
    public static bool Takes(ReadOnlySpan<byte> font)
    {
        using var face = Open(font);
        return face is not null;
    }

    public void Dispose()
    {
        Regular.Dispose();
        Bold.Dispose();
    }

    private static SKTypeface? Open(ReadOnlySpan<byte> font)
    {
        using var data = SKData.CreateCopy(font);
        return SKTypeface.FromData(data);
    }
}
