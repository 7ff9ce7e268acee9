using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Auditing;

/// <summary>One line of words.</summary>
/// <param name="Owner">Number of the item, or of the outermost group, that it belongs to.</param>
/// <param name="Window">What it must stay within.</param>
internal sealed record InkText(int Owner, string Name, PaperBox Box, PaperBox? Window);

/// <summary>One straight piece of a line.</summary>
/// <param name="Half">Half its width, mm.</param>
internal sealed record InkLine(int Owner, string Name, PaperPoint From, PaperPoint To, double Half, LineRole Role, PaperBox? Window);

/// <summary>A filled area.</summary>
internal sealed record InkArea(string Name, IReadOnlyList<PaperPoint> Outline, IReadOnlyList<IReadOnlyList<PaperPoint>> Holes)
{
    internal PaperBox Around { get; } = new(Outline.Min(point => point.X), Outline.Min(point => point.Y), Outline.Max(point => point.X), Outline.Max(point => point.Y));
}

/// <summary>A leader with the place that it points at.</summary>
/// <param name="Tip">Page mm.</param>
/// <param name="TipInView">The same place in the view's own mm.</param>
/// <param name="Run">From the bend to the tip, mm.</param>
internal sealed record InkLeader(string Name, string ViewId, string? PartId, PaperPoint Tip, PaperPoint TipInView, double Run, bool IsArrow);

/// <summary>What a line is for.</summary>
internal enum LineRole
{
    /// <summary>Outlines, witness lines, rules: leaders may cross them, texts may not.</summary>
    Plain,
    Leader,
    Dimension,
}

/// <summary>A finished page taken apart into ink, all in page mm. It reads the items alone and knows nothing of how they came to their places.</summary>
internal sealed class PageInk
{
    private const int RingSides = 48;
    private readonly Typeface _typeface;
    private readonly Dictionary<string, double> _half;
    private PaperPoint _shift;
    private PaperBox? _window;
    private string _view = "";
    private int _owner;

    private PageInk(Scene scene) => (_typeface, _half) = (scene.Typeface, scene.Layers.ToDictionary(layer => layer.Row, layer => layer.Width / 2, StringComparer.Ordinal));

    internal List<InkText> Texts { get; } = [];

    internal List<InkLine> Lines { get; } = [];

    internal List<InkArea> Areas { get; } = [];

    internal List<InkLeader> Leaders { get; } = [];

    internal static PageInk Of(Scene scene, Page page)
    {
        var ink = new PageInk(scene);
        foreach (var placement in page.Placements)
        {
            ink.Read(placement, scene.Views.First(view => view.Id == placement.ViewId).Items);
        }

        ink.Read(null, page.Items);
        return ink;
    }

    /// <summary>Of items alone.</summary>
    /// <param name="placement">Where their view stands on the page; null for items of the page itself.</param>
    internal static PageInk Of(Scene scene, Placement? placement, IReadOnlyList<Item> items)
    {
        var ink = new PageInk(scene);
        ink.Read(placement, items);
        return ink;
    }

    /// <summary>What came to the page since.</summary>
    internal void Add(PageInk more)
    {
        Texts.AddRange(more.Texts);
        Lines.AddRange(more.Lines);
        Areas.AddRange(more.Areas);
        Leaders.AddRange(more.Leaders);
    }

    private void Read(Placement? placement, IReadOnlyList<Item> items)
    {
        (_shift, _window, _view) = (placement?.Origin ?? default, placement?.Window, placement?.ViewId ?? "");
        Read(items);
    }

    private void Read(IReadOnlyList<Item> items)
    {
        foreach (var item in items)
        {
            _owner++;
            Read(item, NameOf(item));
        }
    }

    private static string NameOf(Item item) => item switch
    {
        Group group => group.Name,
        Form form => form.Name,
        Dimension dimension => "dimension " + dimension.MeasureId,
        Text text => Quoted(text.Words),
        Paragraph { Lines: [var first, ..] } => Quoted(first),
        { PartId: { } part } => part,
        _ => item.Row,
    };

    private static string Quoted(string words) => '"' + (words.Length > 40 ? words[..39] + "…" : words) + '"';

    private void Read(Item item, string name)
    {
        switch (item)
        {
            case Text text:
                AddText(text, name);
                break;
            case Paragraph paragraph:
                for (var i = 0; i < paragraph.Lines.Count; i++)
                {
                    AddText(new(paragraph.Row, paragraph.Lines[i], paragraph.At - new PaperPoint(0, i * paragraph.Pitch), paragraph.Height), name);
                }

                break;
            case Stroke stroke:
                AddLine(stroke, name, IsLeader(stroke) ? LineRole.Leader : LineRole.Plain);
                break;
            case Ring ring:
                AddLine(new(ring.Row, Ring.Corners(ring.Centre, ring.Diameter, RingSides), Closed: true), name, LineRole.Plain);
                break;
            case Dot dot:
                Lines.Add(new(_owner, name, dot.Centre + _shift, dot.Centre + _shift, dot.Diameter / 2, LineRole.Plain, _window));
                break;
            case Grains grains:
                Lines.AddRange(grains.Centres.Select(centre => new InkLine(_owner, name, centre + _shift, centre + _shift, grains.Diameter / 2, LineRole.Plain, null)));
                break;
            case Solid solid:
                AddArea(solid.Outline, solid.Holes, name);
                break;
            case Hatch hatch:
                AddArea(hatch.Outline, hatch.Holes, name);
                break;
            case Dimension dimension:
                var picture = Dimensions.Picture(dimension, _typeface);
                foreach (var part in picture.Items)
                {
                    if (ReferenceEquals(part, picture.Line))
                    {
                        AddLine(picture.Line, name, LineRole.Dimension);
                    }
                    else
                    {
                        Read(part, name);
                    }
                }

                break;
            case Group group:
                foreach (var inner in group.Items)
                {
                    Read(inner, name);
                }

                AddLeader(group);
                break;
            case Form form:
                foreach (var inner in form.Items.Concat(form.Values.Select(value => value.Text)))
                {
                    Read(inner, name);
                }

                break;
            default:
                throw new ArgumentException($"An item of kind {item.GetType().Name} cannot be audited.", nameof(item));
        }
    }

    private static bool IsLeader(Stroke stroke) => stroke.Row is "note.leader" or "note.stack";

    private void AddText(Text text, string name)
    {
        if (InkBoxes.Of(text, _typeface) is { } box)
        {
            Texts.Add(new(_owner, name.StartsWith('"') ? name : $"{name}: {Quoted(text.Words)}", box.Shift(_shift), _window));
        }
    }

    private void AddLine(Stroke stroke, string name, LineRole role)
    {
        var half = _half.GetValueOrDefault(stroke.Row);
        for (var i = stroke.Closed ? 0 : 1; i < stroke.Points.Count; i++)
        {
            Lines.Add(new(_owner, name, stroke.Points[i == 0 ? stroke.Points.Count - 1 : i - 1] + _shift, stroke.Points[i] + _shift, half, role, _window));
        }
    }

    private void AddArea(IReadOnlyList<PaperPoint> outline, IReadOnlyList<IReadOnlyList<PaperPoint>> holes, string name) =>
        Areas.Add(new(name, [.. outline.Select(point => point + _shift)], [.. holes.Select(hole => (IReadOnlyList<PaperPoint>)[.. hole.Select(point => point + _shift)])]));

    // A note has one leader; its end is a dot in the part or an arrow head on it.
    private void AddLeader(Group group)
    {
        if (group.Row != "note.text" || group.Items.OfType<Stroke>().FirstOrDefault(IsLeader) is not { Points.Count: > 1 } leader)
        {
            return;
        }

        var end = leader.Points[^1];
        var before = leader.Points.LastOrDefault(point => point != end);
        var way = end - before;
        var head = group.Items.OfType<Solid>().FirstOrDefault(solid => solid.Row == leader.Row);
        var tip = head?.Outline.MaxBy(point => (point - before).X * way.X + (point - before).Y * way.Y)
            ?? group.Items.OfType<Dot>().Select(dot => (PaperPoint?)dot.Centre).FirstOrDefault() ?? end;
        Leaders.Add(new(group.Name, _view, group.PartId, tip + _shift, tip, (tip - before).Length, head is not null));
    }
}
