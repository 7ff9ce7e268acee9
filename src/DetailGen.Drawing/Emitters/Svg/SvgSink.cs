using DetailGen.Drawing.Emitters.Plain;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Svg;

/// <summary>Writes marks in page millimetres, y downwards. Marks of one row that follow each other share a group with the row's look.</summary>
internal sealed class SvgSink(SvgWriter writer, Page page, Typeface typeface) : ISink
{
    private enum Look
    {
        Line,
        Area,
        Letters,
    }

    private (LayerRow Row, Look Look)? _open;
    private PaperPoint _origin;
    private int _clips;

    public void EnterView(Placement placement)
    {
        Close();
        _clips++;
        var window = placement.Window;
        writer.Raw("<clipPath id=\"window-"u8).Number(_clips).Raw("\"><rect x=\""u8).Number(window.Left).Raw("\" y=\""u8).Number(page.Height - window.Top);
        writer.Raw("\" width=\""u8).Number(window.Width).Raw("\" height=\""u8).Number(window.Height).Raw("\"/></clipPath>\n<g class=\"view\" data-view=\""u8);
        writer.Escaped(placement.ViewId).Raw("\" clip-path=\"url(#window-"u8).Number(_clips).Raw(")\">\n"u8);
        _origin = placement.Origin;
    }

    public void LeaveView()
    {
        Close();
        writer.Raw("</g>\n"u8);
        _origin = default;
    }

    public void OpenGroup(string name)
    {
        Close();
        writer.Raw("<g class=\"group\" data-name=\""u8).Escaped(name).Raw("\">\n"u8);
    }

    public void CloseGroup()
    {
        Close();
        writer.Raw("</g>\n"u8);
    }

    /// <summary>Ends the group of the row that is open.</summary>
    public void Close()
    {
        if (_open is not null)
        {
            writer.Raw("</g>\n"u8);
            _open = null;
        }
    }

    public void Line(LayerRow row, string? part, IReadOnlyList<PaperPoint> points, bool closed)
    {
        Begin(row, Look.Line);
        Mark("<path"u8, part);
        BrokenLike(row, Dashes.Length(points, closed), closed);
        writer.Raw(" d=\""u8);
        Outline(points, closed);
        writer.Raw("\"/>\n"u8);
    }

    public void Ring(LayerRow row, string? part, PaperPoint centre, double diameter)
    {
        Begin(row, Look.Line);
        Circle(part, centre, diameter);
        BrokenLike(row, Math.PI * diameter, closed: true);
        writer.Raw("/>\n"u8);
    }

    public void Area(LayerRow row, string? part, IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes)
    {
        Begin(row, Look.Area);
        Mark("<path"u8, part);
        writer.Raw(" fill-rule=\"evenodd\" d=\""u8);
        Outline(outline, closed: true);
        foreach (var hole in holes)
        {
            Outline(hole, closed: true);
        }

        writer.Raw("\"/>\n"u8);
    }

    public void Dots(LayerRow row, string? part, IReadOnlyList<PaperPoint> centres, double diameter)
    {
        if (centres.Count == 1)
        {
            Begin(row, Look.Area);
            Circle(part, centres[0], diameter);
            writer.Raw("/>\n"u8);
            return;
        }

        // Round ends of lines without length: a tenth of the bytes of as many circles.
        Begin(row, Look.Line);
        Mark("<path class=\"grains\""u8, part);
        writer.Raw(" stroke-linecap=\"round\" stroke-width=\""u8).Number(diameter).Raw("\" d=\""u8);
        foreach (var centre in centres)
        {
            writer.Raw("M"u8);
            At(centre);
            writer.Raw("h0"u8);
        }

        writer.Raw("\"/>\n"u8);
    }

    public void Fill(LayerRow row, string? part, string name, List<Segment> strokes)
    {
        if (strokes.Count == 0)
        {
            return;
        }

        Begin(row, Look.Line);
        Mark("<path"u8, part);
        writer.Raw(" data-fill=\""u8).Escaped(name).Raw("\" d=\""u8);
        foreach (var stroke in strokes)
        {
            writer.Raw("M"u8);
            At(new(stroke.FromX, stroke.FromY));
            writer.Raw("L"u8);
            At(new(stroke.ToX, stroke.ToY));
        }

        writer.Raw("\"/>\n"u8);
    }

    public void Words(LayerRow row, Text text)
    {
        Begin(row, Look.Letters);
        Mark("<text"u8, text.PartId);
        var (x, y) = (_origin.X + text.At.X, page.Height - _origin.Y - text.At.Y);
        writer.Raw(" x=\""u8).Number(x).Raw("\" y=\""u8).Number(y).Raw("\" font-size=\""u8).Number(typeface.FontSize(text.Height, text.Bold)).Raw("\""u8);
        writer.Raw(text.Align switch { Align.Centre => " text-anchor=\"middle\""u8, Align.Right => " text-anchor=\"end\""u8, _ => default });
        if (text.Bold)
        {
            writer.Raw(" font-weight=\"700\""u8);
        }

        if (text.Rotation != 0)
        {
            writer.Raw(" transform=\"rotate("u8).Number(-text.Rotation).Raw(" "u8).Point(x, y).Raw(")\""u8);
        }

        writer.Raw(" textLength=\""u8).Number(typeface.Width(text.Words, text.Height, text.Bold));
        writer.Raw("\" lengthAdjust=\"spacingAndGlyphs\">"u8).Escaped(text.Words).Raw("</text>\n"u8);
    }

    private void Begin(LayerRow row, Look look)
    {
        if (_open == (row, look))
        {
            return;
        }

        Close();
        writer.Raw("<g class=\""u8).Escaped(row.Row.Replace('.', '-')).Raw("\" data-layer=\""u8).Escaped(row.Name);
        if (look == Look.Line)
        {
            writer.Raw("\" stroke=\""u8);
            Ink(row.Ink);
            writer.Raw("\" stroke-width=\""u8).Number(row.Width);
        }
        else
        {
            writer.Raw("\" fill=\""u8);
            Ink(row.Ink);
        }

        writer.Raw("\">\n"u8);
        _open = (row, look);
    }

    private void Mark(ReadOnlySpan<byte> tag, string? part)
    {
        writer.Raw(tag);
        if (part is not null)
        {
            writer.Raw(" data-part=\""u8).Escaped(part).Raw("\""u8);
        }
    }

    private void Circle(string? part, PaperPoint centre, double diameter)
    {
        Mark("<circle"u8, part);
        writer.Raw(" cx=\""u8).Number(_origin.X + centre.X).Raw("\" cy=\""u8).Number(page.Height - _origin.Y - centre.Y);
        writer.Raw("\" r=\""u8).Number(diameter / 2).Raw("\""u8);
    }

    private void BrokenLike(LayerRow row, double length, bool closed)
    {
        var dashes = Dashes.Fit(Dashes.Pattern(row), length, closed);
        if (dashes.Length == 0)
        {
            return;
        }

        writer.Raw(" stroke-dasharray=\""u8);
        for (var i = 0; i < dashes.Length; i++)
        {
            writer.Raw(i == 0 ? default : " "u8).Number(dashes[i]);
        }

        writer.Raw("\""u8);
    }

    private void Outline(IReadOnlyList<PaperPoint> points, bool closed)
    {
        for (var i = 0; i < points.Count; i++)
        {
            writer.Raw(i == 0 ? "M"u8 : "L"u8);
            At(points[i]);
        }

        writer.Raw(closed ? "Z"u8 : default);
    }

    private void At(PaperPoint point) => writer.Point(_origin.X + point.X, page.Height - _origin.Y - point.Y);

    private void Ink(Ink ink)
    {
        Span<byte> hex = stackalloc byte[7];
        hex[0] = (byte)'#';
        Hex(ink.Red, hex[1..]);
        Hex(ink.Green, hex[3..]);
        Hex(ink.Blue, hex[5..]);
        writer.Raw(hex);
    }

    private static void Hex(byte value, Span<byte> into)
    {
        into[0] = "0123456789abcdef"u8[value >> 4];
        into[1] = "0123456789abcdef"u8[value & 15];
    }
}
