using System.Collections.Immutable;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>Several lines of letters, broken by the caller; no reader gets a reason to wrap them. Blank ones are left out as a whole.</summary>
/// <param name="Lines">Without control letters; at most 4000 letters in all, line breaks and escapes included.</param>
/// <param name="Height">Height of capitals, in drawing units.</param>
/// <param name="Width">Measured width of the longest line, in drawing units.</param>
public sealed record Mtext(ImmutableArray<string> Lines, DxfPoint Anchor, double Height, double Width) : Entity
{
    private const int MostLetters = 4000;

    public Attachment Attachment { get; init; } = Attachment.TopLeft;

    /// <summary>Degrees, counter-clockwise.</summary>
    public double Rotation { get; init; }

    /// <summary>Pitch of the lines, as a factor on 5/3 of the height; 0.25 to 4.</summary>
    public double LineSpacing { get; init; } = 1;

    internal static readonly AttributeTable<Mtext> Table = new("MTEXT")
    {
        "AcDbMText",
        { 10, mtext => mtext.Anchor },
        { 40, mtext => mtext.Height },
        { 41, mtext => 1.5 * mtext.Width, Role.Derived }, // wide enough that other letters do not wrap either
        { 71, mtext => (int)mtext.Attachment },
        { 72, 1 },
        WriteLines,
        { 7, _ => TextStyle.Name, Role.Derived },
        { 50, mtext => mtext.Rotation, Grid.Angle, Role.Value, mtext => mtext.Rotation != 0 },
        { 73, 2 }, // exact pitch
        { 44, mtext => mtext.LineSpacing, Grid.Ratio },
    };

    internal override string Kind => Table.Kind;

    internal override Entity? Cleaned()
    {
        DemandPositive(Height, "text's height");
        if (Lines.All(string.IsNullOrWhiteSpace))
        {
            return null;
        }

        DemandPositive(Width, "text's width");
        if (!(LineSpacing is >= 0.25 and <= 4))
        {
            throw new ArgumentException("The pitch of lines can be 0.25 to 4 times the usual one.");
        }

        return DxfString.ForLines(Lines).Length <= MostLetters ? this : throw new ArgumentException($"A text of several lines has more than {MostLetters} letters.");
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        var height = Height * (1 + (5.0 / 3 * LineSpacing * (Lines.Length - 1)));
        var (column, row) = (((int)Attachment - 1) % 3, ((int)Attachment - 1) / 3);
        var foot = Anchor - new DxfPoint(Width * column / 2, height * (2 - row) / 2).Turned(Rotation);
        bounds.AddText(foot, Width, height, Rotation);
    }

    private static void WriteLines(Mtext mtext, ITagSink sink)
    {
        var escaped = DxfString.ForLines(mtext.Lines);
        if (sink.ValuesOnly)
        {
            sink.Text(1, escaped);
            return;
        }

        var last = "";
        var isFirst = true;
        foreach (var chunk in DxfString.Chunks(escaped))
        {
            if (!isFirst)
            {
                sink.Text(3, last);
            }

            (last, isFirst) = (chunk, false);
        }

        sink.Text(1, last);
    }
}
