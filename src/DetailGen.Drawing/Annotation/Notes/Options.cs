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
    private static readonly double[] Setbacks = [0, 1.6, 3.1, 4.6, 6.1, 8.1, 10.1, 13.1, 18.1];

    private readonly Dictionary<(double, double, double, double), bool> _free = [];
    private readonly Dictionary<(string, PaperPoint, int, string, double), Way?> _ways = [];
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

        return Make(block, column, width, earlier, setBack ? Setbacks : InLine);
    }

    private Option[] Make(Block block, Column column, double width, EarlierPlace? earlier, double[] setbacks)
    {
        var found = new List<Option>();
        double[] bends = [.. setbacks.Select(setback => setback > 0 ? OwnLine(column, setback) : 0).Where(setback => setback >= 0)];
        foreach (var id in block.Note.PartIds)
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
                    // A level leader has no bend to set back.
                    foreach (var setback in angle == 0 ? InLine : bends)
                    {
                        if (Make(shape, tip, angle, setback, block, column, width, earlier) is { } option)
                        {
                            found.Add(option);
                        }
                    }
                }
            }
        }

        return Thinned([.. found.OrderBy(option => option.Cost).ThenBy(option => option.Level).ThenBy(option => option.Tip.X)], setbacks.Length == 1 ? 10 : 30);
    }

    /// <summary>Of ways at one angle that bend at much the same level the cheapest serves for all, and a few at each angle are choice enough.</summary>
    private static Option[] Thinned(Option[] options, int eachAngle)
    {
        const int Enough = 20;
        const double SameLevel = 1.5;
        if (options.Length <= Enough)
        {
            return options;
        }

        var taken = new List<Option>();
        Span<int> count = stackalloc int[Angles.Degrees.Length];
        foreach (var option in options)
        {
            if (count[option.Angle] < eachAngle && !taken.Exists(other => other.Angle == option.Angle && other.Strict == option.Strict && Math.Abs(other.Level - option.Level) < SameLevel))
            {
                taken.Add(option);
                count[option.Angle]++;
            }
        }

        return [.. taken];
    }

    private Option? Make(Shape shape, TipPlace place, int angle, double setback, Block block, Column column, double width, EarlierPlace? earlier)
    {
        var away = (column.Bend - place.At.X) * column.Side - setback;
        if (away < Least)
        {
            return null;
        }

        var level = place.At.Y + Angles.Slopes[angle] * away;
        if (away / Angles.Cosines[angle] + Column.Shoulder > longest || level + Block.Above > column.Room.Top || level - block.Below < column.Room.Bottom
            || WayTo(shape, place, angle, setback, column, level) is not { } way || !IsFree(column.Box(block, level, width)))
        {
            return null;
        }

        var cost = way.Cost + block.WrapCost + (setback == 0 ? 0 : Weights.OutOfLine + Weights.Setback * setback);
        if (earlier is not null)
        {
            cost += earlier.Column == column.Id ? Weights.Moved * Math.Abs(level - earlier.Y) : Weights.OtherColumn;
        }

        var size = place.Best >= 1.25 ? 1 : Math.Max(0.6, 1.2 * place.Best);
        return new(level, way.Tip, angle, Angles.Slopes[angle], way.Run, cost, way.Ending, size, shape.Id, way.Strict) { Setback = setback };
    }

    /// <summary>The leader alone, whatever text it serves.</summary>
    private Way? WayTo(Shape shape, TipPlace place, int angle, double setback, Column column, double level)
    {
        var key = (shape.Id, place.At, angle, column.Id, setback);
        if (!_ways.TryGetValue(key, out var way))
        {
            var bend = new PaperPoint(column.Bend - column.Side * setback, level);
            way = (setback == 0 || InTheWhite(bend, new(column.Bend, level))) && WayOver(shape, place, angle, column, bend) is { } over
                && Clear(bend, over.Tip, column, out var witnesses) ? over with { Cost = over.Cost + Weights.Witness * witnesses } : null;
            _ways.Add(key, way);
        }

        return way;
    }

    private Way? WayOver(Shape shape, TipPlace place, int angle, Column column, PaperPoint bend)
    {
        var degrees = column.Side > 0 ? Angles.Degrees[angle] : 180 - Angles.Degrees[angle];
        if (!AngleSuits(shape, degrees, out var strict))
        {
            return null;
        }

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

    private bool IsFree(PaperBox box)
    {
        // Blocks of a column ask for the same few strips again and again.
        if (!_free.TryGetValue((box.Left, box.Bottom, box.Right, box.Top), out var free))
        {
            free = surface.Free(box);
            _free.Add((box.Left, box.Bottom, box.Right, box.Top), free);
        }

        return free;
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
            if (around.Meets(Surface.Around(from, to)) && (Lines.Distance(bend, tip, from, to) < LeaderGap || Lines.Distance(bend, shoulder, from, to) < LeaderGap))
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
            else if (Lines.Distance(bend, tip, from, to) < 0.35)
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
    private sealed record Way(PaperPoint Tip, Ending Ending, double Run, double Cost, bool Strict);
}
