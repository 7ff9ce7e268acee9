using System.Runtime.InteropServices;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>All admissible ways to lead one note, from the finite sets of tips and angles.</summary>
/// <param name="wall">Where its faces are.</param>
/// <param name="stood">Where notes stood in an earlier issue.</param>
internal sealed class Options(Surface surface, double longest, IReadOnlyList<Column> columns, (double Left, double Right) wall, IReadOnlyList<EarlierPlace> stood)
{
    internal const double LeaderGap = 0.7;
    internal const double TipGap = 1;
    internal const double TipsApart = 2;
    private const double Least = 3;

    private static readonly double[] InLine = [0];
    private static readonly double[] Setbacks = [1.6, 3.1, 4.6, 6.1, 8.1, 10.1, 13.1, 18.1];

    private readonly Dictionary<(string, string, bool), Option[]> _leaders = [];
    private readonly double _above = Block.AboveOf(surface.Sizes);
    private readonly White _white = new(surface);
    private readonly Dictionary<string, Target> _targets = new(StringComparer.Ordinal);

    // Kept between the calls: they are filled a thousand times.
    private readonly List<Option> _found = [], _served = [];
    private readonly List<LoneLeader> _lone = [];

    /// <summary>Cheapest first.</summary>
    /// <param name="width">Of the column's widest block.</param>
    /// <param name="setBack">Whether leaders may bend before the column's bend line as well: more levels lead to one part.</param>
    internal Option[] Of(Block block, Column column, double width, EarlierPlace? earlier, bool setBack)
    {
        if (block.Note.Measured.Longest > column.Widest)
        {
            return [];
        }

        return Of(Leaders(block.Note, column, earlier, setBack), block, column, width, setBack ? 30 : 10);
    }

    /// <summary>The leaders to a note that stands by itself wherever one of its blocks has room, for each column of its own, cheapest first.</summary>
    /// <param name="alongToo">Whether leaders may run along lines of the drawing.</param>
    internal LoneLeader[][] Alone(Block[] blocks, Column[] own, EarlierPlace? earlier, bool alongToo)
    {
        var (least, below) = (blocks.Min(block => block.Width), blocks.Min(block => block.Below));
        var targets = Targets(blocks[0].Note).ToArray();
        return Array.ConvertAll(own, column =>
        {
            _lone.Clear();
            foreach (var (shape, target) in targets)
            {
                for (var tip = 0; tip < target.Tips.Length; tip++)
                {
                    for (var angle = 0; angle < Angles.Degrees.Length; angle++)
                    {
                        // Room first: most have none, and a leader without it need not be looked at.
                        var lead = new Lead(target.Tips[tip], angle, 0, column);
                        if (IsPossible(lead) && lead.Distance <= target.Reach(tip, angle, column.Side)
                            && !_white.Bars(column.Box(_above, below, lead.Level, least)) && AnyHasRoom(blocks, column, lead.Level)
                            && target.Ray(surface, shape, tip, angle, column.Side, longest)?.To(lead.Distance, alongToo) is { } way && To(lead, way, shape, earlier) is { } option)
                        {
                            _lone.Add(new(option, way.Cost));
                        }
                    }
                }
            }

            _lone.Sort((a, b) => Order(a.Option, b.Option));
            return _lone.ToArray();
        });
    }

    /// <summary>What the note can do in a column of its own, in one of its blocks; cheapest first.</summary>
    /// <param name="most">Dearer leaders are of no use.</param>
    internal Option[] Of(LoneLeader[] leaders, Block block, Column own, double most)
    {
        if (leaders.Length == 0 || block.Note.Measured.Longest > own.Widest)
        {
            return [];
        }

        _found.Clear();
        foreach (ref readonly var leader in leaders.AsSpan())
        {
            if (leader.Way <= most)
            {
                _found.Add(leader.Option);
            }
        }

        return Of(CollectionsMarshal.AsSpan(_found), block, own, block.Width, 10);
    }

    private bool AnyHasRoom(Block[] blocks, Column column, double level)
    {
        foreach (var block in blocks)
        {
            if (HasRoom(block, column, level, block.Width))
            {
                return true;
            }
        }

        return false;
    }

    private bool HasRoom(Block block, Column column, double level, double width) =>
        level + block.Above <= column.Room.Top && level - block.Below >= column.Room.Bottom && _white.Free(column.Box(block, level, width));

    private Option[] Of(ReadOnlySpan<Option> leaders, Block block, Column column, double width, int eachAngle)
    {
        _served.Clear();
        Span<int> count = stackalloc int[Angles.Degrees.Length];
        count.Clear();
        foreach (ref readonly var leader in leaders)
        {
            // Of ways at one angle that bend at much the same level the cheapest serves for all, and a few at each angle are choice enough.
            if (count[leader.Angle] < eachAngle && !IsServed(leader) && HasRoom(block, column, leader.Level, width))
            {
                _served.Add(leader with { Cost = leader.Cost + block.WrapCost });
                count[leader.Angle]++;
            }
        }

        return [.. _served];
    }

    private bool IsServed(in Option leader)
    {
        const double SameLevel = 1.5;
        foreach (ref readonly var other in CollectionsMarshal.AsSpan(_served))
        {
            if (other.Angle == leader.Angle && other.Strict == leader.Strict && Math.Abs(other.Level - leader.Level) < SameLevel)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>All ways to lead to the note's parts from the column, whatever text they serve; cheapest first.</summary>
    private Option[] Leaders(Note note, Column column, EarlierPlace? earlier, bool setBack)
    {
        if (!_leaders.TryGetValue((note.Id, column.Id, setBack), out var leaders))
        {
            var straight = setBack ? Leaders(note, column, earlier, false) : [];
            _found.Clear();
            _found.AddRange(straight);
            double[] setbacks = setBack ? [.. Setbacks.Select(setback => OwnLine(column, setback)).Where(setback => setback > 0)] : InLine;
            foreach (var (shape, target) in Targets(note))
            {
                for (var tip = 0; tip < target.Tips.Length; tip++)
                {
                    // A level leader has no bend to set back.
                    for (var angle = setBack ? 1 : 0; angle < Angles.Degrees.Length; angle++)
                    {
                        foreach (var setback in setbacks)
                        {
                            var lead = new Lead(target.Tips[tip], angle, setback, column);
                            if (IsPossible(lead) && target.Ray(surface, shape, tip, angle, column.Side, longest)?.To(lead.Distance) is { } way && To(lead, way, shape, earlier) is { } option)
                            {
                                _found.Add(option);
                            }
                        }
                    }
                }
            }

            _found.Sort(Order);
            leaders = [.. _found];
            _leaders.Add((note.Id, column.Id, setBack), leaders);
        }

        return leaders;
    }

    private static int Order(Option one, Option other)
    {
        var by = one.Cost.CompareTo(other.Cost);
        by = by == 0 ? one.Level.CompareTo(other.Level) : by;
        by = by == 0 ? one.Tip.X.CompareTo(other.Tip.X) : by;
        by = by == 0 ? one.Angle.CompareTo(other.Angle) : by;
        return by == 0 ? string.CompareOrdinal(one.PartId, other.PartId) : by;
    }

    /// <summary>The note's parts with the places in them where leaders may end.</summary>
    private IEnumerable<(Shape Shape, Target Target)> Targets(Note note)
    {
        foreach (var id in note.PartIds)
        {
            var shape = surface.ById[id];
            if (!_targets.TryGetValue(id, out var target))
            {
                Shape[] bands = [.. surface.Shapes.Where(other => other.Look == Look.Band)];
                target = new([.. Tips.Of(shape, bands).Where(tip => note.Ends?.Contains(tip.At) ?? true), .. Again(note, shape, bands)]);
                _targets.Add(id, target);
            }

            yield return (shape, target);
        }
    }

    /// <summary>Where leaders from the note's place of an earlier issue meet the part, which may lie elsewhere now.</summary>
    private List<TipPlace> Again(Note note, Shape shape, Shape[] bands)
    {
        var tips = new List<TipPlace>();
        if (stood.FirstOrDefault(place => place.PartId == note.Id) is { } place && columns.FirstOrDefault(column => column.Id == place.Column) is { } column)
        {
            for (var angle = 0; angle < Angles.Degrees.Length; angle++)
            {
                PaperPoint way = new(-column.Side * Angles.Cosines[angle], -Angles.Slopes[angle] * Angles.Cosines[angle]);
                tips.AddRange(Tips.Along(shape, bands, new(column.Bend, place.Y), way, longest));
            }
        }

        return tips;
    }

    /// <summary>A leader as it is asked for, by plain geometry.</summary>
    private readonly record struct Lead(TipPlace Place, int Angle, double Setback, Column Column)
    {
        /// <summary>How far the bend lies beside the tip, mm; negative on the wrong side.</summary>
        internal double Away => (Column.Bend - Place.At.X) * Column.Side - Setback;

        internal double Distance => Away / Angles.Cosines[Angle];

        internal double Level => Place.At.Y + Angles.Slopes[Angle] * Away;

        internal PaperPoint Bend => new(Column.Bend - Column.Side * Setback, Level);
    }

    private bool IsPossible(in Lead lead) =>
        lead.Away >= Least && lead.Distance + Column.Shoulder <= longest && lead.Level + _above <= lead.Column.Room.Top && lead.Level >= lead.Column.Room.Bottom;

    /// <summary>Null where its bend or its shoulder is in the way of something.</summary>
    private Option? To(in Lead lead, in Way way, Shape shape, EarlierPlace? earlier)
    {
        var (place, angle, setback, column) = lead;
        var (bend, level) = (lead.Bend, lead.Level);
        if ((setback > 0 && !InTheWhite(bend, new(column.Bend, level))) || !ShoulderIsClear(bend, new(column.Bend + column.Side * Column.Shoulder, level)))
        {
            return null;
        }

        var cost = way.Cost + (setback == 0 ? 0 : Weights.OutOfLine + Weights.Setback * setback) + (IsAcross(way.Tip.X, bend.X) ? Weights.Across : 0);
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
    private bool InTheWhite(PaperPoint from, PaperPoint to) => Surface.Around(from, to) is var box && (_white.IsClear(box) || surface.Free(box, LeaderGap, LeaderGap, 0));

    /// <summary>Whether a leader runs through most of the wall: there may be white paper on the side from which the part is seen.</summary>
    private bool IsAcross(double tip, double bend)
    {
        const double Most = 0.6;
        return Math.Min(Math.Max(tip, bend), wall.Right) - Math.Max(Math.Min(tip, bend), wall.Left) > Most * (wall.Right - wall.Left);
    }

    private bool ShoulderIsClear(PaperPoint bend, PaperPoint end)
    {
        if (!_white.IsClear(Surface.Around(bend, end)))
        {
            foreach (var (from, to) in surface.Hard)
            {
                if (Lines.Near(bend, end, from, to, LeaderGap))
                {
                    return false;
                }
            }
        }

        foreach (var tip in surface.Tips)
        {
            if (Lines.Distance(tip, bend, end) < TipGap)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The places in a part where leaders may end, with the rays from each that were asked for.</summary>
    private sealed record Target(TipPlace[] Tips)
    {
        private readonly (bool IsKnown, Ray? Ray)[] _rays = new (bool, Ray?)[Tips.Length * Angles.Degrees.Length * 2];

        internal Ray? Ray(Surface surface, Shape shape, int tip, int angle, int side, double longest)
        {
            ref var known = ref _rays[Index(tip, angle, side)];
            if (!known.IsKnown)
            {
                known = (true, Notes.Ray.Of(surface, shape, Tips[tip], Angles.Degrees[angle], side, longest));
            }

            return known.Ray;
        }

        /// <summary>How far off a leader may bend, as far as its ray has been asked for: most have ended by then, and need no closer look.</summary>
        internal double Reach(int tip, int angle, int side)
        {
            ref readonly var known = ref _rays[Index(tip, angle, side)];
            return known.IsKnown ? known.Ray?.Longest ?? -1 : double.MaxValue;
        }

        private static int Index(int tip, int angle, int side) => ((tip * Angles.Degrees.Length) + angle) * 2 + (side > 0 ? 1 : 0);
    }
}
