namespace DetailGen.Drawing.Scenes;

/// <summary>Something visible, settled to the last coordinate: an emitter writes it and decides nothing.</summary>
/// <param name="Row">Row of the layer map, such as <c>cut.BK.wall</c>; it gives layer name, width, line type and ink.</param>
public abstract record Item(string Row)
{
    /// <summary>The part of the section that it shows; null for annotation of none and for the sheet.</summary>
    public string? PartId { get; init; }
}

/// <summary>A line of one or more straight pieces.</summary>
public sealed record Stroke(string Row, IReadOnlyList<PaperPoint> Points, bool Closed = false) : Item(Row);

/// <summary>A circle, outline only.</summary>
public sealed record Ring(string Row, PaperPoint Centre, double Diameter) : Item(Row)
{
    /// <summary>A circle as a closed line of so many straight pieces.</summary>
    internal static PaperPoint[] Corners(PaperPoint centre, double diameter, int sides) =>
        [.. Enumerable.Range(0, sides).Select(i => Math.SinCos(2 * Math.PI * i / sides)).Select(way => centre + diameter / 2 * new PaperPoint(way.Cos, way.Sin))];
}

/// <summary>An area filled with the row's ink: a thin sheet, an arrow head, a solid section. The outline is not repeated, holes go the other way round.</summary>
public sealed record Solid(string Row, IReadOnlyList<PaperPoint> Outline, IReadOnlyList<IReadOnlyList<PaperPoint>> Holes) : Item(Row);

/// <summary>A filled round dot.</summary>
public sealed record Dot(string Row, PaperPoint Centre, double Diameter) : Item(Row);

/// <summary>Round dots of one size, many: the grains of a mortar or render.</summary>
public sealed record Grains(string Row, IReadOnlyList<PaperPoint> Centres, double Diameter) : Item(Row);

/// <summary>A family of parallel lines of a fill, in paper mm.</summary>
/// <param name="Angle">Degrees anticlockwise from the sheet's x axis.</param>
/// <param name="Spacing">Square to the lines.</param>
/// <param name="Base">A point one line runs through; dashes begin there.</param>
/// <param name="Shift">Along the line from one line to the next.</param>
/// <param name="Dashes">Positive drawn, negative left out, 0 a dot; empty for unbroken lines.</param>
public sealed record LineFamily(double Angle, double Spacing, PaperPoint Base, double Shift, IReadOnlyList<double> Dashes);

/// <summary>A region filled with families of lines. <paramref name="Fill"/> is the fill's name, material in plain words with hyphens; one name means one set of angles, spacings and dashes.</summary>
public sealed record Hatch(
    string Row, string Fill, IReadOnlyList<PaperPoint> Outline, IReadOnlyList<IReadOnlyList<PaperPoint>> Holes, IReadOnlyList<LineFamily> Families) : Item(Row);

/// <summary>Which end of a line of text its place is.</summary>
public enum Align
{
    Left,
    Centre,
    Right,
}

/// <summary>One line of text.</summary>
/// <param name="At">On the base line, at the end or middle that <paramref name="Align"/> says.</param>
/// <param name="Height">Height of capitals in mm.</param>
/// <param name="Rotation">Degrees anticlockwise: 0 or 90.</param>
public sealed record Text(string Row, string Words, PaperPoint At, double Height, Align Align = Align.Left, double Rotation = 0, bool Bold = false) : Item(Row);

/// <summary>Lines of text under each other, left-justified.</summary>
/// <param name="At">Left end of the first base line.</param>
/// <param name="Pitch">From base line to base line, mm.</param>
public sealed record Paragraph(string Row, IReadOnlyList<string> Lines, PaperPoint At, double Height, double Pitch) : Item(Row);

/// <summary>How a dimension line ends.</summary>
public enum Terminator
{
    Stroke,
    Dot,
}

/// <summary>A dimension between two places of a view. Emitters without dimensions of their own draw its plain picture.</summary>
/// <param name="Row">Row of the line, the witness lines and the figure.</param>
/// <param name="TerminatorRow">Row of the strokes or dots.</param>
/// <param name="From">Where the first witness line starts (the offset from the point already taken off by the picture).</param>
/// <param name="Vertical">Measures heights: the dimension line stands upright.</param>
/// <param name="Line">x of an upright dimension line, y of a level one.</param>
/// <param name="Figure">As written, such as "150 min.".</param>
/// <param name="FigureAt">Middle of the figure's base line.</param>
/// <param name="Measured">True size in mm.</param>
/// <param name="Height">Of the figure's letters, mm.</param>
public sealed record Dimension(
    string Row, string TerminatorRow, PaperPoint From, PaperPoint To, bool Vertical, double Line, string Figure, PaperPoint FigureAt, double Measured,
    double Height, Terminator FromEnd = Terminator.Stroke, Terminator ToEnd = Terminator.Stroke) : Item(Row)
{
    /// <summary>Key or datum pair that it shows.</summary>
    public string MeasureId { get; init; } = "";
}

/// <summary>Items that belong together: a leader with its note, a level mark.</summary>
public sealed record Group(string Row, string Name, IReadOnlyList<Item> Items) : Item(Row);

/// <summary>A fixed form with values: the title block. The form's own items come first; each value is drawn where it says and can be read back by its tag.</summary>
public sealed record Form(string Row, string Name, IReadOnlyList<Item> Items, IReadOnlyList<FormValue> Values) : Item(Row);

/// <summary>A value of a form.</summary>
/// <param name="Tag">Capitals and hyphens only, such as NUMBER.</param>
public sealed record FormValue(string Tag, Text Text);
