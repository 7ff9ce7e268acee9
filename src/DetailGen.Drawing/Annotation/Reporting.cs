using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>Makes the report of a finished layout.</summary>
internal static class Reporting
{
    internal static LayoutReport Of(
        Surface surface, NotePlacement placement, IReadOnlyList<Column> columns, IReadOnlyList<LayoutFault> faults, AnnotationRequest request)
    {
        var marks = Marks.Of(surface.Items, surface.Sizes.Typeface);
        var placed = placement.Placed;
        var total = marks.Leaders.Sum(leader => leader.Length);
        var bound = placed.Sum(note => note.ShortestLeader);
        var fill = columns.Select(column =>
        {
            var here = placed.Where(note => note.Column.Id == column.Id).ToArray();
            var area = here.Sum(note => note.Block.Width * (note.Block.Above + note.Block.Below));
            return (column.Id, here.Length == 0 ? 0 : Math.Round(area / (column.Room.Height * here.Max(note => note.ColumnWidth)), 3));
        }).ToArray();
        return new(
            Crossings: Count("lead-cross", "lead-dim"),
            Overlaps: Count("text-overlap", "text-on-fill"),
            OverlapArea: Math.Round(faults.Where(fault => fault.Check is "text-overlap" or "text-on-fill").Sum(fault => fault.Amount), 3),
            MinTextGap: Math.Round(TextGap(marks), 2),
            LeaderTotal: Math.Round(total, 1),
            LeaderBound: Math.Round(bound, 1),
            Ratio: bound == 0 ? 1 : Math.Round(placed.Sum(note => note.Option.Run + Column.Shoulder) / bound, 3),
            LeaderMax: Math.Round(marks.Leaders.Select(leader => leader.Length).DefaultIfEmpty(0).Max(), 1),
            Bends: placed.Count(note => note.Option.Angle != 0),
            Angles: columns.Select(column => placed.Where(note => note.Column.Id == column.Id).Select(note => note.Option.Angle).Distinct().Count()).DefaultIfEmpty(0).Max(),
            ParallelToFill: Count("lead-parallel"),
            MinTipClearance: Math.Round(placed.Where(note => note.Option.Ending == Ending.Dot)
                .Select(note => surface.ById[note.Option.PartId].EdgeDistance(note.Option.Tip.X, note.Option.Tip.Y)).DefaultIfEmpty(0).Min(), 2),
            RankInversions: Inversions(placed),
            ColumnFill: fill,
            FreeSpace: Math.Round(Free(marks, surface), 3),
            Cost: Math.Round(placement.Cost, 2),
            Bound: Math.Round(placement.Bound, 2),
            Proved: placement.Cost <= placement.Bound + 1e-6,
            Notes: request.Section.Parts.Count(part => part.Words.Note.Length > 0),
            Faults: faults.Count);

        int Count(params string[] checks) => faults.Count(fault => checks.Contains(fault.Check));
    }

    private static double TextGap(Marks marks)
    {
        var least = 99.0;
        for (var i = 0; i < marks.Texts.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (marks.Texts[i].Owner != marks.Texts[j].Owner)
                {
                    least = Math.Min(least, Lines.Gap(marks.Texts[i].Box, marks.Texts[j].Box));
                }
            }
        }

        return least;
    }

    private static int Inversions(List<PlacedNote> placed)
    {
        var count = 0;
        foreach (var group in placed.GroupBy(note => (note.Column.Id, note.Block.Note.Group)))
        {
            var ranks = group.OrderByDescending(note => note.Option.Level).Select(note => note.Block.Note.Rank).ToArray();
            count += ranks.Zip(ranks.Skip(1)).Count(pair => pair.First < pair.Second);
        }

        return count;
    }

    /// <summary>Share of the zone in no box of text and in no part's box.</summary>
    private static double Free(Marks marks, Surface surface)
    {
        var drawn = surface.Shapes.Where(shape => shape.Look != Look.Open).ToArray();
        var texts = marks.Texts.Select(text => surface.Turn(text.Box)).ToArray();
        var (free, all) = (0, 0);
        for (var x = surface.Zone.Left + 2; x < surface.Zone.Right; x += 4)
        {
            var over = Array.FindAll(texts, box => x >= box.Left && x <= box.Right);
            var shapes = Array.FindAll(drawn, shape => x >= shape.Box.Left && x <= shape.Box.Right);
            for (var y = surface.Zone.Bottom + 2; y < surface.Zone.Top; y += 4)
            {
                all++;
                free += IsTaken(x, y, over, shapes) ? 0 : 1;
            }
        }

        return all == 0 ? 0 : (double)free / all;
    }

    private static bool IsTaken(double x, double y, PaperBox[] texts, Shape[] shapes)
    {
        foreach (ref readonly var box in texts.AsSpan())
        {
            if (y >= box.Bottom && y <= box.Top)
            {
                return true;
            }
        }

        foreach (var shape in shapes)
        {
            if (y >= shape.Box.Bottom && y <= shape.Box.Top && shape.Contains(x, y))
            {
                return true;
            }
        }

        return false;
    }
}
