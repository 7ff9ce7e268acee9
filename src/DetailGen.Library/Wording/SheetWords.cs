using System.Globalization;
using DetailGen.Details.Presets;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Schedules;
using DetailGen.Library.Working;

namespace DetailGen.Library.Wording;

/// <summary>All the words of a sheet, from what is known of the detail.</summary>
internal static class SheetWords
{
    // ISO 7200:2004: fields that a title block must fill (table from memory).
    private static readonly (string Key, string Name)[] Obligatory =
        [("owner", "legal owner"), ("number", "number"), ("date", "date of issue"), ("drawn", "drawn"), ("approved", "approved"), ("status", "status")];

    /// <summary>Where the words of the status stand: a sheet without one is none to build from.</summary>
    private const string NoStatus = "No status given: not issued";

    private static readonly string[] ShortForms =
    [
        "DPC: damp-proof course", "VCL: vapour control layer", "PIR: polyisocyanurate", "EPS: expanded polystyrene", "XPS: extruded polystyrene", "OSB: oriented strand board",
    ];

    /// <param name="moisture">Null where condensation was not calculated.</param>
    internal static SheetText Of(Worked worked, MoistureWork? moisture)
    {
        var (solved, preset) = (worked.Solved, worked.Preset);
        var (lines, further) = CheckLines.Of(solved.Verdicts, worked.Checks, EmptyFields(preset), solved.Packs);
        return new(
            Title(preset),
            [.. preset.Revisions.OrderByDescending(revision => revision.Date).ThenByDescending(revision => revision.Rev, StringComparer.Ordinal).Select(Line)],
            ScheduleTable.Of(worked.Buildups), lines, further, GeneralNotes.Of(solved), GeneralNotes.Brief, $"Section through {preset.Junction.Id.Replace('-', ' ')}", ShortForms,
            preset.Levels.FirstOrDefault(level => level.Name == "finished-roof")?.Height.ToMillimetres() / 1000)
        {
            Thermal = worked.Heat is { } heat && preset.Sheet.Companions.Contains(PresetShape.Thermal, StringComparer.Ordinal) ? ThermalWords.Of(heat, worked) : null,
            HeatFigures = SheetSetup.Has(preset, "heat-figures", "none") ? [] : HeatFigureWords.Of(worked, moisture),
        };
    }

    /// <summary>Obligatory fields of the title block that are empty, in words; without a status the sheet is not issued, and only that is told.</summary>
    internal static IReadOnlyList<string> EmptyFields(Preset preset) =>
        preset.TitleBlock.Status is null ? ["status"] : preset.TitleBlock.Status is "S0" ? [] : [.. Obligatory.Where(field => string.IsNullOrEmpty(preset.TitleBlock[field.Key])).Select(field => field.Name)];

    private static Drawing.Sheets.TitleBlock Title(Preset preset)
    {
        string Field(string key) => preset.TitleBlock[key] ?? "";
        var parts = preset.Title.Split(',', 2, StringSplitOptions.TrimEntries);
        var subtitle = parts.Length > 1 ? Capital(parts[1]) : "";
        var edition = preset.Sheet.Options.FirstOrDefault(option => option.Key == "status-edition")?.Value ?? "2021";
        return new(
            Field("owner"), Field("address"), Field("project"), preset.TitleBlock.Number ?? preset.Detail, Field("revision"), Field("status"), Field("status").Length > 0 ? StatusWords.Of(Field("status"), edition) : NoStatus,
            Field("date"), Field("drawn"), Field("checked"), Field("approved").Length > 0 ? Field("approved") : "not yet approved", parts[0],
            preset.Mirror ? $"{subtitle} (handed)".Trim() : subtitle);
    }

    private static RevisionLine Line(Revision revision) =>
        new(revision.Rev, revision.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), revision.Text, revision.Drawn ?? "–", revision.Checked ?? "–");

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
