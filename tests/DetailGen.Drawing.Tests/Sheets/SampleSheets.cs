using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;

namespace DetailGen.Drawing.Tests.Sheets;

/// <summary>Formats and words for the tests; sizes of paper after ISO 5457:1999 (read in secondary texts), zones of the shipped sheet data.</summary>
internal static class SampleSheets
{
    internal static SheetFormat A4 { get; } = Format("A4", 210, 297, 4, 6, ["top", "right"], new()
    {
        ["title-block"] = new(0, 0, 180, 44),
        ["revisions"] = new(0, 44, 180, 58),
        ["notes"] = new(0, 58, 180, 71),
        ["view"] = new(0, 71, 180, 277),
        ["drawing"] = new(0, 71, 114, 277),
    });

    internal static SheetFormat A3 { get; } = Format("A3", 420, 297, 8, 6, ["top", "right", "bottom", "left"], new()
    {
        ["title-block"] = new(210, 0, 390, 56),
        ["revisions"] = new(210, 56, 390, 80),
        ["notes"] = new(310, 206, 390, 277),
        ["checklist"] = new(310, 147, 390, 206),
        ["key"] = new(310, 84, 390, 147),
        ["schedule"] = new(0, 0, 206, 80),
        ["view"] = new(0, 84, 306, 277),
        ["drawing"] = new(76, 84, 230, 277),
    });

    internal static SheetFormat A1 { get; } = Format("A1", 841, 594, 16, 12, ["top", "right", "bottom", "left"], new()
    {
        ["title-block"] = new(631, 0, 811, 56),
        ["revisions"] = new(631, 56, 811, 101),
        ["notes"] = new(631, 484, 811, 574),
        ["checklist"] = new(631, 105, 811, 311),
        ["key"] = new(304, 0, 484, 110),
        ["schedule"] = new(0, 0, 300, 110),
        ["view"] = new(0, 114, 627, 574),
        ["drawing"] = new(109, 114, 518, 574),
    });

    internal static SheetText Text { get; } = new(
        new("Tern Court Drawing Office", "", "Tern Court Workshops", "TC-DET-0101", "P02", "S2", "S2: for information or reference, not for construction", "2026-11-25", "AB", "CD", "", "Parapet", "cavity wall, warm roof on plywood deck"),
        [new("P02", "2026-11-25", "Cavity widened to 150", "AB", "CD"), new("P01", "2026-11-11", "First issue for comment", "AB", "CD")],
        [
            new("wall", [.. Enumerable.Range(1, 6).Select(i => new ScheduleRow($"W{i}", "Outer leaf", "Clay brickwork, outer leaf (exposed)", "102.5", "0.770", "0.133", "rain screen, structure", "tabulated")), new("", "Wall, sum", "U-value 0.15 W/m²K", "420.0", "–", "6.851", "", "bridging left out", true)]),
            new("roof", [.. Enumerable.Range(1, 7).Select(i => new ScheduleRow($"R{i}", "Insulation, upper", "PIR roof board, mineral faced", "80.0", "0.025", "3.200", "insulation", "assumed")), new("", "Roof, sum", "U-value 0.14 W/m²K", "416.0", "–", "6.898", "", "at the upstand", true)]),
        ],
        [
            new("Parapet stability", "Parapet stability", "–", "640", Verdict.ToConfirm, true), new("Upstand", "Upstand", "≥ 150", "160", Verdict.Pass, true), new("Design fall", "Design fall", "≥ 1:40", "1:60", Verdict.Warn, true),
            new("Tray step", "Tray step", "≥ 150", "120", Verdict.Fail, true), new("Upstand, recovered roof", "Upstand, recovered roof", "≥ 150", "110", Verdict.Waived, true),
        ],
        37,
        [
            "Dimensions in millimetres, levels in metres. Use figured dimensions; do not scale. Chains leave out sheets under 5 mm.",
            "Sheet materials are drawn thicker than true, for clarity.",
            "Starting point for a competent person: local regulations, the manufacturer's instructions and the project's designers decide.",
            "Stability of the masonry, wind uplift, fire and guarding: for the engineer or fire consultant to confirm.",
            "Work at height: plan edge protection before the roof is opened.",
            "Values marked tabulated or assumed are to be replaced by declared values.",
        ],
        "Starting point for a competent person: local regulations, the manufacturer's instructions and the project's designers decide. General notes: sheet 2.",
        "Section through parapet", ["DPC: damp-proof course", "VCL: vapour control layer", "PIR: polyisocyanurate"], 48.3);

    internal static IReadOnlyList<KeyEntry> Key { get; } =
    [
        .. new[] { "brick", "dense block", "natural stone", "fibrous insulation", "rigid insulation", "plasterboard", "waterproof membrane", "damp-proof course, cavity tray" }
            .Select(words => new KeyEntry(words, [Frame.Box("key", new(0, 0, Swatch.Width, Swatch.Height))])),
    ];

    private static (double Width, double Height) Swatch => (10, 5);

    internal static Scene Scene(SheetFormat format) => Scene(format, Text);

    internal static Scene Scene(SheetFormat format, SheetText text, params IReadOnlyList<KeyedNote> keyed)
    {
        var zone = format.Zones["view"];
        var pages = PageComposer.Lay(format, text, 10, Key, keyed, [])(new("section", new(zone.Left + 50, zone.Bottom + 80), zone), new(zone.Left + 4, zone.Bottom + 1));
        string[] rows = ["frame", "frame.grid", "table.inner", "table.outer", "block.label", "block.value", "block.notes", "schedule", "key", "checklist", "revisions", "title.view", "note.text", "detail.mark"];
        LayerRow[] layers = [.. rows.Select(row => new LayerRow(row, "A-------" + row.Replace(".", "").ToUpperInvariant(), row == "frame" ? 0.7 : row == "table.outer" ? 0.5 : 0.18, "continuous", Ink.Black))];
        return new(layers, [new("section", 10, [], new(0, 0, 1, 1))], pages, new("TC-DET-0101", "P02", "Parapet", "AB", "Tern Court Workshops", new(2026, 11, 25), ""));
    }

    private static SheetFormat Format(string paper, double width, double height, int across, int down, string[] lettered, Dictionary<string, PaperBox> zones)
    {
        PaperBox space = new(20, 10, width - 10, height - 10);
        return new(paper, width, height, space, across, down, lettered, zones.ToDictionary(zone => zone.Key, zone => zone.Value.Shift(new(space.Left, space.Bottom)), StringComparer.Ordinal));
    }
}
