using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Draws a section: what the eye sees before any annotation.</summary>
public static class SectionView
{
    public static DrawnView Draw(Section section, ViewOptions options)
    {
        var paper = new OnPaper(options.Scale, options.Mirror);
        var clipBounds = BreakLines.Clip(section, options.Window);
        var clipBox = paper.At(clipBounds);
        var clip = Region.Box(clipBox);
        var seen = section.Parts.Select(part => (Part: part, Region: Bands.Within(paper.At(part.Region), clip))).Where(entry => !entry.Region.IsEmpty).ToArray();
        var cut = new CutParts([.. seen.Where(entry => entry.Part is { Presence: Presence.Cut, IsAir: false, Sheet: null })]);

        var laid = SheetLayout.Lay(seen.Where(entry => entry.Part is { Sheet: not null, Presence: not Presence.Beyond }).Select(entry => entry.Part), paper, cut.OutlineHalf);
        cut = cut.Joined(laid.Where(sheet => sheet.Style.Sign == SheetSign.Line), paper);
        var locals = LocalParts.Of(seen.Where(entry => entry.Part is { Presence: Presence.Local, Sheet: null }), options.Scale);

        var filled = CutFills.Fill(cut, laid, locals, paper);
        var outlines = Outlines(cut, filled, laid, locals, clipBox);
        var beyond = Beyond(seen.Where(entry => entry.Part.Presence == Presence.Beyond), cut, laid, clipBox).Concat(OpeningSides(locals, laid));
        var breaks = BreakLines.Of(section, clipBounds, paper).ToArray();

        var items = new List<Item>();
        items.AddRange(filled.Items);
        items.AddRange(beyond);
        items.AddRange(outlines);
        items.AddRange(filled.Solids);
        items.AddRange(laid.OrderBy(sheet => sheet.Part.BuildOrder).SelectMany(sheet => Bands.Draw(sheet, clip)));
        items.AddRange(locals.SelectMany(local => local.Items));
        items.AddRange(breaks.Select(BreakLines.Draw));

        var parts = seen.Select(entry => Drawn(entry.Part, entry.Region, laid, filled, clip)).Where(part => !part.Visible.IsEmpty).OrderBy(part => part.Part.BuildOrder).ToArray();
        return new(options.Scale, options.Mirror, items, parts, breaks, Faults.Of(laid, filled, clip, options.Scale), ItemBounds.Of(items));
    }

    private static IEnumerable<Stroke> Outlines(CutParts cut, FilledParts filled, IReadOnlyList<LaidSheet> laid, IReadOnlyList<LocalPart> locals, Bounds clip)
    {
        var masks = Masks(laid).Concat(locals.Where(local => local.Opening).Select(local => Area.Of(Between(local.Region)))).ToArray();
        var edges = cut.Edges.Where(edge => !filled.Solid.Contains(edge.PartId)).Concat(filled.Joints).Where(edge => !OnCut(edge, clip)).ToList();
        return Edges.Chain([.. Edges.Once(edges).SelectMany(edge => Edges.Outside(edge, masks))]);
    }

    private static IEnumerable<Stroke> Beyond(IEnumerable<(Part Part, Region Region)> parts, CutParts cut, IReadOnlyList<LaidSheet> laid, Bounds clip)
    {
        var masks = cut.Parts.Select(entry => Area.Of(entry.Region)).Concat(Masks(laid)).ToArray();
        var edges = parts.SelectMany(entry => CutParts.EdgesOf(entry.Region, Rows.Beyond(entry.Part), 0.18, entry.Part)).Where(edge => !OnCut(edge, clip));
        return Edges.Chain([.. Edges.Once([.. edges]).SelectMany(edge => Edges.Outside(edge, masks))]);
    }

    // Head and foot of an open joint are drawn with bed and tray.
    private static IEnumerable<Stroke> OpeningSides(IReadOnlyList<LocalPart> locals, IReadOnlyList<LaidSheet> laid)
    {
        var masks = Masks(laid);
        return locals.Where(local => local.Opening).SelectMany(local => CutParts.EdgesOf(local.Region, Rows.Beyond(local.Part), 0.18, local.Part))
            .Where(edge => Math.Abs(edge.A.Y - edge.B.Y) > Math.Abs(edge.A.X - edge.B.X)).SelectMany(edge => Edges.Outside(edge, masks))
            .Select(edge => new Stroke(edge.Row, [edge.A, edge.B]) { PartId = edge.PartId });
    }

    private static Area[] Masks(IReadOnlyList<LaidSheet> laid) => [.. laid.Where(sheet => sheet.Style.Sign != SheetSign.Line).Select(sheet => Area.Of(sheet.Body))];

    // An open joint hides the faces of its leaf but not the bed above it.
    private static Region Between(Region opening) =>
        opening.Bounds is var box && box.Height > 0.2 ? Region.Box(box.Left, box.Bottom + 0.1, box.Right, box.Top - 0.1) : opening;

    // Where the drawing breaks off there is no edge, only the break line.
    private static bool OnCut(Edge edge, Bounds clip)
    {
        const double Near = 0.003;
        bool Both(Func<PaperPoint, double> of, double at) => Math.Abs(of(edge.A) - at) < Near && Math.Abs(of(edge.B) - at) < Near;
        return Both(p => p.X, clip.Left) || Both(p => p.X, clip.Right) || Both(p => p.Y, clip.Bottom) || Both(p => p.Y, clip.Top);
    }

    private static DrawnPart Drawn(Part part, Region region, IReadOnlyList<LaidSheet> laid, FilledParts filled, Region clip)
    {
        if (laid.FirstOrDefault(sheet => sheet.Part.Id == part.Id) is { } own)
        {
            return new(part.Id, part, Bands.Within(own.Body, clip), null, 0, own.Centre.Points);
        }

        var visible = part.Presence == Presence.Cut ? laid.Where(sheet => sheet.Style.Sign != SheetSign.Line).Aggregate(region, (rest, sheet) => rest.Minus(sheet.Body)) : region;
        return new(part.Id, part, visible, filled.Angles.TryGetValue(part.Id, out var angle) ? angle : null, filled.Variants.GetValueOrDefault(part.Id), []);
    }
}
