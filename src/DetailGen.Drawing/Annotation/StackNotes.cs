using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>One leader through all layers of a wall or a roof: a dot in each, a line of text for each, in one order.</summary>
internal sealed class StackNotes(Surface surface, AnnotationRequest request)
{
    internal const string What = "stack";
    private const string Row = "note.stack";
    private const double Thin = 1.2;

    /// <summary>A stem stands so far from the cut end where it can.</summary>
    private const double Usual = 8;
    private const double Clear = 4;
    private const int Longest = 9;

    /// <summary>From line to line.</summary>
    private double Pitch => surface.Sizes.ByNotes(4.75);

    private double Height => surface.Sizes.Notes;

    /// <summary>From the base line of a line to its middle, where its reference line leaves.</summary>
    private double Half => surface.Sizes.ByNotes(0.96);

    /// <summary>What a line takes under its middle.</summary>
    private double Under => surface.Sizes.ByNotes(2.2);

    private readonly StackLines _lines = new(surface, request);

    /// <summary>Parts whose note is told in a stack.</summary>
    internal SortedSet<string> Told { get; } = new(StringComparer.Ordinal);

    /// <summary>Layers that stand by their references alone, with the words for a list.</summary>
    internal List<KeyedNote> Keyed { get; } = [];

    /// <summary>The layers of stacks that no stem goes through, a note each.</summary>
    internal List<Note> Apart { get; } = [];

    /// <summary>The roof's stem and text as far left as they stand; far right while there are none.</summary>
    private PaperBox? RoofBox { get; set; }

    private double WallWidth { get; set; }

    /// <summary>A column of the roof side less what the roof's stack takes of its height range.</summary>
    internal Column Cramp(Column column)
    {
        if (column.Side < 0)
        {
            return column with { Least = WallWidth };
        }

        if (RoofBox is not { } box || box.Top < column.Room.Bottom || box.Bottom > column.Room.Top)
        {
            return column;
        }

        return column with { Room = column.Room with { Right = Math.Min(column.Room.Right, box.Left - 2.5) } };
    }

    /// <param name="bar">x of the upright line at which the reference lines end.</param>
    /// <param name="side">−1 for words before the wall, +1 for words behind it.</param>
    /// <param name="foot">Lowest drawn edge of the wall.</param>
    /// <param name="byReference">References alone, whose words are listed, where there is no room for more.</param>
    /// <returns>Whether there was room on that side.</returns>
    internal bool Wall(Buildup wall, double bar, int side, double foot, bool byReference)
    {
        // Near the foot; where the wall's layers are not all there, as below a roof that its insulation stops at, down from its head.
        var (from, to) = (Math.Max(foot, surface.Drawn.Bottom), surface.Drawn.Top);
        double[] stations = [.. Near(40).Select(away => from + away), .. Steps(Usual, to - from).Select(away => to - away)];
        // The first line is the outermost layer, whichever way the wall stands and whichever side the words are on.
        var order = wall.Layers.Select(layer => layer.PartId).Distinct(StringComparer.Ordinal).ToList();
        return Best(wall, stations, level: true, byReference, (lines, at) => TryWall(wall, [.. lines.OrderBy(line => order.IndexOf(line.PartId))], at, new(bar, side)));
    }

    /// <param name="end">Right-hand edge of the roof as drawn.</param>
    /// <param name="right">Text may run as far as this.</param>
    /// <param name="byReference">References alone, whose words are listed, where there is no room for more.</param>
    internal bool Roof(Buildup roof, double end, double right, bool byReference)
    {
        // Under the roof rather than over it, where notes of the parapet need the room, even at the price of fewer words.
        double[] stations = [.. Near(end - surface.Drawn.Left).Select(away => end - away)];
        return Best(roof, stations, level: false, byReference, (lines, at) => TryRoof(roof, lines, at, right, below: true))
            || Best(roof, stations, level: false, byReference, (lines, at) => TryRoof(roof, lines, at, right, below: false));
    }

    /// <summary>Each layer by itself, where no place shows them all: the lining below a deep ceiling may be a strip between a ribbon of adhesive and the break.</summary>
    internal void TakeApart(Buildup buildup)
    {
        foreach (var layer in buildup.Layers.Where(layer => surface.ById.ContainsKey(layer.PartId)).DistinctBy(layer => layer.PartId))
        {
            string[] pieces = [.. _lines.PiecesOf(layer.PartId).Select(shape => shape.Id)];
            Apart.Add(new(layer.PartId, pieces, layer.Reference, _lines.Words(layer, Brevity.All), buildup.Id, request.Section.Parts.First(part => part.Id == layer.PartId).BuildOrder, surface.Sizes));
            Told.UnionWith(pieces);
        }
    }

    /// <summary>The upright line at which the reference lines of a wall's stack end.</summary>
    /// <param name="Side">+1 where the words stand right of it, −1 left.</param>
    private readonly record struct Bar(double At, int Side)
    {
        private const double Gap = 2.5;

        /// <summary>Around words of a width between two levels.</summary>
        internal PaperBox Box(double width, double bottom, double top) => Side < 0 ? new(At - Gap - width, bottom, At - Gap, top) : new(At + Gap, bottom, At + Gap + width, top);
    }


    /// <summary>Distances from a cut end: well clear of its break line first, at last as close to it as the layers make it.</summary>
    private static IEnumerable<double> Near(double farthest) => Steps(Usual, farthest).Concat(Steps(1, Usual - 0.5).Reverse());

    private static IEnumerable<double> Steps(double from, double to)
    {
        for (var step = from; step <= to; step += 0.5)
        {
            yield return step;
        }
    }

    private bool Best(Buildup buildup, double[] stations, bool level, bool byReference, Func<List<StackLine>, double, bool> place)
    {
        if (!byReference)
        {
            return Array.Exists([Brevity.All, Brevity.First, Brevity.Name], brevity => TryBest(buildup, stations, level, brevity, place));
        }

        if (buildup.Layers.Any(layer => layer.Reference.Length == 0) || !TryBest(buildup, stations, level, Brevity.Reference, place))
        {
            return false;
        }

        Keyed.AddRange(buildup.Layers.Where(layer => surface.ById.ContainsKey(layer.PartId)).DistinctBy(layer => layer.PartId).Select(layer => new KeyedNote(layer.PartId, layer.Reference, _lines.Words(layer, Brevity.All))));
        return true;
    }

    private bool TryBest(Buildup buildup, double[] stations, bool level, Brevity brevity, Func<List<StackLine>, double, bool> place)
    {
        var named = buildup.Layers.Select(layer => layer.PartId).Where(surface.ById.ContainsKey).Distinct(StringComparer.Ordinal).Count();
        foreach (var station in stations)
        {
            var lines = _lines.Crossed(buildup, station, level, brevity);
            if (lines.Count > 0 && lines.Count == named && place(lines, station))
            {
                return true;
            }
        }

        return false;
    }

    /// <param name="lines">The outermost first.</param>
    private bool TryWall(Buildup wall, List<StackLine> lines, double at, Bar bar)
    {
        if (lines.Count > Longest)
        {
            return false;
        }

        var width = lines.Max(Width) * 1.03;
        foreach (var shift in Steps(0, 30).SelectMany(step => (double[])[step, -step]))
        {
            // A reference line and the stem fall together, or stand apart by more than a line's width.
            var first = at + (lines.Count - 1) / 2 * Pitch + shift;
            var last = first - (lines.Count - 1) * Pitch;
            if (surface.Free(bar.Box(width, last - Under, first + Height - Half + surface.Sizes.ByNotes(0.4))) && surface.Free(Surface.Around(new(bar.At, first), new(bar.At, last)), 0.9)
                && MarksAreFree(lines, line => new(line.Middle, at))
                && StemIsFree(new(bar.At, Math.Max(first, at)), new(bar.At, Math.Min(last, at))) && StemIsFree(new(bar.At, at), new(Farthest(lines, bar), at)))
            {
                DrawWall(wall, lines, at, bar, first, width);
                return true;
            }
        }

        return false;
    }

    private static double Farthest(List<StackLine> lines, Bar bar) => lines.MaxBy(line => Math.Abs(line.Middle - bar.At))!.Middle;

    private void DrawWall(Buildup wall, List<StackLine> lines, double at, Bar bar, double first, double width)
    {
        var last = first - (lines.Count - 1) * Pitch;
        surface.Group(Row, "stack " + wall.Id, () =>
        {
            for (var i = 0; i < lines.Count; i++)
            {
                // As read, the lines have their beginnings in one line on either side of the bar.
                var (y, own) = (first - i * Pitch, Width(lines[i]));
                var box = bar.Box(width, y, y);
                var left = surface.Mirrored ? box.Right - own : box.Left;
                Write(lines[i], left, y - Half);
                var end = bar.Side < 0 ? Math.Min(left + own + 1.5, bar.At - 1.5) : Math.Max(left - 1, bar.At + 1.5);
                Reference(new(end, y), new(bar.At, y));
            }

            surface.Line(Row, new(bar.At, Math.Max(first, at)), new(bar.At, Math.Min(last, at)));
            surface.Line(Row, new(bar.At, at), new(Farthest(lines, bar), at));
            foreach (var line in lines)
            {
                Mark(line, new(line.Middle, at));
            }
        });
        WallWidth = bar.Side < 0 ? Math.Max(0, width + Column.LeastShoulder - Column.Shoulder) : 0;
        surface.Hard.Add((new(bar.At, Math.Max(first, at)), new(bar.At, Math.Min(last, at))));
        surface.Hard.Add((new(bar.At, at), new(Farthest(lines, bar), at)));
    }

    private bool TryRoof(Buildup roof, List<StackLine> lines, double at, double right, bool below)
    {
        if (lines.Count > Longest)
        {
            return false;
        }

        var width = lines.Max(Width) * 1.03;
        var (top, bottom) = (lines[0].Middle, lines[^1].Far);
        // Beside the stem away from the notes of the room, if need be farther off, rather than among them.
        foreach (var onRight in (bool[])[true, false])
        {
            foreach (var step in Steps(Clear + 1, below ? 40 : surface.Zone.Top - lines[0].Near))
            {
                var first = below ? bottom - step : lines[0].Near + step + (lines.Count - 1) * Pitch;
                var last = first - (lines.Count - 1) * Pitch;
                var left = onRight ? at + 3.5 : at - 3.5 - width;
                var box = new PaperBox(left, last - Under, left + width, first + Height);
                var stem = below ? (new PaperPoint(at, last), new PaperPoint(at, top)) : (new PaperPoint(at, first), new PaperPoint(at, lines[^1].Middle));
                if (box.Right <= right && surface.Free(box) && StemIsFree(stem.Item1, stem.Item2) && MarksAreFree(lines, line => new(at, line.Middle)))
                {
                    DrawRoof(roof, lines, at, first, left, onRight, stem, width);
                    return true;
                }
            }
        }

        return false;
    }

    private void DrawRoof(Buildup roof, List<StackLine> lines, double at, double first, double left, bool onRight, (PaperPoint From, PaperPoint To) stem, double width)
    {
        surface.Group(Row, "stack " + roof.Id, () =>
        {
            for (var i = 0; i < lines.Count; i++)
            {
                var y = first - i * Pitch;

                // On paper's right of the stem the lines begin at it; on its left they begin at a common edge and the reference lines reach back to them.
                var own = Width(lines[i]);
                var against = onRight != surface.Mirrored;
                var start = onRight ? left + (against ? 0 : width - own) : left + (against ? width - own : 0);
                Write(lines[i], start, y - Half);
                Reference(new(at, y), new(onRight ? start - 1 : start + own + 1, y));
            }

            surface.Line(Row, stem.From, stem.To);
            foreach (var line in lines)
            {
                Mark(line, new(at, line.Middle));
            }
        });
        surface.Hard.Add(stem);
        var box = Surface.Around(stem.From, stem.To);
        RoofBox = onRight ? box : box.With(new(left, first - (lines.Count - 1) * Pitch, left + width, first));
    }

    private void Reference(PaperPoint from, PaperPoint to)
    {
        surface.Line(Row, from, to);
        surface.Hard.Add((from, to));
    }

    private bool StemIsFree(PaperPoint from, PaperPoint to) =>
        !surface.Edges.RunAlong(from, to) && surface.Texts.TrueForAll(text => !Lines.Meets(text.Grow(1), from, to)) && surface.Hard.TrueForAll(line => Lines.Distance(from, to, line.From, line.To) > 0.7);

    private bool MarksAreFree(List<StackLine> lines, Func<StackLine, PaperPoint> place) => lines.TrueForAll(mark =>
    {
        var (from, to) = ThinMark(place(mark));
        return mark.Thickness >= Thin || surface.Hard.TrueForAll(line => Lines.Distance(from, to, line.From, line.To) > 0.7);
    });

    /// <summary>The oblique stroke through a layer too thin for a dot.</summary>
    private static (PaperPoint From, PaperPoint To) ThinMark(PaperPoint at) => (at - new PaperPoint(0.707, 0.707), at + new PaperPoint(0.707, 0.707));

    private void Mark(StackLine line, PaperPoint at)
    {
        if (line.Thickness < Thin)
        {
            var (from, to) = ThinMark(at);
            surface.Line(Row, from, to);
            surface.Hard.Add((from, to));
        }
        else
        {
            surface.Dot(Row, at, 1);
        }

        surface.Tips.Add(at);
        Told.UnionWith(_lines.PiecesOf(line.PartId).Select(shape => shape.Id));
    }

    private double Width(StackLine line) => surface.Sizes.Typeface.Width(line.Reference, Height, true) + (line.Reference.Length == 0 ? 0 : 1.5) + surface.Sizes.Typeface.Width(line.Words, Height);

    private void Write(StackLine line, double left, double baseLine)
    {
        // On a mirrored sheet the reference still stands on the left as read.
        var reference = surface.Sizes.Typeface.Width(line.Reference, Height, true);
        var words = surface.Sizes.Typeface.Width(line.Words, Height);
        var gap = line.Reference.Length == 0 ? 0 : 1.5;
        if (line.Reference.Length > 0)
        {
            surface.Words(Row, line.Reference, surface.Mirrored ? left + words + gap : left, baseLine, bold: true);
        }

        if (line.Words.Length > 0)
        {
            surface.Words(Row, line.Words, surface.Mirrored ? left : left + reference + gap, baseLine);
        }
    }
}
