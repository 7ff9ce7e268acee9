using System.Text.RegularExpressions;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Sheets;

/// <summary>The keys of the files on layers, inks, formats, heights of letters, logo and typeface.</summary>
public static partial class SheetShape
{
    public static IReadOnlyList<string> Inks { get; } = ["INK", "FILL", "WATER", "VAPOUR", "HEAT", "DIM", "MARK"];

    public static IReadOnlyList<string> Papers { get; } = ["A4", "A3", "A2", "A1", "ANSI-A", "ANSI-B", "ANSI-C", "ANSI-D"];

    public static IReadOnlyList<string> Zones { get; } =
        ["title-block", "revisions", "notes", "checklist", "key", "schedule", "second-view", "view", "notes-left", "drawing", "notes-right"];

    public const string FullSize = "full-size";

    public const string ReducedPrint = "reduced-print";

    public static IReadOnlyList<string> Uses { get; } = [FullSize, ReducedPrint];

    /// <summary>Least height of notes on a sheet that is copied smaller, mm (read in a secondary text).</summary>
    internal const decimal LeastReduced = 3.5m;

    public static ListShape Layers { get; } = new(new MapShape(
        new Field("row", new TextShape(40, RowPattern(), "letters, hyphens and dots"), "By which the drawing knows it.", Required: true),
        new Field("name", new TextShape(60, NamePattern(), "a layer name by ISO 13567-2: capitals, digits and hyphens in fields of fixed length"), "Name in the drawing.", Required: true),
        new Field("width", Width, "Line width on A4 to A2, mm.", Required: true),
        new Field("width-a1", Width, "Line width on A1, mm.", Required: true),
        new Field("type", new WordShape("continuous", "dashed", "dash-dot", "chain"), "Line type.", Required: true),
        new Field("ink", new WordShape(Inks), "Ink.", Required: true),
        new Field("plotted", new FlagShape(), "false keeps it off the print."),
        new Field("holds", new TextShape(120), "What lies on it.", Required: true)));

    public static ListShape InkList { get; } = new(new MapShape(
        new Field("ink", new WordShape(Inks), "Name.", Required: true),
        new Field("colour", new TextShape(7, ColourPattern(), "# and six hexadecimal digits"), "Colour.", Required: true),
        new Field("holds", new TextShape(120), "What is drawn in it.", Required: true)));

    /// <summary>As many as there are letters to name them, I and O left out (ISO 5457:1999, from memory).</summary>
    private const int MostFields = 24;

    public static ListShape Formats { get; } = new(new MapShape(
        new Field("paper", new WordShape(Papers), "Name.", Required: true),
        new Field("trimmed", Numbers(2), "Width and height, mm.", Required: true),
        new Field("untrimmed", Numbers(2), "Width and height, mm.", Required: true),
        new Field("border", new MapShape(
            new Field("left", Size, "Filing margin, mm.", Required: true),
            new Field("others", Size, "The other three, mm.", Required: true)), "Borders.", Required: true),
        new Field("grid", new MapShape(
            new Field("long", new NumberShape(2, MostFields, Whole: true), "Fields along the longer side.", Required: true),
            new Field("short", new NumberShape(2, MostFields, Whole: true), "Fields along the shorter side.", Required: true)), "Grid reference.", Required: true),
        new Field("zones", new MapShape([.. Zones.Select(zone => new Field(zone, Numbers(4), "Left, bottom, right, top, mm."))]), "Zones.", Required: true)));

    // What title block and tables hold; no capital under 2.5, or 1.8 in a label (common practice, no source).
    public static ListShape TextSizes { get; } = new(new MapShape(
        new Field("use", new WordShape(Uses), "For which sheets.", Required: true),
        new Field("notes", new NumberShape(2.5m, 3.5m), "Notes, dimensions, levels and tables, mm.", Required: true),
        new Field("titles", new NumberShape(2.5m, 5), "Titles and the names of the spaces, mm.", Required: true),
        new Field("numbers", new NumberShape(2.5m, 5), "Number, status and revision of the sheet, mm.", Required: true),
        new Field("field-labels", new NumberShape(1.8m, 2), "Labels of the title block's fields, mm.", Required: true)));

    public static IReadOnlyList<string> LogoShapes { get; } = ["line", "outline", "area"];

    public static ListShape Logo { get; } = new(new MapShape(
        new Field("shape", new WordShape(LogoShapes), "An open line, a closed one, or an area of ink.", Required: true),
        new Field("points", new ListShape(new NumberShape(0, 1000)), "x and y in turn, mm from the lower left corner.", Required: true)));

    /// <summary>Paths start from the practice's folder and stay in it.</summary>
    public static MapShape Typeface { get; } = new(
        new Field("regular", FontPath, "TrueType file of the regular letters.", Required: true),
        new Field("bold", FontPath, "TrueType file of the bold ones.", Required: true),
        new Field("dxf", new MapShape(
            new Field("file", new TextShape(60, FilePattern(), "the name of a font file without a folder, of letters, digits, spaces, dots, hyphens and underscores"), "File name of the font.", Required: true),
            new Field("family", new TextShape(31), "Family of the font.", Required: true)), "What drawing programs draw with where it is another font: its letters must be as wide as the regular ones, else texts run over there."));

    private static TextShape FontPath => new(200, PathPattern(), "a path within the practice's folder, such as fonts/own.ttf, without .. and names that begin with a dot");

    private static NumberShape Width => new(0.13m, 2);

    private static NumberShape Size => new(0, 2000);

    private static ListShape Numbers(int count) => new(Size, count);

    [GeneratedRegex("^[A-Za-z-]+(\\.[A-Za-z-]+)*\\z")]
    private static partial Regex RowPattern();

    // agent, element, presentation; then optional status, sector, phase, projection, scale, work package and free text (ISO 13567-2)
    [GeneratedRegex("^[A-Z][A-Z0-9-][A-Z0-9-]{6}[A-Z][A-Z0-9-]([A-Z-]([A-Z0-9-]{4}([A-Z0-9-]([0-9-]([A-Z-]([A-Z0-9-]{2}.*)?)?)?)?)?)?\\z")]
    private static partial Regex NamePattern();

    [GeneratedRegex("^[^/:.\\\\][^/:\\\\]*(/[^/:.\\\\][^/:\\\\]*)*\\z")]
    private static partial Regex PathPattern();

    [GeneratedRegex("^[A-Za-z0-9][A-Za-z0-9 ._-]*\\z")]
    private static partial Regex FilePattern();

    [GeneratedRegex("^#[0-9A-Fa-f]{6}\\z")]
    private static partial Regex ColourPattern();
}
