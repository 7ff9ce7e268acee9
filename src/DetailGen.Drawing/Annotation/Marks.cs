using System.Globalization;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>How much a line minds being crossed.</summary>
internal enum LineKind
{
    Hard,
    Witness,
    Leader,
}

/// <summary>Words with the group that they belong to.</summary>
internal sealed record MarkedText(string Owner, string Words, PaperBox Box);

/// <summary>One straight piece of a line with the group that it belongs to.</summary>
internal sealed record MarkedLine(string Owner, PaperPoint From, PaperPoint To, LineKind Kind);

/// <summary>A leader from its note to its tip.</summary>
internal sealed record MarkedLeader(string Owner, string? PartId, IReadOnlyList<PaperPoint> Points, PaperPoint Tip, bool IsArrow)
{
    internal double Length => Points.Zip(Points.Skip(1)).Sum(piece => (piece.Second - piece.First).Length);
}

/// <summary>Finished annotation read back from its items: boxes, lines, leaders, each with the group that it belongs to.</summary>
internal sealed class Marks(Typeface typeface)
{
    internal List<MarkedText> Texts { get; } = [];

    internal List<MarkedLine> Lines { get; } = [];

    internal List<MarkedLeader> Leaders { get; } = [];

    internal List<Dimension> Dimensions { get; } = [];

    internal static Marks Of(IReadOnlyList<Item> items, Typeface typeface)
    {
        var marks = new Marks(typeface);
        for (var i = 0; i < items.Count; i++)
        {
            marks.Read(items[i], items[i] is Group group ? group.Name : items[i] is Dimension dimension ? "dimension " + dimension.MeasureId : "item " + i.ToString(CultureInfo.InvariantCulture));
        }

        return marks;
    }

    /// <summary>Around the box and all that is marked.</summary>
    internal PaperBox Bounds(PaperBox drawn) => Texts.Select(text => text.Box)
        .Concat(Lines.Select(line => new PaperBox(
            Math.Min(line.From.X, line.To.X), Math.Min(line.From.Y, line.To.Y), Math.Max(line.From.X, line.To.X), Math.Max(line.From.Y, line.To.Y))))
        .Aggregate(drawn, (a, b) => a.With(b));

    /// <summary>The size a figure shows.</summary>
    internal static double Number(string figure) => double.Parse(figure.Split(' ')[0], CultureInfo.InvariantCulture);

    private void Read(Item item, string owner)
    {
        switch (item)
        {
            case Text text:
                Texts.Add(new(owner, text.Words, typeface.Box(text)));
                break;
            case Paragraph paragraph:
                Texts.Add(new(owner, paragraph.Lines[0], typeface.Box(paragraph)));
                break;
            case Stroke stroke:
                Read(stroke, owner);
                break;
            case Dimension dimension:
                Read(dimension, owner);
                break;
            case Group group:
                foreach (var member in group.Items)
                {
                    Read(member, owner);
                }

                ReadLeader(group);
                break;
            default:
                break;
        }
    }

    private void Read(Stroke stroke, string owner)
    {
        // The line that brings a level to its mark is a witness line: it is the group's first.
        var isWitness = stroke.Row == "dim.level" && !stroke.Closed && !Lines.Exists(line => line.Owner == owner);
        var kind = stroke.Row == "note.leader" ? LineKind.Leader : isWitness ? LineKind.Witness : LineKind.Hard;
        var ends = stroke.Closed ? stroke.Points.Append(stroke.Points[0]) : stroke.Points;
        Lines.AddRange(ends.Zip(ends.Skip(1)).Select(piece => new MarkedLine(owner, piece.First, piece.Second, kind)));
    }

    private void Read(Dimension dimension, string owner)
    {
        Dimensions.Add(dimension);

        // Figures hang no letters under the base line.
        var box = typeface.Box(new Text(dimension.Row, dimension.Figure, dimension.FigureAt, dimension.Height, Align.Centre, dimension.Vertical ? 90 : 0));
        var hang = typeface.Hang(dimension.Height);
        Texts.Add(new(owner, dimension.Figure, dimension.Vertical ? box with { Right = box.Right - hang } : box with { Bottom = box.Bottom + hang }));
        var picture = Scenes.Dimensions.Picture(dimension, typeface);
        Lines.Add(new(owner, picture.Line.Points[0], picture.Line.Points[1], LineKind.Hard));
        Stroke[] crossed = [.. picture.Witnesses, .. picture.Ends.OfType<Stroke>(), .. picture.Tick is { } tick ? new[] { tick } : []];
        Lines.AddRange(crossed.Select(stroke => new MarkedLine(owner, stroke.Points[0], stroke.Points[1], LineKind.Witness)));
    }

    private void ReadLeader(Group group)
    {
        if (group.Items.OfType<Stroke>().FirstOrDefault(stroke => stroke.Row == "note.leader") is not { } stroke)
        {
            return;
        }

        var arrow = group.Items.OfType<Solid>().FirstOrDefault();
        var tip = arrow?.Outline[0] ?? group.Items.OfType<Dot>().First().Centre;
        Leaders.Add(new(group.Name, group.PartId, arrow is null ? stroke.Points : [.. stroke.Points.SkipLast(1), tip], tip, arrow is not null));
    }
}
