using System.Globalization;
using DetailGen.Details.Climates;

namespace DetailGen.Library;

/// <summary>What this project says to people.</summary>
internal static class Messages
{
    internal static string CannotWrite(string folder, string reason) => $"The files could not be written to {folder}: {reason.TrimEnd('.')}. Nothing was left behind.";

    internal static string NotProven => "The solver's budget of steps ran out before it found sizes or proved that there are none.";

    internal static string RangeNotProven(string key) => $"The range of {key} could not be proven within the budget of steps; its whole domain is shown.";

    internal static string SameName(string name, string other) => $"The files would be called {name}, as those of {other} are.";

    internal static string SameNameHint => "Give each detail its own number or revision in the title block.";

    internal static string UnknownTopic(string topic) => $"There is no topic {topic}.";

    internal static string OneOf(IEnumerable<string> words) => $"Choose one of {string.Join(", ", words)}.";

    internal static string FileExists(string file) => $"{file} exists already and is not overwritten.";

    internal static string UnknownSubject(string subject) => $"{subject} is no parameter, rule or part of this detail.";

    internal static string LargerSheet(string asked, string drawn) => $"The view does not fit {asked}; it is drawn {drawn}.";

    internal static string DidYouMean(string name) => $"Did you mean {name}?";

    internal static string NoSuch(string kind, string id) => $"There is no {kind} {id}.";

    internal static string NoUsualClimate(string nation) => $"No climate is usual for {nation}.";

    internal static string NoCondensation(string reason) => $"Condensation is not calculated. {reason}";

    internal static string NameClimate(IReadOnlyList<string> ids) => $"Name one under site: {{ climate: … }}; there are {string.Join(", ", ids)}.";

    internal static string Oversaturated(string climate, ClimateMonth month, double saturation) => string.Create(
        CultureInfo.InvariantCulture, $"In the climate {climate} a month of {month.Temperature:0.##} °C has {month.VapourPressure:0.#} Pa of vapour; air of that temperature holds {saturation:0.#} Pa at most.");

    internal static string OversaturatedHint => "Look at temperature and vapour pressure of that month; the pressure is in Pa.";

    internal static string InCase(string? id, string reason) => id is null ? reason : $"Case {id}: {reason}";

    internal static string NoSuchFile => "There is no such file.";

    internal static string NotOurs => "The drawing carries no record of how it was made.";

    internal static string NotOursHint => "It was drawn by another program, or the record was taken out.";

    internal static string NotADrawingHint => "A drawing is a DXF file, text or binary.";

    internal static string DamagedPreset => "The preset in the drawing is damaged.";

    internal static string TargetNotInRanges(string key) => $"{key} is simulated only for single sizes: the ranges do not know of it.";

    internal static string TargetsNotProven(IEnumerable<string> targets, string key, int tried) =>
        $"{string.Join(" and ", targets)}: not proven that it cannot be met. Only {key} was tried ({(tried == 0 ? "it is fixed, or there is nothing thicker" : $"{tried} thicker values")}); other sizes and materials were not.";

    internal static string HeatStandard => "ISO 10211:2017 (two-dimensional heat flow), ISO 6946:2017 (plane elements, air layers), ISO 13788:2012 (film of the mould criterion); from memory, clause numbers still to be read";

    internal static string HeatCaution => "Design figures of a model, for a competent person to judge: they hang on the conductivities of the products used and on workmanship, and leave out air leakage, moisture and fixings. Local regulations and the licensed designers decide.";

    internal static string ReducedPrint => "Sheet: reduced-print is not built yet; letters keep their usual heights.";
}
