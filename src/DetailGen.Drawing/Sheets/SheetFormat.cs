using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>A size of paper with its border and zones; all in mm.</summary>
/// <param name="Paper">A4 to A1, or ANSI-A to ANSI-D.</param>
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

    /// <summary>How high letters are on it.</summary>
    public TextSizes TextSizes { get; init; } = TextSizes.Usual;

    /// <summary>Of the practice; null where it has none.</summary>
    public Logo? Logo { get; init; }

    /// <summary>How far a note may stand from its part, mm: the larger the sheet the farther.</summary>
    internal double LongestLeader => Size switch { SheetSize.Largest => 130, SheetSize.Large => 90, _ => 60 };

    /// <summary>Widest a note may be, mm.</summary>
    internal double NoteWidth => TextSizes.ByNotes(Size switch { SheetSize.Largest => 105, SheetSize.Large => 92, _ => 72 });

    /// <summary>Of which kind it is: what a drawing does on a sheet goes by its size, whatever series it belongs to.</summary>
    internal SheetSize Size => Math.Max(Width, Height) switch { < 340 => SheetSize.Small, < 500 => SheetSize.Usual, < 700 => SheetSize.Large, _ => SheetSize.Largest };

    /// <summary>Upper edge of title block and revisions, page mm.</summary>
    internal double TitleTop => Math.Max(Zones["title-block"].Top, Zone("revisions")?.Top ?? double.NegativeInfinity);

    public PaperBox? Zone(string name) => Zones.TryGetValue(name, out var zone) ? zone : null;
}

/// <summary>Kinds of sheet by their longer side.</summary>
internal enum SheetSize
{
    /// <summary>A4, and letter paper.</summary>
    Small,

    /// <summary>A3 or B: on which a detail is usually issued.</summary>
    Usual,

    /// <summary>A2 or C.</summary>
    Large,

    /// <summary>A1 or D.</summary>
    Largest,
}
