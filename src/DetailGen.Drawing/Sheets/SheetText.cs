using DetailGen.Drawing.Annotation;

namespace DetailGen.Drawing.Sheets;

/// <summary>Values of the title block, as they are to be printed; empty where the author gave none.</summary>
/// <param name="StatusText">The status in words, with what it may be used for.</param>
/// <param name="Title">Up to the first comma of the detail's title.</param>
/// <param name="Subtitle">The rest.</param>
public sealed record TitleBlock(
    string Owner, string Address, string Project, string Number, string Revision, string Status, string StatusText, string Date, string Drawn, string Checked,
    string Approved, string Title, string Subtitle);

/// <summary>A row of the revision table.</summary>
public sealed record RevisionLine(string Revision, string Date, string Description, string Drawn, string Checked);

/// <summary>A row of the layer schedule; "–" stands in a cell without a value.</summary>
/// <param name="Sum">A row that adds up the stack: bold.</param>
public sealed record ScheduleRow(
    string Reference, string Element, string Material, string Thickness, string Conductivity, string Resistance, string Function, string Remark, bool Sum = false);

/// <summary>A stack of the schedule: a wall or a roof with its surfaces and its sum.</summary>
public sealed record ScheduleBlock(string Id, IReadOnlyList<ScheduleRow> Rows);

/// <summary>What became of a rule or a check.</summary>
public enum Verdict
{
    Fail,
    Warn,
    ToConfirm,
    Waived,
    Pass,
    NotApplicable,
}

/// <summary>A row of the check list.</summary>
/// <param name="Name">In a few words; on every sheet the check goes by it.</param>
/// <param name="Text">In a sentence, for what a person must confirm.</param>
/// <param name="Foremost">Belongs on the first sheet, as far as that has room.</param>
public sealed record CheckLine(string Name, string Text, string Required, string Drawn, Verdict Verdict, bool Foremost);

/// <summary>A figure with its unit, and what it is of.</summary>
public sealed record FigureLine(string What, string Figure);

/// <summary>All the words of a sheet; the drawing looks none up.</summary>
/// <param name="Checks">In the order of printing; those that find no room are counted.</param>
/// <param name="FurtherPasses">Checks that pass and are not in the list.</param>
/// <param name="Notes">General notes and cautions, numbered from 1 in this order.</param>
/// <param name="Caution">The shortest form of the cautions, for a sheet without room for the notes.</param>
/// <param name="ViewTitle">Such as "Section through parapet".</param>
/// <param name="ShortForms">Short forms that the key spells out, such as "DPC: damp-proof course"; only those that occur are printed.</param>
/// <param name="DatumLevel">Level of finished roof above the building's datum in m; null if none was given.</param>
public sealed record SheetText(
    TitleBlock Title, IReadOnlyList<RevisionLine> Revisions, IReadOnlyList<ScheduleBlock> Schedule, IReadOnlyList<CheckLine> Checks, int FurtherPasses,
    IReadOnlyList<string> Notes, string Caution, string ViewTitle, IReadOnlyList<string> ShortForms, double? DatumLevel)
{
    /// <summary>Of the thermal sheet; null where none is asked for.</summary>
    public ThermalText? Thermal { get; init; }

    /// <summary>What the detail loses and whether it stays dry, for where the sheets have room; none to leave it out.</summary>
    public IReadOnlyList<FigureLine> HeatFigures { get; init; } = [];
}

/// <summary>What the author asks of the sheet.</summary>
/// <param name="Paper">A4 to A1, ANSI-A to ANSI-D, or null for the tool's choice.</param>
/// <param name="Scale">s of 1:s, or null for the largest standard scale that fits.</param>
/// <param name="ViewOnly">The view without a sheet, to stand in somebody's own drawing.</param>
public sealed record SheetRequest(string? Paper, double? Scale, bool Mirror, bool ViewOnly)
{
    /// <summary>Every line one step wider, so that thin ones survive copying.</summary>
    public bool ForCopies { get; init; }

    /// <summary>On untrimmed paper, with marks where to cut.</summary>
    public bool TrimMarks { get; init; }

    /// <summary>What is too fine for the scale drawn again at 1:2, where the sheet has room.</summary>
    public bool Insets { get; init; }

    /// <summary>A small picture of where water, air, vapour and heat are stopped, where the sheets have room; not where a sheet of them is asked for.</summary>
    public bool ControlLines { get; init; }

    /// <summary>The sheet of an earlier issue: on the same paper, at the same scale, notes stay where they stood. Null for none.</summary>
    public EarlierSheet? Earlier { get; init; }

    /// <summary>Further sheets drawn from the same section, in this order.</summary>
    public IReadOnlyList<Companion> Companions { get; init; } = [];

    /// <summary>The same after an earlier issue: on its paper and at its scale unless others are asked for.</summary>
    public SheetRequest After(EarlierSheet? earlier) => this with { Earlier = earlier, Paper = Paper ?? earlier?.Paper, Scale = Scale ?? earlier?.Scale };
}

/// <summary>Where the notes of an earlier issue stood.</summary>
/// <param name="Scale">The n of 1:n.</param>
public sealed record EarlierSheet(string Paper, double Scale, IReadOnlyList<EarlierPlace> Places);

/// <summary>A sheet beside the detail itself, drawn from the same section.</summary>
public enum Companion
{
    /// <summary>The layers of roof and wall pulled apart.</summary>
    Exploded,

    /// <summary>Where water, air, vapour and heat are stopped.</summary>
    ControlLines,

    /// <summary>Stage by stage, as it is built.</summary>
    Sequence,

    /// <summary>The section without a word, for teaching.</summary>
    Blank,

    /// <summary>The temperatures in the junction as they were simulated.</summary>
    Thermal,
}
