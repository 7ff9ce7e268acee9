using System.Runtime.InteropServices;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>All admissible ways to lead one note, from the finite sets of tips and angles.</summary>
internal sealed class Options(Surface surface, double longest, IReadOnlyList<Column> columns)
{
    internal const double LeaderGap = 0.7;
    internal const double TipGap = 1;
    internal const double TipsApart = 2;
    private const double Parallel = 10;
    private const double Least = 3;

    private static readonly double[] InLine = [0];
    private static readonly double[] Setbacks = [1.6, 3.1, 4.6, 6.1, 8.1, 10.1, 13.1, 18.1];

    private readonly Dictionary<(string, string, bool), Option[]> _leaders = [];
    private readonly White _white = new(surface);
    private readonly SortedDictionary<string, List<TipPlace>> _tips = new(StringComparer.Ordinal);

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
    internal Option[][] Alone(Block[] blocks, Column column)
    {
        // Where no block finds room there is no need to ask how the leader runs.
        var found = new List<Option>();
        Lead(blocks[0].Note, column, null, InLine, level => Array.Exists(blocks, block => HasRoom(block, column, level, block.Width)), found);
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
    private void Lead(Note note, Column column, EarlierPlace? earlier, double[] setbacks, Predicate<double>? isWanted, List<Option> found)
    {
        foreach (var id in note.PartIds)
        {
            var shape = surface.ById[id];
            if (!_tips.TryGetValue(id, out var tips))
            {
                tips = Tips.Of(shape);
                _tips.Add(id, tips);
            }

            foreach (var tip in tips)
            {
                for (var angle = 0; angle < Angles.Degrees.Length; angle++)
                {
                    if (!AngleSuits(shape, column.Side > 0 ? Angles.Degrees[angle] : 180 - Angles.Degrees[angle], out var strict))
                    {
                        continue;
                    }

                    foreach (var setback in setbacks)
                    {
                        // A level leader has no bend to set back.
                        if ((angle > 0 || setback == 0) && Lead(shape, tip, angle, strict, setback, column, earlier, isWanted) is { } option)
                        {
                            found.Add(option);
                        }
                    }
                }
            }
        }
    }

    private Option? Lead(Shape shape, TipPlace place, int angle, bool strict, double setback, Column column, EarlierPlace? earlier, Predicate<double>? isWanted)
    {
        var away = (column.Bend - place.At.X) * column.Side - setback;
        var level = place.At.Y + Angles.Slopes[angle] * away;
        if (away < Least || away / Angles.Cosines[angle] + Column.Shoulder > longest || level + Block.Above > column.Room.Top || level < column.Room.Bottom
            || isWanted?.Invoke(level) == false || WayTo(shape, place, angle, strict, setback, column, level) is not { } way)
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

    private Way? WayTo(Shape shape, TipPlace place, int angle, bool strict, double setback, Column column, double level)
    {
        var bend = new PaperPoint(column.Bend - column.Side * setback, level);
        return (setback == 0 || InTheWhite(bend, new(column.Bend, level))) && WayOver(shape, place, angle, strict, bend) is { } way && Clear(bend, way.Tip, column, out var witnesses)
            ? way with { Cost = way.Cost + Weights.Witness * witnesses }
            : null;
    }

    private Way? WayOver(Shape shape, TipPlace place, int angle, bool strict, PaperPoint bend)
    {
        var (tip, ending) = (place.At, Ending.Dot);
        var run = (tip - bend).Length;
        if (shape.Look == Look.Band)
        {
            // From the column the head touches the first face of the band that the leader meets.
            var passage = shape.Pass(bend, tip);
            if (passage.First > 1 || passage.Flattest < Parallel || (1 - passage.First) * run > place.Clearance + 2)
            {
                return null;
            }

            (tip, ending) = (bend + passage.First * (tip - bend), Ending.Arrow);
            run = (tip - bend).Length;
        }

        var foreign = Foreign(shape, bend, tip, ref strict) + (strict ? 0 : Weights.Lax);
        var cost = run + Column.Shoulder + (angle == 0 ? 0 : Weights.Bend) + foreign + Weights.Clearance * (1 - Math.Min(1, place.Clearance / Math.Min(place.Best, 3)));
        return new(tip, ending, run, cost, strict);
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

    private static bool AngleSuits(Shape shape, double degrees, out bool strict)
    {
        // Into a level layer at 30° or steeper.
        var layer = shape.Look != Look.Band && shape.Box.Width > 4 * shape.Box.Height && shape.Box.Height < 12;
        strict = !layer || Lines.Between(degrees, 0) >= 29;
        foreach (var fill in shape.FillAngles)
        {
            // A mirrored sheet keeps its fills: both ways are kept clear, so that its layout is the mirrored one.
            if (Lines.Between(fill, degrees) < Parallel || Lines.Between(180 - fill, degrees) < Parallel)
            {
                return false;
            }
        }

        return true;
    }

    private bool Clear(PaperPoint bend, PaperPoint tip, Column column, out int witnesses)
    {
        witnesses = 0;
        var shoulder = new PaperPoint(column.Bend + column.Side * Column.Shoulder, bend.Y);
        var around = Surface.Around(bend, tip).With(Surface.Around(bend, shoulder)).Grow(TipGap);
        foreach (var text in surface.Texts)
        {
            if (around.Meets(text) && Lines.Meets(text.Grow(TipGap), bend, tip))
            {
                return false;
            }
        }

        foreach (var (from, to) in surface.Hard)
        {
            if (around.Meets(Surface.Around(from, to)) && (Lines.Near(bend, tip, from, to, LeaderGap) || Lines.Near(bend, shoulder, from, to, LeaderGap)))
            {
                return false;
            }
        }

        foreach (var other in surface.Tips)
        {
            if (Lines.Distance(other, bend, tip) < TipGap || Lines.Distance(other, bend, shoulder) < TipGap || (other - tip).Length < TipsApart)
            {
                return false;
            }
        }

        foreach (var (from, to) in surface.Soft)
        {
            if (!around.Meets(Surface.Around(from, to)))
            {
                continue;
            }

            if (Lines.Cross(bend, tip, from, to))
            {
                if (Lines.Between(Lines.Angle(bend, tip), Lines.Angle(from, to)) < 29)
                {
                    return false;
                }

                witnesses++;
            }
            else if (Lines.Near(bend, tip, from, to, 0.35))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Cost of what the leader crosses on its way.</summary>
    private double Foreign(Shape own, PaperPoint bend, PaperPoint tip, ref bool strict)
    {
        var (parts, cost) = (0, 0.0);
        foreach (var shape in surface.Shapes)
        {
            if (ReferenceEquals(shape, own))
            {
                var mine = shape.Look == Look.Open ? Passage.None : shape.Pass(bend, tip);
                strict &= mine.Flattest >= Parallel;
                continue;
            }

            if (shape.Look is Look.Open or Look.Beyond)
            {
                continue;
            }

            var passage = shape.Pass(bend, tip);
            if (passage.Inside < 0.05)
            {
                continue;
            }

            var parallel = passage.Flattest < Parallel || (passage.Inside > 5 && RunsAlongFill(shape, bend, tip));
            if (shape.Look == Look.Band)
            {
                cost += Weights.ForeignSheet;
                parallel |= passage.Inside > 3;
            }
            else
            {
                parts++;
                cost += Weights.ForeignPart + (parts > 2 ? Weights.ManyParts : 0);
            }

            strict &= !parallel && parts <= 2;
        }

        return cost;
    }

    private static bool RunsAlongFill(Shape shape, PaperPoint bend, PaperPoint tip)
    {
        var degrees = Lines.Angle(bend, tip);
        return Array.Exists(shape.FillAngles, fill => Lines.Between(fill, degrees) < Parallel || Lines.Between(180 - fill, degrees) < Parallel);
    }

    /// <summary>A leader from its bend to its end.</summary>
    private readonly record struct Way(PaperPoint Tip, Ending Ending, double Run, double Cost, bool Strict);
}
