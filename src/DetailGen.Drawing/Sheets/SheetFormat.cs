using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>A size of paper with its border and zones; all in mm.</summary>
/// <param name="Paper">A4, A3, A2 or A1.</param>
/// <param name="Width">Trimmed.</param>
/// <param name="Space">The drawing space within the frame, in page coordinates.</param>
/// <param name="FieldsAcross">Fields of the grid reference along the upper edge.</param>
/// <param name="FieldsDown">Fields of the grid reference along the right edge.</param>
/// <param name="Lettered">Sides that carry letters and numbers, of <c>top right bottom left</c>.</param>
/// <param name="Zones">By name (title-block, revisions, notes, checklist, key, schedule, second-view, view, notes-left, drawing, notes-right), in page coordinates; one that the first sheet lacks is absent.</param>
public sealed record SheetFormat(
    string Paper, double Width, double Height, PaperBox Space, int FieldsAcross, int FieldsDown, IReadOnlyList<string> Lettered,
    IReadOnlyDictionary<string, PaperBox> Zones)
{
    /// <summary>Width and height of the paper before it is cut to size, mm.</summary>
    public (double Width, double Height) Untrimmed { get; init; } = (Width, Height);

    /// <summary>Upper edge of title block and revisions, page mm.</summary>
    internal double TitleTop => Math.Max(Zones["title-block"].Top, Zone("revisions")?.Top ?? double.NegativeInfinity);

    public PaperBox? Zone(string name) => Zones.TryGetValue(name, out var zone) ? zone : null;
}
