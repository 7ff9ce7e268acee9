using DetailGen.Drawing.Lettering;
using SkiaSharp;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>The embedded fonts as the renderer knows them.</summary>
internal sealed class SkiaFaces : IDisposable
{
    private static readonly Lazy<SkiaFaces> All = new(() => new(Letters.Regular.Bytes.Span, Letters.Bold.Bytes.Span));

    private SkiaFaces(ReadOnlySpan<byte> regular, ReadOnlySpan<byte> bold) => (Regular, Bold) = (Open(regular), Open(bold));

    /// <summary>With every letter, opened at first use and never disposed.</summary>
    public static SkiaFaces Whole => All.Value;

    public SKTypeface Regular { get; }

    public SKTypeface Bold { get; }

    /// <summary>With the letters that are used and no more.</summary>
    public static SkiaFaces Only(UsedLetters used) => new(Letters.Regular.Subset(used.Regular), Letters.Bold.Subset(used.Bold));

    public void Dispose()
    {
        Regular.Dispose();
        Bold.Dispose();
    }

    private static SKTypeface Open(ReadOnlySpan<byte> font)
    {
        using var data = SKData.CreateCopy(font);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException("The embedded font cannot be opened.");
    }
}
