using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Working;

namespace DetailGen.Library.Reports;

/// <summary>How good the annotation of a sheet is, by name and figure.</summary>
internal static class LayoutMeasures
{
    internal static LayoutReport Of(ComposedSheet sheet)
    {
        var layout = sheet.Layout;
        var measures = new SortedDictionary<string, double>(StringComparer.Ordinal)
        {
            ["angles_used"] = layout.Angles,
            ["bends"] = layout.Bends,
            ["bound"] = Round(layout.Bound),
            ["cost"] = Round(layout.Cost),
            ["crossings"] = layout.Crossings,
            ["faults"] = layout.Faults,
            ["free_space"] = Round(layout.FreeSpace),
            ["leader_bound_mm"] = Round(layout.LeaderBound),
            ["leader_max_mm"] = Round(layout.LeaderMax),
            ["leader_total_mm"] = Round(layout.LeaderTotal),
            ["min_text_gap_mm"] = Round(layout.MinTextGap),
            ["min_tip_clearance_mm"] = Round(layout.MinTipClearance),
            ["notes"] = layout.Notes,
            ["overlap_area_mm2"] = Round(layout.OverlapArea),
            ["overlaps"] = layout.Overlaps,
            ["parallel_to_fill"] = layout.ParallelToFill,
            ["rank_inversions"] = layout.RankInversions,
            ["ratio"] = Round(layout.Ratio),
        };
        foreach (var (column, share) in layout.ColumnFill)
        {
            measures["column_fill_" + column] = Round(share);
        }

        if (sheet.Moved is { } moved)
        {
            measures["kept_notes"] = sheet.Places.Count - moved;
            measures["moved_notes"] = moved;
        }

        return new(sheet.Paper, sheet.Scale, sheet.Scene.Pages.Count, measures) { Places = EarlierIssues.Told(sheet.Places) };
    }

    internal static LayoutFaultReport Of(AuditFault fault, int number) => new(number, fault.Sheet, fault.At.X, fault.At.Y, fault.Kind, fault.First, fault.Second, fault.Amount);

    // JSON knows no infinity, which stands for "no two texts".
    private static double Round(double value) => double.IsFinite(value) ? Math.Round(value, 3, MidpointRounding.AwayFromZero) : 0;
}
