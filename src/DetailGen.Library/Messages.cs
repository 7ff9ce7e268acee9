using System.Globalization;
using DetailGen.Details.Climates;
using DetailGen.Drawing.Lettering;

namespace DetailGen.Library;

/// <summary>What this project says to people.</summary>
internal static class Messages
{
    internal static string CannotWrite(string folder, string reason) => $"The files could not be written to {folder}: {reason}. Nothing was left behind.";

    internal static string IsFile(string path) => $"{path} is a file, not a folder";

    internal static string IsFileHint => "Name a folder, or take the file away.";

    internal static string IsFolderThere(string name) => $"{name} is a folder there";

    internal static string IsFolderThereHint => "Take that folder away, or write somewhere else.";

    internal static string IsProtected(string name) => $"{name} is there and may not be changed";

    internal static string IsProtectedHint => "Take the protection off that file, or write somewhere else.";

    internal static string NotAllowed => "you may not write there";

    internal static string NotAllowedHint => "Look at its permissions, or write somewhere else.";

    internal static string CannotBe => "no folder can be made there";

    internal static string CannotBeHint => "Look at the spelling, or write somewhere else.";

    internal static string NameTooLong => "the name is too long for it";

    internal static string NameTooLongHint => "Choose a shorter name.";

    internal static string TakesNoFiles => "no files can be made in that folder";

    internal static string DiskFault => "the disk did not take them";

    internal static string DiskFaultHint => "Is it full, or is one of the files open elsewhere?";

    internal static string NotProven => "The solver's budget of steps ran out before it found sizes or proved that there are none.";

    internal static string ConflictNotMinimal => "Not of each member of the conflict could be proven within the budget of steps that the others can hold without it: one or another may be spared.";

    internal static string RangeNotProven(string key) => $"The range of {key} could not be proven within the budget of steps; only a value that is known to work is shown.";

    internal static string WordsNotProven(string key) => $"Not for every word of {key} could be proven within the budget of steps whether it can be had; those are left out.";

    internal static string SameName(string name, string other) => $"The files would be called {name}, as those of {other} are.";

    internal static string SameFile => "This file is given twice.";

    /// <param name="numbered">Whether a title block gives either of them its name.</param>
    internal static string SameNameHint(bool numbered) => numbered ? "Give each its own number or revision in the title block." : "Give each its own detail:, or a number in a title block.";

    internal static string SameFileHint => "Name it once.";

    internal static string NoPresets(string folder) => $"There are no presets in {folder}.";

    internal static string InternalFault(string kind, string message) => $"Internal fault ({kind}): {message}";

    internal static string InternalFaultHint => "Please report it with the preset.";

    internal static string NoPresetsHint => "A preset is a .yaml file that names a detail; bases that others extend are passed over.";

    internal static string UnknownTopic(string topic) => $"There is no topic {topic}.";

    internal static string OneOf(IEnumerable<string> words) => $"Choose one of {string.Join(", ", words)}.";

    internal static string NoFileNamed => "--out names no file.";

    internal static string NoFileNamedHint => "Write the name of the preset to make, such as my-parapet.yaml.";

    internal static string FileExistsHint => "Choose another name, or take that file away.";

    internal static string IsFolderItself(string path) => $"{path} is a folder.";

    internal static string NameAFile => "Name a file in it.";

    internal static string FileExists(string file) => $"{file} exists already and is not overwritten.";

    internal static string UnknownSubject(string subject) => $"{subject} is nothing that this detail has a name for.";

    internal static string DidYouMean(string name) => $"Did you mean {name}?";

    internal static string NoIssue => "This is no report of drawn details: it tells no place of a note.";

    internal static string NoIssueHint => "The JSON file that draw wrote beside the drawings of the earlier issue is meant.";

    /// <param name="sheet">Of the earlier issue; null where it does not hold the detail.</param>
    internal static string LaidAnew(string detail, string? sheet) => sheet is null
        ? $"The earlier issue does not hold {detail}; its notes are laid anew."
        : $"The earlier issue was drawn on {sheet}; the notes are laid anew.";

    internal static string UnknownLetters(IReadOnlyList<string> letters, bool shipped) =>
        $"The font of the sheets has no {(letters.Count == 1 ? "letter" : "letters")} {string.Join(" ", letters)}: in prints an empty box stands in {(letters.Count == 1 ? "its" : "their")} place. {(shipped ? "Write such names in Latin, Greek or Cyrillic letters." : "Take a typeface that has them, or write such names in other letters.")}";

    internal static (string Reason, string Hint) FontFaults(FontFault fault) => fault switch
    {
        FontFault.NotTrueType => ("This is no TrueType font.", "Take a file that ends in .ttf; fonts packed for web pages are none."),
        FontFault.Collection => ("Several fonts lie in this file.", "Take a file for each weight."),
        FontFault.OtherOutlines => ("The outlines of this font are of the other kind (CFF), of which a PDF could not be given the used letters alone.", "Take the font with TrueType outlines."),
        FontFault.NoUnicode => ("The letters of this font are not told by Unicode.", "Take a font for text, not one of symbols."),
        FontFault.NoName => ("This font has no family name of 31 letters, digits, spaces, dots and hyphens at most.", "Take a font with a family name that drawings can give."),
        FontFault.NotToBeEmbedded => ("This font's own flags forbid to embed it, and a PDF carries its letters.", "Take a font whose licence lets documents embed it, or ask its maker."),
        FontFault.Proportions => ("Capitals, letters or their widths of this font are beyond what sheets can be laid out with, or it has no capital H.", "Take a font for text."),
        _ => ("This font is damaged.", "Look whether the file is complete."),
    };

    internal static string NotInDetail(string key) => $"This detail has no parameter {key}.";

    internal static string FollowsFromOthers(string key) => $"{key} follows from other sizes and is not chosen by itself.";

    internal static string AskForThose => "Ask for the sizes that make it up; the verb explain shows them.";

    internal static string SeeParameters => "See what detailgen list parameters shows.";

    internal static string SeeAll => "See what detailgen list parameters and detailgen list rules show.";

    internal static string Meant(string written, IReadOnlyList<string> known) => Details.Reading.Nearest.To(written, known) is { } nearest ? DidYouMean(nearest) : OneOf(known);

    internal static string NoSuch(string kind, string id) => $"There is no {kind} {id}.";

    internal static string NoUsualClimate(string nation) => $"No climate is usual for {nation}.";

    internal static string NoCondensation(string reason) => $"Condensation is not calculated. {reason}";

    internal static string NameClimate(IReadOnlyList<string> ids) => $"Name one under site: {{ climate: … }}; there are {string.Join(", ", ids)}.";

    internal static string Oversaturated(string climate, ClimateMonth month, double saturation) => string.Create(
        CultureInfo.InvariantCulture, $"In the climate {climate} a month of {month.Temperature:0.##} °C has {month.VapourPressure:0.#} Pa of vapour; air of that temperature holds {saturation:0.#} Pa at most.");

    internal static string OversaturatedHint => "Look at temperature and vapour pressure of that month; the pressure is in Pa.";

    internal static string InCase(string? id, string reason) => id is null ? reason : $"Case {id}: {reason}";

    internal static string NotOurs => "The drawing carries no record of how it was made.";

    internal static string NotOursHint => "It was drawn by another program, or the record was taken out.";

    internal static string NotADrawingHint => "A drawing is a DXF file, text or binary.";

    internal static string DamagedPreset => "The preset in the drawing is damaged.";

    internal static string NotASize(string key) => $"{key} is no number that could be gone through.";

    internal static string NotASizeHint => "Name a length, a fall or a count; detailgen range shows them for a preset.";

    internal static string Thinned(string key, int taken, int all) =>
        $"{key} can have {all} values here. {taken} were calculated, spread evenly, with both ends and the drawn value, and the other {all - taken} left out.";

    internal static string TargetNotInRanges(string key) => $"{key} is simulated only for single sizes: the ranges do not know of it.";

    internal static string TargetsNotProven(IEnumerable<string> targets, string key, int tried, int of) =>
        $"{string.Join(" and ", targets)}: not proven that it cannot be met. Only {key} was tried ({(tried == 0 ? "it is fixed, or there is nothing thicker"
            : of > tried ? $"{tried} of {of} thicker values, along which the figure only rises or only falls" : $"{tried} thicker values")}); other sizes and materials were not.";

    internal static string NoPicture(string file) => $"{file} ends in no format of pictures.";

    internal static string PictureFormats(IReadOnlyList<string> formats) => $"The name can end in {string.Join(", ", formats.Select(format => "." + format))}.";

    internal static string SubdivisionStandard => "ISO 10211:2017, number of subdivisions; from memory, clause number still to be read";

    internal static string HeatStandard => "ISO 10211:2017 (two-dimensional heat flow), ISO 6946:2017 (plane elements, air layers), ISO 13788:2012 (film of the mould criterion); from memory, clause numbers still to be read";

    internal static string HeatCaution => "Design figures of a model, for a competent person to judge: they hang on the conductivities of the products used and on workmanship, and leave out air leakage, moisture and fixings. Local regulations and the licensed designers decide.";

}
