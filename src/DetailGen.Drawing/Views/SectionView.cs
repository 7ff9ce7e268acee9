using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>Draws a section: what the eye sees before any annotation. What is the same in all drawings of it is found once.</summary>
public sealed class SectionView
{
    private readonly RegionMemory _memory;
    private readonly Pressed _pressed;

    public SectionView(Section section)
    {
        (Section, _memory) = (section, new());
        _pressed = new(section, _memory);
    }

    public Section Section { get; }

    public static DrawnView Draw(Section section, ViewOptions options) => new SectionView(section).Draw(options);

    public DrawnView Draw(ViewOptions options)
    {
        var paper = new OnPaper(options.Scale, options.Mirror);
        var clipBounds = BreakLines.Clip(Section, options.Window);
        var clipBox = paper.At(clipBounds);
        var porthole = options.Only is { } only ? new Porthole(paper.At(only.Region)) : null;
        clipBox = porthole?.Within(clipBox) ?? clipBox;
        var clip = Region.Box(clipBox);
        var seen = Section.Parts.Where(part => options.Hidden?.Invoke(part) != true).Select(part => (Part: part, Region: Bands.Within(paper.At(part.Region), clip))).Where(entry => !entry.Region.IsEmpty).ToArray();
        var cut = new CutParts([.. seen.Where(entry => IsSolid(entry.Part))]);

        var laid = SheetLayout.Lay(seen.Where(entry => entry.Part is { Sheet: not null, Presence: not Presence.Beyond }).Select(entry => entry.Part), paper, cut.OutlineHalf);
        (var solid, laid) = _pressed.Drawn(cut.Parts, laid);
        laid = [.. laid.Select(sheet => sheet with { Seen = Bands.Within(sheet.Body, clip) })];
        cut = new CutParts(solid).Joined(laid.Where(sheet => sheet.Style.Sign == SheetSign.Line), paper, _memory);
        var locals = LocalParts.Of(seen.Where(entry => entry.Part is { Presence: Presence.Local, Sheet: null }), options.Scale);

        var filled = CutFills.Fill(cut, laid, locals, paper, _memory);
        var masks = Masks(laid);
        var outlines = Outlines(cut, filled, laid, locals, masks, edge => OnCut(edge, clipBox));
        var beyond = Beyond(seen.Where(entry => entry.Part.Presence == Presence.Beyond), cut, masks, edge => OnCut(edge, clipBox));
        var breaks = porthole is not null ? [] : BreakLines.Of(Section, clipBounds, paper, [.. seen.Where(entry => entry.Part.Presence == Presence.Cut).Select(entry => entry.Region)]).ToArray();

        var items = new List<Item>();
        items.AddRange(filled.Items);
        items.AddRange(beyond);
        items.AddRange(outlines);
        items.AddRange(Openings(locals, cut, masks));
        items.AddRange(filled.Solids);
        items.AddRange(laid.OrderBy(sheet => sheet.Part.BuildOrder).SelectMany(sheet => Bands.Draw(sheet, clip, options.Scale)));
        items.AddRange(locals.SelectMany(local => local.Items));
        items.AddRange(breaks.Select(BreakLines.Draw));
        items = porthole is null ? items : [.. items.SelectMany(porthole.Seen)];

        var places = solid.ToDictionary(entry => entry.Part.Id, entry => entry.Region, StringComparer.Ordinal);
        var parts = seen.Select(entry => Drawn(entry.Part, places.GetValueOrDefault(entry.Part.Id, entry.Region), laid, locals, filled, clip))
            .Select(part => porthole?.Seen(part) ?? part).Where(part => !part.Visible.IsEmpty).OrderBy(part => part.Part.BuildOrder).ToArray();
        return new(options.Scale, options.Mirror, items, parts, breaks, Faults.Of(laid, filled, options.Scale), ItemBounds.Of(items));
    }

    internal static bool IsSolid(Part part) => part is { Presence: Presence.Cut, IsAir: false, Sheet: null };

    private IEnumerable<Stroke> Outlines(CutParts cut, FilledParts filled, IReadOnlyList<LaidSheet> laid, IReadOnlyList<LocalPart> locals, Area[] sheets, Func<Edge, bool> onCut)
    {
        Area[] openings = [.. locals.Where(local => local.Opening).Select(local => Area.Of(Between(local.Region)))];
        Area[] masks = [.. sheets, .. openings];
        var edges = Edges.Once([.. cut.Edges.Where(edge => !filled.Solid.Contains(edge.PartId)).Concat(filled.Joints).Where(edge => !onCut(edge))]);
        return Edges.Chain([.. edges.SelectMany(edge => Edges.Outside(edge, masks)), .. Bared(edges, cut, laid, openings)]);
    }

    // A course from which a sheet in its bed is lifted keeps its upper edge, as that of a joint, where bands leave white for it.
    private IEnumerable<Edge> Bared(IReadOnlyList<Edge> edges, CutParts cut, IReadOnlyList<LaidSheet> laid, IReadOnlyList<Area> openings)
    {
        const double Shortest = 1.0;
        Area[] lifted = [.. laid.Where(IsLifted).Select(sheet => Area.Of(Under(sheet)))];
        Area[] near = [.. laid.Where(_ => lifted.Length > 0).Select(sheet => Area.Of(_memory.Grow(sheet.Body, Faults.LeastGap))), .. openings];
        return
            from edge in edges
            let part = cut.Parts.FirstOrDefault(entry => entry.Part.Id == edge.PartId || Courses.JointsOf(entry.Part.Id) == edge.PartId).Part
            where part?.Coursing is not null
            from bared in Edges.Inside(edge, lifted).SelectMany(piece => Edges.Outside(piece, near))
            where bared.Length >= Shortest
            select bared with { Row = Rows.Joint(part), Width = Rows.JointWidth };
    }

    private static IEnumerable<Stroke> Beyond(IEnumerable<(Part Part, Region Region)> parts, CutParts cut, Area[] sheets, Func<Edge, bool> onCut)
    {
        var masks = cut.Parts.Select(entry => Area.Of(entry.Region)).Concat(sheets).ToArray();
        var edges = parts.SelectMany(entry => CutParts.EdgesOf(entry.Region, Rows.Beyond(entry.Part), 0.18, entry.Part)).Where(edge => !onCut(edge));
        return Edges.Chain([.. Edges.Once([.. edges]).SelectMany(edge => Edges.Outside(edge, masks))]);
    }

    // The sides of an open joint are arrises beyond; its head is a bed of the leaf, its foot the tray or sheet it stands on.
    private static IEnumerable<Stroke> Openings(IReadOnlyList<LocalPart> locals, CutParts cut, Area[] masks)
    {
        foreach (var local in locals.Where(local => local.Opening))
        {
            var head = local.Region.Bounds.Top;
            foreach (var edge in CutParts.EdgesOf(local.Region, Rows.Beyond(local.Part), 0.18, local.Part).SelectMany(edge => Edges.Outside(edge, masks)))
            {
                var level = Math.Abs(edge.A.Y - edge.B.Y) < 0.01;
                var above = 0.5 * (edge.A + edge.B) + new PaperPoint(0, 0.1);
                var leaf = level && edge.A.Y > head - 0.01 ? cut.Parts.FirstOrDefault(entry => entry.Region.Contains(new(above.X, above.Y))).Part : null;
                if (!level || leaf is not null)
                {
                    yield return new Stroke(leaf is null ? edge.Row : Rows.Cut(leaf), [edge.A, edge.B]) { PartId = edge.PartId };
                }
            }
        }
    }

    // A sheet between two solids that is lifted over others takes the interface with it.
    private Area[] Masks(IReadOnlyList<LaidSheet> laid) =>
    [
        .. laid.Where(sheet => sheet.Style.Sign != SheetSign.Line)
            .Select(sheet => Area.Of(IsLifted(sheet) ? _memory.Union(sheet.Body, Under(sheet)) : sheet.Body)),
    ];

    private static bool IsLifted(LaidSheet sheet) => sheet.Style.Sign != SheetSign.Line && sheet.Part.Sheet!.Seat == Seat.Between && sheet.Profile.Plateaus.Any();

    // The band with the white beneath it, down to the face.
    private Region Under(LaidSheet sheet) => _memory.Grow(sheet.Cover, -SheetStyles.FillClear);

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

    private DrawnPart Drawn(Part part, Region region, IReadOnlyList<LaidSheet> laid, IReadOnlyList<LocalPart> locals, FilledParts filled, Region clip)
    {
        if (laid.FirstOrDefault(sheet => sheet.Part.Id == part.Id) is { } own)
        {
            return new(part.Id, part, own.Seen, null, 0, own.Centre.Points);
        }

        // Thin metal is drawn thicker than it is.
        var visible = locals.FirstOrDefault(local => local.Part.Id == part.Id) is { } thickened ? Bands.Within(thickened.Region, clip) : part.Presence == Presence.Cut ? laid.Where(sheet => sheet.Style.Sign != SheetSign.Line).Aggregate(region, (rest, sheet) => _memory.Minus(rest, sheet.Body)) : region;
        return new(part.Id, part, visible, filled.Angles.TryGetValue(part.Id, out var angle) ? angle : null, filled.Variants.GetValueOrDefault(part.Id), []);
    }
}
