using DetailGen.Details.Reading;

namespace DetailGen.Details.Sheets;

/// <summary>What a practice says of its sheets: layers, inks, formats, heights of letters, its logo, its typeface.</summary>
/// <param name="Layers">In the order in which a drawing lists them.</param>
public sealed record SheetData(IReadOnlyList<LayerRow> Layers, IReadOnlyList<InkRow> Inks, IReadOnlyList<FormatRow> Formats, IReadOnlyList<TextSizeRow> TextSizes)
{
    /// <summary>None where the practice has no logo.</summary>
    public IReadOnlyList<LogoRow> Logo { get; init; } = [];

    /// <summary>Null where the practice has none of its own.</summary>
    public TypefaceRow? Typeface { get; init; }
}

/// <summary>A layer of the drawing.</summary>
/// <param name="Row">By which the drawing code knows it, such as <c>cut.BK.wall</c>.</param>
/// <param name="Name">By ISO 13567-2.</param>
/// <param name="Width">mm on paper, A4 to A2.</param>
/// <param name="WidthOnA1">mm on paper.</param>
/// <param name="LineType">continuous, dashed, dash-dot or chain.</param>
/// <param name="Holds">In words.</param>
public sealed record LayerRow(string Row, string Name, double Width, double WidthOnA1, string LineType, string Ink, bool Plotted, string Holds, Mark At);

/// <summary>An ink of the layer map.</summary>
/// <param name="Colour">Six hexadecimal digits after #.</param>
public sealed record InkRow(string Ink, string Colour, string Holds, Mark At);

/// <summary>Heights of capitals; mm on paper.</summary>
/// <param name="Use">full-size or reduced-print.</param>
public sealed record TextSizeRow(string Use, double Notes, double Titles, double Numbers, double FieldLabels, Mark At);

/// <summary>A shape of the logo; mm from its lower left corner.</summary>
/// <param name="Shape">line, outline or area.</param>
public sealed record LogoRow(string Shape, IReadOnlyList<(double X, double Y)> Points);

/// <summary>The letters of a practice.</summary>
/// <param name="StyleFile">Font file that a DXF names; null where it is the regular one.</param>
/// <param name="StyleFamily">Its family; null where it is that of the regular font.</param>
public sealed record TypefaceRow(TypefaceFile Regular, TypefaceFile Bold, string? StyleFile, string? StyleFamily);

/// <summary>A font file as it lies in the practice's folder, unread but for its bytes.</summary>
/// <param name="Path">As it was written, from the practice's folder.</param>
public sealed record TypefaceFile(string Key, string Path, byte[] Bytes, Mark At);

/// <summary>A sheet format; mm on paper.</summary>
/// <param name="BorderLeft">The filing margin.</param>
/// <param name="BorderOthers">The other three.</param>
/// <param name="GridLong">Fields of the grid reference along the longer side.</param>
/// <param name="Zones">From the lower left corner of the drawing space; in the order of the file.</param>
public sealed record FormatRow(
    string Paper, double Width, double Height, double UntrimmedWidth, double UntrimmedHeight, double BorderLeft, double BorderOthers, int GridLong, int GridShort,
    IReadOnlyList<ZoneRow> Zones, Mark At);

/// <summary>A zone of a sheet format, mm.</summary>
/// <param name="Name">title-block, revisions, notes, checklist, key, schedule, second-view, view, notes-left, drawing or notes-right.</param>
public sealed record ZoneRow(string Name, double Left, double Bottom, double Right, double Top);
