using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>A drawing, settled to the last coordinate.</summary>
/// <param name="Warnings">Where the sheet is not what the author asked for.</param>
public sealed record ComposedSheet(Scene Scene, string Paper, double Scale, IReadOnlyList<string> Warnings);

/// <summary>From a section to what is on the paper: choose sheet and scale, draw, annotate, lay the tables.</summary>
public static class SheetComposer
{
    /// <param name="formats">A4 to A1.</param>
    public static ComposedSheet Compose(
        Section section, SheetText text, SheetRequest request, IReadOnlyList<SheetFormat> formats, LayerMap map, Identity identity)
    {
        var candidate = Candidates.For(request, formats).First(candidate => ViewRoom.Of(candidate.Format).Window(section, candidate.Scale) is not null);
        var (format, scale) = (candidate.Format, candidate.Scale);
        var room = ViewRoom.Of(format);
        var drawn = SectionView.Draw(section, new(scale, room.Window(section, scale)!.Value, request.Mirror));
        var origin = room.Origin(drawn.Bounds);
        var items = drawn.Items;
        var view = new View("section", scale, items, drawn.Bounds);
        var pages = PageComposer.Lay(format, text, scale, new("section", origin, format.Zones["view"]), room.TitleAt, KeyEntries.Of(drawn));
        var layers = map.Used(items.Concat(pages.SelectMany(page => page.Items)), format.Paper, black: false);
        return new(new(layers, [view], pages, identity), format.Paper, scale, []);
    }
}
