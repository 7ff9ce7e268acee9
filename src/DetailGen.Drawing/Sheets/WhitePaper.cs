using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where a finished sheet is white, in cells of 2 mm: what else stands there is known by its ink alone.</summary>
internal sealed class WhitePaper
{
    internal const double Cell = 2;
    private readonly PaperBox[] _zones;
    private readonly int _across, _up;

    // Cells upwards, column by column.
    private readonly bool[] _taken;

    /// <summary>Sums of the cells with ink to the left and below, as they were when white was last looked for.</summary>
    private readonly int[] _inked;

    private bool _isSummed;

    /// <param name="zones">Where on the paper it is looked for.</param>
    internal WhitePaper(PageInk ink, SheetFormat format, IReadOnlyList<PaperBox> zones)
    {
        _zones = [.. zones];
        (_across, _up) = ((int)Math.Ceiling(format.Width / Cell), (int)Math.Ceiling(format.Height / Cell));
        (_taken, _inked) = (new bool[_across * _up], new int[(_across + 1) * (_up + 1)]);
        Add(ink);
    }

    /// <summary>What came to the page.</summary>
    internal void Add(PageInk ink)
    {
        foreach (var text in ink.Texts)
        {
            Take(text.Box);
        }

        foreach (var line in ink.Lines)
        {
            var steps = 1 + (int)((line.To - line.From).Length / (Cell / 2));
            for (var i = 0; i <= steps; i++)
            {
                var at = line.From + (double)i / steps * (line.To - line.From);
                Take(new(at.X, at.Y, at.X, at.Y));
            }
        }

        foreach (var area in ink.Areas)
        {
            Fill(area);
        }
    }

    /// <summary>Takes the lowest white box of that size; false where there is none.</summary>
    internal bool Take((double Width, double Height) size, double clear)
    {
        if (Lowest(size, clear) is not { } corner)
        {
            return false;
        }

        Take(new PaperBox(corner.X, corner.Y, corner.X + size.Width, corner.Y + size.Height));
        return true;
    }

    private void Sum()
    {
        for (var i = 0; i < _across && !_isSummed; i++)
        {
            var (own, column) = ((i + 1) * (_up + 1), 0);
            for (var j = 0; j < _up; j++)
            {
                column += _taken[i * _up + j] ? 1 : 0;
                _inked[own + j + 1] = column + _inked[own - _up + j];
            }
        }

        _isSummed = true;
    }

    /// <summary>How many of some cells have ink; the last ones count.</summary>
    private int Inked(int left, int bottom, int right, int top)
    {
        var (before, last) = (left * (_up + 1), (right + 1) * (_up + 1));
        return _inked[last + top + 1] - _inked[before + top + 1] - _inked[last + bottom] + _inked[before + bottom];
    }

    /// <summary>Whether there is a white box of that size at all.</summary>
    internal bool Holds((double Width, double Height) size, double clear) => Boxes(size, clear).Any();

    /// <summary>Lower left corner of the white box of that size whose middle is nearest to a place; null where there is none.</summary>
    /// <param name="clear">White round it, mm.</param>
    /// <param name="off">What comes to the page with it, and it has to keep off; null for nothing.</param>
    internal PaperPoint? Nearest((double Width, double Height) size, PaperPoint to, double clear, PaperBox? off = null) =>
        First(size, clear, box => ((Plane.Middle(box) - to).Length, 0), off);

    /// <summary>The same of the lowest, of these the one farthest to the left.</summary>
    internal PaperPoint? Lowest((double Width, double Height) size, double clear) => First(size, clear, box => (box.Bottom, box.Left));

    /// <summary>The same of the highest.</summary>
    internal PaperPoint? Highest((double Width, double Height) size, double clear) => First(size, clear, box => (-box.Top, box.Left));

    /// <summary>The same of the one farthest to the left, of these the highest.</summary>
    internal PaperPoint? Leftmost((double Width, double Height) size, double clear) => First(size, clear, box => (box.Left, -box.Top));

    private PaperPoint? First((double Width, double Height) size, double clear, Func<PaperBox, (double, double)> order, PaperBox? off = null)
    {
        ((double, double) Order, PaperPoint Corner)? first = null;
        foreach (var box in Boxes(size, clear))
        {
            if (off is { } other && box.Grow(clear).Meets(other))
            {
                continue;
            }

            var own = order(box);
            first = first is null || own.CompareTo(first.Value.Order) < 0 ? (own, new(box.Left, box.Bottom)) : first;
        }

        return first?.Corner;
    }

    // Within a zone, on the grid of the cells.
    private IEnumerable<PaperBox> Boxes((double Width, double Height) size, double clear)
    {
        Sum();
        foreach (var zone in _zones)
        {
            var rows = Spans(zone.Bottom, zone.Top, size.Height, clear, _up);
            foreach (var (x, left, right) in Spans(zone.Left, zone.Right, size.Width, clear, _across))
            {
                foreach (var (y, bottom, top) in rows)
                {
                    if (Inked(left, bottom, right, top) == 0)
                    {
                        yield return new(x, y, x + size.Width, y + size.Height);
                    }
                }
            }
        }
    }

    /// <summary>Where something so long can begin along one side of a zone, and the first and the last cell that it takes with the white round it, which ends with the zone.</summary>
    private static List<(double At, int First, int Last)> Spans(double from, double to, double length, double clear, int cells)
    {
        var spans = new List<(double At, int First, int Last)>();
        var (first, last) = ((int)Math.Ceiling(from / Cell), Of(to, cells));
        for (var i = first; i * Cell + length <= to; i++)
        {
            spans.Add((i * Cell, Math.Max(first, Of(i * Cell - clear, cells)), Math.Min(last, Of(i * Cell + length + clear, cells))));
        }

        return spans;
    }

    private void Take(PaperBox box)
    {
        var (left, bottom, right, top) = Cells(box);
        for (var i = left; i <= right; i++)
        {
            _taken.AsSpan(i * _up + bottom, top + 1 - bottom).Fill(true);
        }

        _isSummed = false;
    }

    private void Fill(InkArea area)
    {
        var (left, bottom, right, top) = Cells(area.Around);
        for (var i = left; i <= right; i++)
        {
            for (var j = bottom; j <= top; j++)
            {
                ref var taken = ref _taken[i * _up + j];
                taken = taken || Plane.Meets(new(i * Cell, j * Cell, (i + 1) * Cell, (j + 1) * Cell), area.Outline, area.Holes);
            }
        }

        _isSummed = false;
    }

    private (int Left, int Bottom, int Right, int Top) Cells(PaperBox box) => (Of(box.Left, _across), Of(box.Bottom, _up), Of(box.Right, _across), Of(box.Top, _up));

    private static int Of(double place, int cells) => Math.Clamp((int)Math.Floor(place / Cell), 0, cells - 1);
}
