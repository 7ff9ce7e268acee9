using DetailGen.Drawing.Emitters.Dxf;
using DetailGen.Drawing.Emitters.Pdf;
using DetailGen.Drawing.Emitters.Png;
using DetailGen.Drawing.Emitters.Svg;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters;

/// <summary>What a user may choose about files.</summary>
/// <param name="Dpi">Dots per inch of PNG, 10 to 2400.</param>
/// <param name="PixelWidth">Width of each PNG in pixels, 16 to 20 000; null lets <paramref name="Dpi"/> decide.</param>
public sealed record EmitOptions(double Dpi = 300, int? PixelWidth = null)
{
    public static EmitOptions Usual { get; } = new();
}

/// <summary>One file's bytes, not yet on any disk.</summary>
/// <param name="Suffix">What follows the drawing's name: empty for the first or only file, <c>-2</c> for the second sheet of SVG and PNG.</param>
/// <param name="Format">Also the extension: dxf, svg, pdf or png.</param>
public sealed record EmittedFile(string Suffix, string Format, byte[] Bytes);

/// <summary>Turns a scene into files. The same scene and options give the same bytes, in every culture.</summary>
public static class SceneFiles
{
    /// <summary>The formats of drawings, in the order in which files are told.</summary>
    public static IReadOnlyList<string> Formats { get; } = ["dxf", "svg", "pdf", "png"];

    /// <summary>The files of a scene: SVG and PNG one for each page, PDF and DXF one with all pages. In the order of <paramref name="formats"/>, pages in order.</summary>
    /// <exception cref="ArgumentException">A format that is not in <see cref="Formats"/>.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size outside the range of <see cref="EmitOptions"/>.</exception>
    /// <exception cref="KeyNotFoundException">An item names a row that the scene's layers lack.</exception>
    public static IReadOnlyList<EmittedFile> Emit(Scene scene, IEnumerable<string> formats, EmitOptions? options = null)
    {
        var files = new List<EmittedFile>();
        foreach (var format in formats)
        {
            switch (format)
            {
                case "dxf":
                    files.Add(File(scene, new DxfEmitter(), ""));
                    break;
                case "pdf":
                    files.Add(File(scene, new PdfEmitter(), ""));
                    break;
                case "svg":
                    files.AddRange(scene.Pages.Select(page => File(scene, new SvgEmitter(page), Suffix(scene, page))));
                    break;
                case "png":
                    files.AddRange(scene.Pages.Select(page => File(scene, new PngEmitter(page, options ?? EmitOptions.Usual), Suffix(scene, page))));
                    break;
                default:
                    throw new ArgumentException($"'{format}' is not a format of drawings: {string.Join(", ", Formats)}.", nameof(formats));
            }
        }

        return files;
    }

    private static string Suffix(Scene scene, Page page) => ReferenceEquals(page, scene.Pages[0]) ? "" : FormattableString.Invariant($"-{page.Number}");

    private static EmittedFile File(Scene scene, IEmitter emitter, string suffix)
    {
        using var output = new MemoryStream();
        emitter.Emit(scene, output);
        return new(suffix, emitter.Extension, output.ToArray());
    }
}
