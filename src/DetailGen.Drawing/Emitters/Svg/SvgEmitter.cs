using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Svg;

/// <summary>
/// One page as SVG 1.1 in millimetres. Letters stay letters: the font is named, not embedded (two weights would be 20 times the drawing), and
/// every text carries its measured length, so that another font of the same widths or none at all keeps the layout.
/// </summary>
internal sealed class SvgEmitter(Page page) : IEmitter
{
    public string Extension => "svg";

    public void Emit(Scene scene, Stream output)
    {
        var writer = new SvgWriter();
        writer.Raw("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""u8).Number(page.Width);
        writer.Raw("mm\" height=\""u8).Number(page.Height).Raw("mm\" viewBox=\"0 0 "u8).Point(page.Width, page.Height);
        writer.Raw("\" fill=\"none\" stroke-linejoin=\"miter\" stroke-miterlimit=\"4\" style=\"font-kerning:none\" font-family=\"'"u8);
        writer.Escaped(scene.Typeface.Family).Raw("', Arial, Helvetica, sans-serif\">\n<title>"u8);
        writer.Escaped(Title(scene.Identity)).Raw("</title>\n<rect class=\"paper\" width=\""u8).Number(page.Width);
        writer.Raw("\" height=\""u8).Number(page.Height).Raw("\" fill=\"#ffffff\"/>\n"u8);

        var sink = new SvgSink(writer, page, scene.Typeface);
        new Painter(scene, sink).Paint(page);
        sink.Close();
        writer.Raw("</svg>\n"u8);
        output.Write(writer.Written);
    }

    private static string Title(Identity identity)
    {
        var number = string.Join('-', new[] { identity.Number, identity.Revision }.Where(part => part.Length > 0));
        return string.Join(": ", new[] { number, identity.Title }.Where(part => part.Length > 0));
    }
}
