using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Sheets;

/// <summary>Where a finished sheet is white, in cells of 2 mm: what else stands there is known by its ink alone.</summary>
internal sealed class WhitePaper
{
    private const double Cell = 2;
    private readonly PaperBox[] _zones;
    private readonly int _across, _up;

    /// <summary>Sums of the cells with ink to the left and below.</summary>
    private readonly int[,] _inked;

    /// <param name="zones">Where on the paper it is looked for.</param>
    internal WhitePaper(PageInk ink, SheetFormat format, IReadOnlyList<PaperBox> zones)
    {
        _zones = [.. zones];
        (_across, _up) = ((int)Math.Ceiling(format.Width / Cell), (int)Math.Ceiling(format.Height / Cell));
        var taken = new bool[_across, _up];
        foreach (var text in ink.Texts)
        {
            Take(taken, text.Box);
        }

        foreach (var line in ink.Lines)
        {
            var steps = 1 + (int)((line.To - line.From).Length / (Cell / 2));
            for (var i = 0; i <= steps; i++)
            {
                var at = line.From + (double)i / steps * (line.To - line.From);
                Take(taken, new(at.X, at.Y, at.X, at.Y));
            }
        }

        foreach (var area in ink.Areas)
        {
            Fill(taken, area);
        }

        _inked = new int[_across + 1, _up + 1];
        for (var i = 0; i < _across; i++)
        {
            for (var j = 0; j < _up; j++)
            {
                _inked[i + 1, j + 1] = (taken[i, j] ? 1 : 0) + _inked[i, j + 1] + _inked[i + 1, j] - _inked[i, j];
            }
        }
    }

    /// <summary>Whether there is a white box of that size at all.</summary>
    internal bool Holds((double Width, double Height) size, double clear) => Boxes(size, clear).Any();

    /// <summary>Lower left corner of the white box of that size whose middle is nearest to a place; null where there is none.</summary>
    /// <param name="clear">White round it, mm.</param>
    internal PaperPoint? Nearest((double Width, double Height) size, PaperPoint to, double clear)
    {
        (double Away, PaperPoint Corner)? best = null;
        foreach (var box in Boxes(size, clear))
        {
            var away = (Plane.Middle(box) - to).Length;
            best = best is null || away < best.Value.Away ? (away, new(box.Left, box.Bottom)) : best;
        }

        return best?.Corner;
    }

    // Within a zone, on the grid of the cells.
    private IEnumerable<PaperBox> Boxes((double Width, double Height) size, double clear)
    {
        foreach (var zone in _zones)
        {
            var bottom = (int)Math.Ceiling(zone.Bottom / Cell);
            for (var i = (int)Math.Ceiling(zone.Left / Cell); i * Cell + size.Width <= zone.Right; i++)
            {
                for (var j = bottom; j * Cell + size.Height <= zone.Top; j++)
                {
                    PaperBox box = new(i * Cell, j * Cell, i * Cell + size.Width, j * Cell + size.Height);
                    if (IsWhite(box.Grow(clear)))
                    {
                        yield return box;
                    }
                }
            }
        }
    }

    private bool IsWhite(PaperBox box)
    {
        var (left, bottom, right, top) = Cells(box);
        return _inked[right + 1, top + 1] - _inked[left, top + 1] - _inked[right + 1, bottom] + _inked[left, bottom] == 0;
    }

    private void Take(bool[,] taken, PaperBox box)
    {
        var (left, bottom, right, top) = Cells(box);
        for (var i = left; i <= right; i++)
        {
            for (var j = bottom; j <= top; j++)
            {
                taken[i, j] = true;
            }
        }
    }

    private void Fill(bool[,] taken, InkArea area)
    {
        var (left, bottom, right, top) = Cells(area.Around);
        for (var i = left; i <= right; i++)
        {
            for (var j = bottom; j <= top; j++)
            {
                taken[i, j] = taken[i, j] || Plane.Meets(new(i * Cell, j * Cell, (i + 1) * Cell, (j + 1) * Cell), area.Outline, area.Holes);
            }
        }
    }

    private (int Left, int Bottom, int Right, int Top) Cells(PaperBox box) => (
        Math.Clamp((int)Math.Floor(box.Left / Cell), 0, _across - 1), Math.Clamp((int)Math.Floor(box.Bottom / Cell), 0, _up - 1),
        Math.Clamp((int)Math.Floor(box.Right / Cell), 0, _across - 1), Math.Clamp((int)Math.Floor(box.Top / Cell), 0, _up - 1));
}
