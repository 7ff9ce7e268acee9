using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>What the notes of one column cost each other: too little white, leaders that touch, an order against the work, uneven gaps.</summary>
internal sealed class ColumnCosts
{
    private readonly double _above;
    private readonly double[] _below;
    private readonly double[][] _order;
    private readonly int _side;

    internal ColumnCosts(Block[] blocks, int side, int[] earlierOrder)
    {
        _side = side;
        _above = blocks.Select(block => block.Above).FirstOrDefault();
        _below = [.. blocks.Select(block => block.Below)];
        _order = [.. blocks.Select((upper, i) => blocks.Select((lower, j) => OrderOf(upper.Note, lower.Note, earlierOrder[i], earlierOrder[j])).ToArray())];
    }

    /// <summary>What two neighbours that leave at these levels cost each other.</summary>
    /// <param name="apart">Whether their leaders keep off each other; the cost is never less where they do not.</param>
    internal double Between(int upper, double a, int lower, double b, double meanGap, bool apart)
    {
        var gap = Gap(upper, a, b) - meanGap;
        return Faults(upper, a, b, apart) + Math.Min(Weights.UnevenMost, Weights.Uneven * gap * gap) + _order[upper][lower];
    }

    private double Gap(int upper, double a, double b) => a - _below[upper] - (b + _above);

    internal double Faults(int upper, in Option a, in Option b) => Faults(upper, a.Level, b.Level, Apart(a, b));

    private double Faults(int upper, double a, double b, bool apart)
    {
        var lack = Column.Gap - Gap(upper, a, b);
        return (lack > 1e-9 ? Weights.Fault + 20 * lack : 0) + (apart ? 0 : Weights.Fault);
    }

    internal double Order(int upper, int lower) => _order[upper][lower];

    private static double OrderOf(Note upper, Note lower, int earlierUpper, int earlierLower) =>
        (upper.Group == lower.Group && upper.Rank < lower.Rank && upper.Group != "coping" ? Weights.RankInversion : 0)
        + (earlierUpper >= 0 && earlierLower >= 0 && earlierUpper > earlierLower ? Weights.Swapped : 0);

    internal double Mean(int[] order, Option[] taken)
    {
        var sum = 0.0;
        for (var i = 0; i + 1 < order.Length; i++)
        {
            sum += Gap(order[i], taken[i].Level, taken[i + 1].Level);
        }

        return order.Length < 2 ? 0 : sum / (order.Length - 1);
    }

    internal double Uneven(int[] order, Option[] taken, double mean)
    {
        var sum = 0.0;
        for (var i = 0; i + 1 < order.Length; i++)
        {
            var gap = Gap(order[i], taken[i].Level, taken[i + 1].Level) - mean;
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
