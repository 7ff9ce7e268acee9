using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using SkiaSharp;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>Draws marks on a canvas, for PDF and PNG alike.</summary>
/// <param name="height">Of the page in mm; y turns over here.</param>
/// <param name="scale">Canvas units in a millimetre.</param>
/// <param name="leastWidth">Thinner lines are drawn this wide, in canvas units: 1 for pixels, 0 for none.</param>
internal sealed class SkiaSink(SKCanvas canvas, Typeface typeface, SkiaFaces faces, double height, double scale, double leastWidth) : ISink, IDisposable
{
    private readonly SKPaint _line = new() { Style = SKPaintStyle.Stroke, StrokeJoin = SKStrokeJoin.Miter, StrokeMiter = 4, IsAntialias = true };
    private readonly SKPaint _area = new() { Style = SKPaintStyle.Fill, IsAntialias = true };
    private readonly SKFont _regular = Font(faces.Regular);
    private readonly SKFont _bold = Font(faces.Bold);
    private PaperPoint _origin;

    public void EnterView(Placement placement)
    {
        var window = placement.Window;
        canvas.Save();
        canvas.ClipRect(SKRect.Create(
            (float)(window.Left * scale), (float)((height - window.Top) * scale), (float)(window.Width * scale), (float)(window.Height * scale)));
        _origin = placement.Origin;
    }

    public void LeaveView()
    {
        canvas.Restore();
        _origin = default;
    }

    public void OpenGroup(string name)
    {
        // Pictures have no groups.
    }

    public void CloseGroup()
    {
        // Pictures have no groups.
    }

    public void Line(LayerRow row, string? part, IReadOnlyList<PaperPoint> points, bool closed)
    {
        var dashes = Dashes.Fit(Dashes.Pattern(row), Dashes.Length(points, closed), closed);
        using var path = new SKPathBuilder();
        if (dashes.Length == 0)
        {
            Add(path, points, closed);
        }
        else
        {
            foreach (var dash in Dashes.Split(points, closed, dashes))
            {
                Add(path, dash, closed: false);
            }
        }

        Draw(path, Pen(row, row.Width));
    }

    public void Ring(LayerRow row, string? part, PaperPoint centre, double diameter)
    {
        const int Sides = 180;
        if (Dashes.Pattern(row).Length > 0)
        {
            Line(row, part, Scenes.Ring.Corners(centre, diameter, Sides), closed: true);
            return;
        }

        var at = At(centre);
        canvas.DrawCircle(at.X, at.Y, (float)(diameter / 2 * scale), Pen(row, row.Width));
    }

    public void Area(LayerRow row, string? part, IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes)
    {
        using var path = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        Add(path, outline, closed: true);
        foreach (var hole in holes)
        {
            Add(path, hole, closed: true);
        }

        Draw(path, Brush(row));
    }

    public void Dots(LayerRow row, string? part, IReadOnlyList<PaperPoint> centres, double diameter)
    {
        using var path = new SKPathBuilder();
        foreach (var centre in centres)
        {
            var at = At(centre);
            path.AddCircle(at.X, at.Y, (float)(diameter / 2 * scale));
        }

        Draw(path, Brush(row));
    }

    public void Fill(LayerRow row, string? part, string name, List<Segment> strokes)
    {
        using var path = new SKPathBuilder();
        foreach (var stroke in strokes)
        {
            path.MoveTo(At(new(stroke.FromX, stroke.FromY)));
            path.LineTo(At(new(stroke.ToX, stroke.ToY)));
        }

        Draw(path, Pen(row, row.Width));
    }

    public void Words(LayerRow row, Text text)
    {
        var font = text.Bold ? _bold : _regular;
        font.Size = (float)(typeface.FontSize(text.Height, text.Bold) * scale);
        var width = typeface.Width(text.Words, text.Height, text.Bold) * scale;
        var left = (float)(text.Align switch { Align.Centre => -width / 2, Align.Right => -width, _ => 0 });
        var at = At(text.At);
        if (text.Rotation == 0)
        {
            canvas.DrawText(text.Words, at.X + left, at.Y, SKTextAlign.Left, font, Brush(row));
            return;
        }

        canvas.Save();
        canvas.Translate(at.X, at.Y);
        canvas.RotateDegrees((float)-text.Rotation);
        canvas.DrawText(text.Words, left, 0, SKTextAlign.Left, font, Brush(row));
        canvas.Restore();
    }

    public void Dispose()
    {
        _line.Dispose();
        _area.Dispose();
        _regular.Dispose();
        _bold.Dispose();
    }

    // Unhinted and to the fraction of a pixel, so that letters stand where they were measured.
    private static SKFont Font(SKTypeface face) => new(face)
    {
        Hinting = SKFontHinting.None,
        Subpixel = true,
        LinearMetrics = true,
        Edging = SKFontEdging.Antialias,
    };

    private SKPaint Pen(LayerRow row, double width)
    {
        _line.Color = new(row.Ink.Red, row.Ink.Green, row.Ink.Blue);
        _line.StrokeWidth = (float)Math.Max(width * scale, leastWidth);
        return _line;
    }

    private SKPaint Brush(LayerRow row)
    {
        _area.Color = new(row.Ink.Red, row.Ink.Green, row.Ink.Blue);
        return _area;
    }

    private void Draw(SKPathBuilder builder, SKPaint paint)
    {
        using var path = builder.Detach();
        canvas.DrawPath(path, paint);
    }

    private void Add(SKPathBuilder path, IReadOnlyList<PaperPoint> points, bool closed)
    {
        for (var i = 0; i < points.Count; i++)
        {
            if (i == 0)
            {
                path.MoveTo(At(points[i]));
            }
            else
            {
                path.LineTo(At(points[i]));
            }
        }

        if (closed)
        {
            path.Close();
        }
    }

    private SKPoint At(PaperPoint point) =>
        new((float)((_origin.X + point.X) * scale), (float)((height - _origin.Y - point.Y) * scale));
}
