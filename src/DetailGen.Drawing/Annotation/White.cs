using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>
/// Where text has room on paper that no longer changes, asked a hundred thousand times: cells of a millimetre, counted in running sums. Most answers fall at once,
/// those near an edge are left to <see cref="Surface.Free"/>, so that every answer is that one's.
/// </summary>
internal sealed class White
{
    private const double Gap = 1.5, TextGap = 2, SoftGap = 1;
    private const double Sample = 0.5;

    private readonly Surface _surface;
    private readonly PaperBox _zone;
    private readonly int _across, _up;

    /// <summary>Cells near anything at all, and cells that something stands in; sums of all cells to the left and below.</summary>
    private readonly int[] _near, _taken;

    internal White(Surface surface)
    {
        (_surface, _zone) = (surface, surface.Zone);
        (_across, _up) = ((int)Math.Ceiling(_zone.Width) + 1, (int)Math.Ceiling(_zone.Height) + 1);
        (_near, _taken) = (new int[(_across + 1) * (_up + 1)], new int[(_across + 1) * (_up + 1)]);
        foreach (var text in surface.Texts)
        {
            Mark(_near, text.Grow(TextGap));
            Mark(_taken, text);
        }

        foreach (var (from, to) in surface.Hard)
        {
            Mark(from, to, Gap);
        }

        foreach (var (from, to) in surface.Soft)
        {
            Mark(from, to, SoftGap);
        }

        foreach (var (from, to) in surface.Strokes)
        {
            Mark(from, to, Surface.StrokeGap);
        }

        foreach (var shape in surface.Shapes)
        {
            if (shape.Look != Look.Open)
            {
                Mark(shape);
                continue;
            }

            foreach (var (from, to) in shape.Edges())
            {
                Mark(from, to, SoftGap);
            }
        }

        AddUp(_near);
        AddUp(_taken);
    }

    /// <summary>The answer of <see cref="Surface.Free"/> with its usual gaps.</summary>
    internal bool Free(PaperBox box)
    {
        if (!_zone.Holds(box))
        {
            return false;
        }

        return IsClear(box) || (!IsTaken(box.Grow(SoftGap)) && _surface.Free(box, Gap, TextGap, SoftGap));
    }

    /// <summary>Whether the box is within the zone and nothing at all near it; where something is, it may still be free.</summary>
    internal bool IsClear(PaperBox box) => _zone.Holds(box) && Count(
        _near, (int)Math.Floor(box.Left - _zone.Left), (int)Math.Floor(box.Bottom - _zone.Bottom), (int)Math.Floor(box.Right - _zone.Left), (int)Math.Floor(box.Top - _zone.Bottom)) == 0;

    /// <summary>Whether a box leaves the zone or has something in it for certain: then nothing is free that holds it.</summary>
    internal bool Bars(PaperBox box) => !_zone.Holds(box) || IsTaken(box);

    /// <summary>Whether something stands in a cell that is wholly in the box.</summary>
    private bool IsTaken(PaperBox box) => Count(
        _taken, (int)Math.Ceiling(box.Left - _zone.Left), (int)Math.Ceiling(box.Bottom - _zone.Bottom), (int)Math.Floor(box.Right - _zone.Left) - 1, (int)Math.Floor(box.Top - _zone.Bottom) - 1) > 0;

    private int Count(int[] sums, int left, int bottom, int right, int top)
    {
        (left, bottom, right, top) = (Math.Max(left, 0), Math.Max(bottom, 0), Math.Min(right, _across - 1), Math.Min(top, _up - 1));
        if (left > right || bottom > top)
        {
            return 0;
        }

        var (low, high) = (bottom * (_across + 1), (top + 1) * (_across + 1));
        return sums[high + right + 1] - sums[high + left] - sums[low + right + 1] + sums[low + left];
    }

    private void Mark(Shape shape)
    {
        foreach (var (from, to) in shape.Edges())
        {
            Mark(from, to, Gap);
        }

        // A cell that no edge comes near is wholly inside where its middle is.
        var (first, last) = (Math.Max(0, (int)(shape.Box.Bottom - _zone.Bottom)), Math.Min(_up - 1, (int)(shape.Box.Top - _zone.Bottom)));
        for (var y = first; y <= last; y++)
        {
            foreach (var (from, to) in shape.Spans(_zone.Bottom + y + 0.5, level: true))
            {
                var (left, right) = (Math.Max(0, (int)Math.Ceiling(from - _zone.Left - 0.5)), Math.Min(_across - 1, (int)Math.Floor(to - _zone.Left - 0.5)));
                Mark(_near, left, right, y);
                Mark(_taken, left, right, y);
            }
        }
    }

    private void Mark(PaperPoint from, PaperPoint to, double gap)
    {
        var way = to - from;
        var count = Math.Max(1, (int)Math.Ceiling(way.Length / Sample));
        for (var i = 0; i < count; i++)
        {
            var (a, b) = (from + (double)i / count * way, from + (double)(i + 1) / count * way);
            Mark(_near, Surface.Around(a, b).Grow(gap));
            Mark(_taken, Surface.Around(a, a));
        }
    }

    private void Mark(int[] cells, PaperBox box)
    {
        var (left, right) = (Math.Max(0, (int)Math.Floor(box.Left - _zone.Left)), Math.Min(_across - 1, (int)Math.Floor(box.Right - _zone.Left)));
        var (bottom, top) = (Math.Max(0, (int)Math.Floor(box.Bottom - _zone.Bottom)), Math.Min(_up - 1, (int)Math.Floor(box.Top - _zone.Bottom)));
        for (var y = bottom; y <= top; y++)
        {
            Mark(cells, left, right, y);
        }
    }

    private void Mark(int[] cells, int left, int right, int y)
    {
        if (left <= right)
        {
            cells.AsSpan((y + 1) * (_across + 1) + left + 1, right + 1 - left).Fill(1);
        }
    }

    private void AddUp(int[] cells)
    {
        var row = _across + 1;
        for (var y = 1; y <= _up; y++)
        {
            var sum = 0;
            for (var x = 1; x <= _across; x++)
            {
                sum += cells[y * row + x];
                cells[y * row + x] = sum + cells[(y - 1) * row + x];
            }
        }
    }
}
