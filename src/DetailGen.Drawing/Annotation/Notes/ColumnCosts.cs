using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>What the notes of one column cost each other: too little white, leaders that touch, an order against the work, uneven gaps.</summary>
internal sealed class ColumnCosts
{
    private readonly double[] _above;
    private readonly double[] _below;
    private readonly string[] _groups;
    private readonly int[] _ranks;
    private readonly int[] _earlierOrder;
    private readonly int _side;

    internal ColumnCosts(Block[] blocks, int side, int[] earlierOrder)
    {
        _above = [.. blocks.Select(_ => Block.Above)];
        _below = [.. blocks.Select(block => block.Below)];
        _groups = [.. blocks.Select(block => block.Note.Group)];
        _ranks = [.. blocks.Select(block => block.Note.Rank)];
        (_side, _earlierOrder) = (side, earlierOrder);
    }

    internal double Between(int upper, in Option a, int lower, in Option b, double meanGap)
    {
        var gap = Gap(upper, a, lower, b) - meanGap;
        return Faults(upper, a, lower, b) + Math.Min(Weights.UnevenMost, Weights.Uneven * gap * gap) + Order(upper, lower);
    }

    private double Gap(int upper, in Option a, int lower, in Option b) => a.Level - _below[upper] - (b.Level + _above[lower]);

    internal double Faults(int upper, in Option a, int lower, in Option b)
    {
        var lack = Column.Gap - Gap(upper, a, lower, b);
        return (lack > 1e-9 ? Weights.Fault + 20 * lack : 0) + (Apart(a, b) ? 0 : Weights.Fault);
    }

    internal double Order(int upper, int lower) =>
        (_groups[upper] == _groups[lower] && _ranks[upper] < _ranks[lower] && _groups[upper] != "coping" ? Weights.RankInversion : 0)
        + (_earlierOrder[upper] >= 0 && _earlierOrder[lower] >= 0 && _earlierOrder[upper] > _earlierOrder[lower] ? Weights.Swapped : 0);

    internal double Mean(int[] order, Option[] taken)
    {
        var sum = 0.0;
        for (var i = 0; i + 1 < order.Length; i++)
        {
            sum += Gap(order[i], taken[i], order[i + 1], taken[i + 1]);
        }

        return order.Length < 2 ? 0 : sum / (order.Length - 1);
    }

    internal double Uneven(int[] order, Option[] taken, double mean)
    {
        var sum = 0.0;
        for (var i = 0; i + 1 < order.Length; i++)
        {
            var gap = Gap(order[i], taken[i], order[i + 1], taken[i + 1]) - mean;
            sum += Math.Min(Weights.UnevenMost, Weights.Uneven * gap * gap);
        }

        return sum;
    }

    /// <summary>Whether two leaders from one bend line, the first leaving above the second, keep off each other.</summary>
    internal bool Apart(in Option upper, in Option lower)
    {
        if (upper.Level <= lower.Level)
        {
            return false;
        }

        var (first, second) = (upper.Tip - lower.Tip, (upper.Tip.X - lower.Tip.X) * _side);
        if (first.Length < Options.TipsApart)
        {
            return false;
        }

        if (upper.Setback > 0 || lower.Setback > 0)
        {
            return KeepOff(upper, lower);
        }

        // Both start on one upright line, so they cross exactly where the shorter one ends on the wrong side of the longer.
        return second > 0
            ? Over(upper.Tip, lower, 1)
            : Over(lower.Tip, upper, -1);
    }

    /// <summary>The same for leaders that bend anywhere: shoulder and run of the one against those of the other.</summary>
    private bool KeepOff(in Option a, in Option b)
    {
        var (first, second) = (a.BendAt(_side), b.BendAt(_side));
        var (p, q) = (new PaperPoint(first.X + _side * a.Setback, first.Y), new PaperPoint(second.X + _side * b.Setback, second.Y));
        return Lines.Distance(first, a.Tip, second, b.Tip) >= Options.TipGap && Lines.Distance(p, first, second, b.Tip) >= Options.TipGap
            && Lines.Distance(first, a.Tip, q, second) >= Options.TipGap && Lines.Distance(p, first, q, second) >= Options.TipGap;
    }

    private static bool Over(PaperPoint tip, in Option other, int sign)
    {
        var onOther = other.Tip.Y + (other.Slope * Math.Abs(tip.X - other.Tip.X));
        return sign * (tip.Y - onOther) * Angles.Cosines[other.Angle] >= Options.TipGap;
    }
}
