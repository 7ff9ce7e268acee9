using System.Runtime.InteropServices;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>All admissible ways to lead one note, from the finite sets of tips and angles.</summary>
internal sealed class Options(Surface surface, double longest, IReadOnlyList<Column> columns)
{
    internal const double LeaderGap = 0.7;
    internal const double TipGap = 1;
    internal const double TipsApart = 2;
    private const double Least = 3;

    private static readonly double[] InLine = [0];
    private static readonly double[] Setbacks = [1.6, 3.1, 4.6, 6.1, 8.1, 10.1, 13.1, 18.1];

    private readonly Dictionary<(string, string, bool), Option[]> _leaders = [];
    private readonly White _white = new(surface);
    private readonly Dictionary<string, Target> _targets = new(StringComparer.Ordinal);

    /// <summary>Cheapest first.</summary>
    /// <param name="width">Of the column's widest block.</param>
    /// <param name="setBack">Whether leaders may bend before the column's bend line as well: more levels lead to one part.</param>
    internal Option[] Of(Block block, Column column, double width, EarlierPlace? earlier, bool setBack)
    {
        if (block.Note.LongestWord > column.Widest)
        {
            return [];
        }

        return Of(Leaders(block.Note, column, earlier, setBack), block, column, width, setBack ? 30 : 10);
    }

    /// <summary>What the note can do in a column of its own, for each of the blocks; cheapest first.</summary>
    /// <param name="alongToo">Whether leaders may run along lines of the drawing.</param>
    internal Option[][] Alone(Block[] blocks, Column column, EarlierPlace? earlier, bool alongToo)
    {
        // Where no block finds room there is no need to ask how the leader runs.
        var found = new List<Option>();
        Lead(blocks[0].Note, column, earlier, InLine, level => Array.Exists(blocks, block => HasRoom(block, column, level, block.Width)), found, alongToo);
        var leaders = Sorted(found);
        return Array.ConvertAll(blocks, block => block.Note.LongestWord > column.Widest ? [] : Of(leaders, block, column, block.Width, 10));
    }

    private bool HasRoom(Block block, Column column, double level, double width) =>
        level + Block.Above <= column.Room.Top && level - block.Below >= column.Room.Bottom && _white.Free(column.Box(block, level, width));

    private Option[] Of(Option[] leaders, Block block, Column column, double width, int eachAngle)
    {
        const double SameLevel = 1.5;
        var found = new List<Option>();
        Span<int> count = stackalloc int[Angles.Degrees.Length];
        foreach (ref readonly var leader in leaders.AsSpan())
        {
            // Of ways at one angle that bend at much the same level the cheapest serves for all, and a few at each angle are choice enough.
            if (count[leader.Angle] < eachAngle && !IsServed(leader) && HasRoom(block, column, leader.Level, width))
            {
                found.Add(leader with { Cost = leader.Cost + block.WrapCost });
                count[leader.Angle]++;
            }
        }

        return [.. found];

        bool IsServed(in Option leader)
        {
            foreach (ref readonly var other in CollectionsMarshal.AsSpan(found))
            {
                if (other.Angle == leader.Angle && other.Strict == leader.Strict && Math.Abs(other.Level - leader.Level) < SameLevel)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>All ways to lead to the note's parts from the column, whatever text they serve; cheapest first.</summary>
    private Option[] Leaders(Note note, Column column, EarlierPlace? earlier, bool setBack)
    {
        if (!_leaders.TryGetValue((note.Id, column.Id, setBack), out var leaders))
        {
            var found = new List<Option>();
            if (setBack)
            {
                found.AddRange(Leaders(note, column, earlier, false));
            }

            Lead(note, column, earlier, setBack ? [.. Setbacks.Select(setback => OwnLine(column, setback)).Where(setback => setback > 0)] : InLine, null, found);
            leaders = Sorted(found);
            _leaders.Add((note.Id, column.Id, setBack), leaders);
        }

        return leaders;
    }

    private static Option[] Sorted(List<Option> options) => [.. options.OrderBy(option => option.Cost).ThenBy(option => option.Level).ThenBy(option => option.Tip.X)];

    /// <param name="isWanted">Whether a leader that bends at a level is of use; null where each is.</param>
    private void Lead(Note note, Column column, EarlierPlace? earlier, double[] setbacks, Predicate<double>? isWanted, List<Option> found, bool alongToo = false)
    {
        foreach (var id in note.PartIds)
        {
            var shape = surface.ById[id];
            if (!_targets.TryGetValue(id, out var target))
            {
                target = new([.. Tips.Of(shape, surface.Shapes.Where(other => other.Look == Look.Band))]);
                _targets.Add(id, target);
            }

            for (var tip = 0; tip < target.Tips.Length; tip++)
            {
                for (var angle = 0; angle < Angles.Degrees.Length; angle++)
                {
                    foreach (var setback in setbacks)
                    {
                        // A level leader has no bend to set back.
                        if ((angle > 0 || setback == 0) && Lead(shape, target, tip, angle, setback, column, earlier, isWanted, alongToo) is { } option)
                        {
                            found.Add(option);
                        }
                    }
                }
            }
        }
    }

    private Option? Lead(Shape shape, Target target, int tip, int angle, double setback, Column column, EarlierPlace? earlier, Predicate<double>? isWanted, bool alongToo)
    {
        var place = target.Tips[tip];
        var away = (column.Bend - place.At.X) * column.Side - setback;
        var (level, distance) = (place.At.Y + Angles.Slopes[angle] * away, away / Angles.Cosines[angle]);
        if (away < Least || distance + Column.Shoulder > longest || level + Block.Above > column.Room.Top || level < column.Room.Bottom || isWanted?.Invoke(level) == false
            || target.Ray(surface, shape, tip, angle, column.Side, longest)?.To(distance, alongToo) is not { } way)
        {
            return null;
        }

        var bend = new PaperPoint(column.Bend - column.Side * setback, level);
        if ((setback > 0 && !InTheWhite(bend, new(column.Bend, level))) || !ShoulderIsClear(bend, new(column.Bend + column.Side * Column.Shoulder, level)))
        {
            return null;
        }

        var cost = way.Cost + (setback == 0 ? 0 : Weights.OutOfLine + Weights.Setback * setback);
        if (earlier is not null)
        {
            cost += earlier.Column == column.Id ? Weights.Moved * Math.Abs(level - earlier.Y) : Weights.OtherColumn;
        }

        var size = place.Best >= 1.25 ? 1 : Math.Max(0.6, 1.2 * place.Best);
        return new(level, way.Tip, angle, Angles.Slopes[angle], way.Run, cost, way.Ending, size, shape.Id, way.Strict) { Setback = setback };
    }

    /// <summary>
    /// The nearest setback whose bend line no other column on that side can have, for blocks on one bend line are read as one column; negative where another column bends there.
    /// </summary>
    private double OwnLine(Column column, double setback)
    {
        const double Pitch = 1.2, Apart = 0.15;
        var own = columns.TakeWhile(other => other.Id != column.Id).Count() % 4 * Pitch / 4;
        var bend = Math.Round((column.Bend - column.Side * setback - own) / Pitch) * Pitch + own;
        return columns.Any(other => other.Side == column.Side && other.Id != column.Id && Math.Abs(other.Bend - bend) < Apart) ? -1 : column.Side * (column.Bend - bend);
    }

    /// <summary>Whether a shoulder drawn on towards the part keeps off all parts.</summary>
    private bool InTheWhite(PaperPoint from, PaperPoint to) => surface.Free(Surface.Around(from, to), LeaderGap, LeaderGap, 0);

    private bool ShoulderIsClear(PaperPoint bend, PaperPoint end)
    {
        foreach (var (from, to) in surface.Hard)
        {
            if (Lines.Near(bend, end, from, to, LeaderGap))
            {
                return false;
            }
        }

        return surface.Tips.TrueForAll(tip => Lines.Distance(tip, bend, end) >= TipGap);
    }

    /// <summary>The places in a part where leaders may end, with the rays from each that were asked for.</summary>
    private sealed record Target(TipPlace[] Tips)
    {
        private readonly (bool IsKnown, Ray? Ray)[] _rays = new (bool, Ray?)[Tips.Length * Angles.Degrees.Length * 2];

        internal Ray? Ray(Surface surface, Shape shape, int tip, int angle, int side, double longest)
        {
            ref var known = ref _rays[((tip * Angles.Degrees.Length) + angle) * 2 + (side > 0 ? 1 : 0)];
            if (!known.IsKnown)
            {
                known = (true, Notes.Ray.Of(surface, shape, Tips[tip], Angles.Degrees[angle], side, longest));
            }

            return known.Ray;
        }
    }
}
