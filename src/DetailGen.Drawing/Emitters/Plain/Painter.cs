using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Emitters.Plain;

/// <summary>Hands a page to a sink in drawing order: the views through their windows, then the page's own items. Rows that are not plotted stay away.</summary>
internal sealed class Painter(Scene scene, ISink sink)
{
    private readonly LayerIndex _layers = new(scene.Layers);

    public void Paint(Page page)
    {
        foreach (var placement in page.Placements)
        {
            var view = scene.Views.FirstOrDefault(view => view.Id == placement.ViewId)
                ?? throw new KeyNotFoundException($"The scene has no view {placement.ViewId}.");
            sink.EnterView(placement);
            Paint(view.Items);
            sink.LeaveView();
        }

        Paint(page.Items);
    }

    private void Paint(IReadOnlyList<Item> items)
    {
        foreach (var item in items)
        {
            Paint(item);
        }
    }

    private void Paint(Item item)
    {
        var row = _layers[item.Row];
        switch (item)
        {
            case Group group:
                sink.OpenGroup(group.Name);
                Paint(group.Items);
                sink.CloseGroup();
                break;
            case Form form:
                Paint(form);
                break;
            case Dimension dimension:
                sink.OpenGroup(dimension.MeasureId.Length > 0 ? dimension.MeasureId : "dimension");
                foreach (var piece in Dimensions.Picture(dimension, scene.Typeface).Items)
                {
                    Paint(piece);
                }

                sink.CloseGroup();
                break;
            default:
                if (row.Plotted)
                {
                    Paint(item, row);
                }

                break;
        }
    }

    private void Paint(Form form)
    {
        sink.OpenGroup(form.Name);
        Paint(form.Items);
        foreach (var value in form.Values)
        {
            Paint(value.Text);
        }

        sink.CloseGroup();
    }

    private void Paint(Item item, LayerRow row)
    {
        switch (item)
        {
            case Stroke stroke when stroke.Points.Count > 1:
                sink.Line(row, stroke.PartId, stroke.Points, stroke.Closed);
                break;
            case Stroke:
                break;
            case Ring ring:
                sink.Ring(row, ring.PartId, ring.Centre, ring.Diameter);
                break;
            case Solid solid:
                sink.Area(row, solid.PartId, solid.Outline, solid.Holes);
                break;
            case Dot dot:
                sink.Dots(row, dot.PartId, [dot.Centre], dot.Diameter);
                break;
            case Grains grains:
                sink.Dots(row, grains.PartId, grains.Centres, grains.Diameter);
                break;
            case Hatch hatch:
                sink.Fill(row, hatch.PartId, hatch.Fill, HatchClipper.Clip(hatch, row.Width));
                break;
            case Text text:
                Words(row, text);
                break;
            case Paragraph paragraph:
                for (var i = 0; i < paragraph.Lines.Count; i++)
                {
                    var at = paragraph.At - new PaperPoint(0, i * paragraph.Pitch);
                    Words(row, new(paragraph.Row, paragraph.Lines[i], at, paragraph.Height) { PartId = paragraph.PartId });
                }

                break;
            default:
                throw new NotSupportedException($"No emitter can draw a {item.GetType().Name}.");
        }
    }

    private void Words(LayerRow row, Text text)
    {
        if (!string.IsNullOrWhiteSpace(text.Words))
        {
            sink.Words(row, text);
        }
    }
}
