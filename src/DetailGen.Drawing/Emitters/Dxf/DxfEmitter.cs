using System.Collections.Immutable;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Writing;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>
/// The whole scene as one DXF file. Model space holds the main view (the first that is placed) at full size around the model's origin; further views
/// stand right of it, at full size too, their letters sized for their own scale. Each page is a layout <c>Sheet n</c> that looks at the views through
/// locked viewports at exact scale.
/// </summary>
internal sealed class DxfEmitter : IEmitter
{
    // Between views in model space, mm on paper of the main view, and the grid to which they are set.
    private const double ViewGap = 50;
    private const double ViewGrid = 100;

    public string Extension => "dxf";

    public void Emit(Scene scene, Stream output) => DxfWriter.Write(Document(scene), output);

    internal static DxfDocument Document(Scene scene)
    {
        var views = InOrder(scene);
        var scale = views.Count == 0 ? 1 : views[0].Scale;
        var hasParts = scene.Identity.Parameters.Length > 0;
        var tables = new DxfTables(scene.Typeface, new(scene.Layers), new(), new(scene.Typeface), new(), new(), [], hasParts);

        var places = Places(views);
        var model = ImmutableArray.CreateBuilder<Entity>();
        foreach (var view in views)
        {
            double? dashScale = view.Scale == scale ? null : view.Scale / scale;
            new DxfSpace(tables, places[view.Id], dashScale, model).Add(view.Items);
        }

        var sheets = scene.Pages.Select(page => SheetOf(page, tables, places)).ToImmutableArray();
        var (layers, linetypes) = tables.Layers.Tables();
        return new()
        {
            Identity = new(scene.Identity.Project, scene.Identity.Number, scene.Identity.Date),
            PlotScale = scale,
            TextStyle = scene.Typeface.Style,
            Layers = layers,
            Linetypes = linetypes,
            DimensionStyles = tables.Dimensions.Styles,
            Blocks = [.. tables.Blocks],
            Model = model.ToImmutable(),
            Sheets = sheets,
            Provenance = hasParts ? new(scene.Identity.Parameters, "detailgen 1") : null,
        };
    }

    private static List<View> InOrder(Scene scene)
    {
        var first = scene.Pages.SelectMany(page => page.Placements).FirstOrDefault()?.ViewId;
        return [.. scene.Views.OrderBy(view => view.Id == first ? 0 : 1)];
    }

    private static Dictionary<string, DxfPlace> Places(List<View> views)
    {
        var places = new Dictionary<string, DxfPlace>(StringComparer.Ordinal);
        var right = 0.0;
        foreach (var view in views)
        {
            var start = Math.Ceiling((right + ViewGap * views[0].Scale) / ViewGrid) * ViewGrid;
            var shift = places.Count == 0 ? 0 : Math.Ceiling((start - view.Bounds.Left * view.Scale) / ViewGrid) * ViewGrid;
            places.Add(view.Id, new(view.Scale, new(shift, 0)));
            right = Math.Max(right, view.Bounds.Right * view.Scale + shift);
        }

        return places;
    }

    private static Sheet SheetOf(Page page, DxfTables tables, Dictionary<string, DxfPlace> places)
    {
        var content = ImmutableArray.CreateBuilder<Entity>();
        new DxfSpace(tables, DxfPlace.Paper, null, content).Add(page.Items);
        return new(FormattableString.Invariant($"Sheet {page.Number}"), Paper(page), page.Width, page.Height)
        {
            Content = content.ToImmutable(),
            Viewports = [.. page.Placements.Select(placement => ViewportOf(placement, tables, places[placement.ViewId]))],
        };
    }

    private static Viewport ViewportOf(Placement placement, DxfTables tables, DxfPlace place)
    {
        var window = placement.Window;
        var centre = new PaperPoint((window.Left + window.Right) / 2, (window.Bottom + window.Top) / 2);
        return new(tables.Layers.UseForFrames(), new(centre.X, centre.Y), window.Width, window.Height, place.At(centre - placement.Origin), place.Scale);
    }

    private static string Paper(Page page) => page.Paper is ['A', _] ? $"ISO {page.Paper}" : page.Paper.Replace('-', ' ');
}
