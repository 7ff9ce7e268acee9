using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation.Dimensions;

/// <summary>The chains of one side of the drawing: lines in rows outside the outline, figures that touch nothing.</summary>
internal sealed class SideDimensions(Surface surface, Side side)
{
    internal const double First = 10;
    private const double Next = 7;
    private const double Raise = 4;
    private const double Over = 1.5;
    private const double FigureGap = 1;
    private const double Dotted = 2.5;

    /// <summary>A tick keeps so far off other figures.</summary>
    private const double TickGap = 0.4;

    /// <summary>How much farther out a chain may stand than usual rather than with a figure on something that is there already, mm.</summary>
    private static readonly double[] Steps = [.. Enumerable.Range(0, 41).Select(i => i * 0.5)];

    private const double SheetLine = 1;

    /// <summary>Outermost drawn edge of the side, a coordinate across the lines.</summary>
    private double _edge;

    private double Height => surface.Sizes.Notes;

    private bool IsLevel => side is Side.Below or Side.Above;

    private int Outwards => side is Side.Below or Side.Weather ? -1 : 1;

    /// <summary>How far the side's annotation reaches: the outermost line with its figures and witness ends.</summary>
    internal double Reach { get; private set; }

    /// <summary>Outermost witness end at a level, by level in paper mm.</summary>
    internal List<(double At, double End)> Witnessed { get; } = [];

    /// <param name="least">The first line stands at least here (outwards); a coordinate across the lines.</param>
    internal void Place(IReadOnlyList<(string Chain, Figure Figure)> figures, double edge, double? least = null)
    {
        (Reach, _edge) = (edge, edge);
        var rows = DimensionRows.Assign(figures.Where(one => DimensionRows.Fits(one.Figure.Measure, side)), surface.Scale);
        if (rows.Count == 0)
        {
            return;
        }

        var line = edge + Outwards * First;
        line = least is { } asked && Outwards * (asked - line) > 0 ? asked : line;
        var laid = Laid(rows, []).ToArray();
        var step = Array.FindIndex(Steps, step => Clear(laid, step));

        // Out to a line of the sheet there is no way past: then figures move aside before it.
        if (step < 0 && Laid(rows, [.. surface.SheetLines.SelectMany(Along)]).ToArray() is var aside && Clear(aside, 0))
        {
            laid = aside;
        }

        line += Outwards * Steps[Math.Max(0, step)];
        foreach (var (here, places, off, reach) in laid)
        {
            foreach (var (one, place) in here.Zip(places))
            {
                Draw(one, here, line + Outwards * off, place.Along, place.Out);
            }

            Reach = line + Outwards * reach;
        }

        bool Clear((Rowed[] Row, (double Along, int Out)[] Places, double Off, double Reach)[] all, double step) =>
            Array.TrueForAll(all, row => StandsClear(row.Row, row.Places, line + Outwards * (step + row.Off)));

        // Both sides of a line of the sheet, which is 0.7 wide, with what figures keep off more than off a witness line.
        double[] Along((PaperPoint From, PaperPoint To) mark) => IsLevel ? [mark.From.X - SheetLine, mark.From.X + SheetLine] : [mark.From.Y - SheetLine, mark.From.Y + SheetLine];
    }

    /// <summary>How far the side's annotation will reach beyond its first line, 0 where there is none; mm.</summary>
    internal double Depth(IReadOnlyList<(string Chain, Figure Figure)> figures) =>
        Laid(DimensionRows.Assign(figures.Where(one => DimensionRows.Fits(one.Figure.Measure, side)), surface.Scale), []).Select(row => row.Reach).DefaultIfEmpty(0).Last();

    /// <summary>The rows from the drawing outwards: each with the places of its figures, and how far its line and all of it stand off the first line.</summary>
    /// <param name="barred">Places along the lines that no figure may touch.</param>
    private IEnumerable<(Rowed[] Row, (double Along, int Out)[] Places, double Off, double Reach)> Laid(IReadOnlyList<Rowed> rows, IReadOnlyList<double> barred)
    {
        var off = 0.0;
        for (var row = 0; row <= rows.Select(one => one.Row).DefaultIfEmpty(-1).Max(); row++)
        {
            var here = rows.Where(one => one.Row == row).OrderBy(one => one.Low).ThenBy(one => one.Figure.Measure.Id, StringComparer.Ordinal).ToArray();
            double[] beyond = [.. rows.Where(one => one.Row > row).SelectMany(one => (double[])[one.Low, one.High]), .. barred];
            var places = FigurePlaces(here, beyond);

            // A figure moved out stands beyond the witness ends, and the next row off it.
            var most = places.Max(place => place.Out);
            yield return (here, places, off, off + (most > 0 ? Moved(most) + Height : FacesDrawing ? Over : surface.Sizes.ByNotes(3.1)));
            off += surface.Sizes.ByNotes(Next + Raise * most);
        }
    }

    // Off the witness ends, and off the figures of the row where those stand outwards too.
    private double Moved(int steps) => surface.Sizes.ByNotes((FacesDrawing ? 2.2 : 4.2) + (steps - 1) * Raise);

    // Figures stand over a level line and left of an upright one, as seen on paper.
    private bool FacesDrawing => side switch { Side.Below => true, Side.Above => false, Side.Roof => !surface.Mirrored, _ => surface.Mirrored };

    /// <param name="beyond">Where witness lines of rows farther out pass.</param>
    private (double Along, int Out)[] FigurePlaces(Rowed[] row, double[] beyond)
    {
        var places = new (double Along, int Out)[row.Length];
        var taken = new List<(PaperBox Figure, (PaperPoint From, PaperPoint To)? Tick)>();
        var widths = row.Select(one => surface.Sizes.Typeface.Width(one.Figure.Text, Height) * 1.02).ToArray();
        foreach (var i in Enumerable.Range(0, row.Length).OrderBy(i => Fits(i) ? 0 : 1).ThenBy(i => i))
        {
            var free = (Fits(i) ? Within(i) : []).Concat(Candidates(i).Where(place => IsFree(place, i))).Take(1).ToArray();
            if (free.Length == 0)
            {
                return Spread();
            }

            places[i] = free[0];
            taken.Add((FigureBox(places[i], widths[i]), Tick(places[i], i)));
        }

        return places;

        // Where one by one they find no place: all that do not fit in one row, in their order, and with them whatever a tick of theirs would run through.
        (double Along, int Out)[] Spread()
        {
            var raised = Enumerable.Range(0, row.Length).Where(i => !Fits(i) || !Within(i).Any()).ToHashSet();
            while (true)
            {
                int[] up = [.. raised.Order()];
                var along = FigureSpread.Along([.. up.Select(Middle)], [.. up.Select(i => widths[i])], FigureGap, (beyond, 0.5));
                for (var k = 0; k < up.Length; k++)
                {
                    places[up[k]] = (along[k], 1);
                }

                int[] low = [.. Enumerable.Range(0, row.Length).Where(i => !raised.Contains(i))];
                foreach (var i in low)
                {
                    places[i] = Within(i).First();
                }

                if (low.Where(i => Array.Exists(up, k => Crosses(Tick(places[k], k), FigureBox(places[i], widths[i])))).ToArray() is not { Length: > 0 } struck)
                {
                    return places;
                }

                raised.UnionWith(struck);
            }
        }

        double Middle(int i) => (row[i].Low + row[i].High) / 2;

        bool Fits(int i) => FigureInSpan.Fits(widths[i], row[i].Span);

        // In its span, nearest to the middle, where no witness line of another row passes through it.
        IEnumerable<(double Along, int Out)> Within(int i) =>
            from along in FigureInSpan.Middles(row[i].Low, row[i].High, widths[i], IsLevel && surface.Mirrored) where IsClear(along, i, FigureInSpan.After) select (along, 0);

        bool IsClear(double along, int i, double off) => !Array.Exists(beyond, at => Math.Abs(at - along) < widths[i] / 2 + off - 1e-9);

        // Neither figure lies on the other, nor on the tick that leads to it.
        bool IsFree((double Along, int Out) place, int i)
        {
            var (box, tick) = (FigureBox(place, widths[i]), Tick(place, i));
            return taken.TrueForAll(other => (box.Top <= other.Figure.Bottom + 0.01 || box.Bottom >= other.Figure.Top - 0.01 || box.Left >= other.Figure.Right + FigureGap || box.Right <= other.Figure.Left - FigureGap)
                    && !Crosses(tick, other.Figure) && !Crosses(other.Tick, box))
                && IsClear(place.Along, i, 0.5);
        }

        bool Crosses((PaperPoint From, PaperPoint To)? tick, PaperBox figure) => tick is { } line && Lines.Meets(figure.Grow(TickGap), line.From, line.To);

        (PaperPoint From, PaperPoint To)? Tick((double Along, int Out) place, int i) => place.Out == 0 ? null : (new(Middle(i), 0), new(place.Along, Moved(place.Out) - Scenes.Dimensions.TickEnd));

        IEnumerable<(double Along, int Out)> Candidates(int i)
        {
            var before = i == 0 ? double.MaxValue : row[i].Low - row[i - 1].High;
            var after = i == row.Length - 1 ? double.MaxValue : row[i + 1].Low - row[i].High;
            // Below it a figure is out of the way of what is built out over the wall, and of its sizes.
            (bool Is, (double, int) Place)[] outside = [(after >= widths[i] + 3, (row[i].High + 1.5 + widths[i] / 2, 0)), (before >= widths[i] + 3, (row[i].Low - 1.5 - widths[i] / 2, 0))];
            foreach (var (_, place) in (side == Side.Weather ? outside.Reverse() : outside).Where(one => one.Is))
            {
                yield return place;
            }

            for (var step = 1; step <= 4; step++)
            {
                for (var shift = 0.0; shift <= 2.5; shift += 0.25)
                {
                    yield return (Middle(i) + shift * widths[i], step);
                    yield return (Middle(i) - shift * widths[i], step);
                }
            }
        }
    }

    /// <summary>Box of a figure, along its line and outwards from it.</summary>
    private PaperBox FigureBox((double Along, int Out) place, double width)
    {
        var foot = place.Out > 0 ? Moved(place.Out) : FacesDrawing ? -surface.Sizes.ByNotes(3.1) : 0.6;
        return new(place.Along - width / 2, foot, place.Along + width / 2, foot + Height);
    }

    /// <summary>Whether the figures of a row, with their line at a place, stand clear of what other sides and the drawing have there, and the line of their figures.</summary>
    private bool StandsClear(Rowed[] row, (double Along, int Out)[] places, double line)
    {
        foreach (var (one, place) in row.Zip(places))
        {
            var box = FigureBox(place, surface.Sizes.Typeface.Width(one.Figure.Text, Height));
            var (a, b) = (line + Outwards * box.Bottom, line + Outwards * box.Top);
            var (near, far) = (Math.Min(a, b), Math.Max(a, b));
            PaperBox figure = IsLevel ? new(box.Left, near, box.Right, far) : new(near, box.Left, far, box.Right);
            var (low, high) = IsLevel ? (new PaperPoint(one.Low, line), new PaperPoint(one.High, line)) : (new(line, one.Low), new(line, one.High));
            if (!surface.Free(figure, 1, 1, 0.5) || surface.Texts.Exists(text => Lines.Meets(text.Grow(FigureGap), low, high)))
            {
                return false;
            }
        }

        return true;
    }

    private void Draw(Rowed one, Rowed[] row, double line, double along, int moved)
    {
        var measure = one.Figure.Measure;
        var (from, to) = (Start(measure.From, line, measure.Chain), Start(measure.To, line, measure.Chain));
        var tierRow = one.Row == 0 ? "dim.chain" : "dim.overall";
        var paperLine = IsLevel || !surface.Mirrored ? line : -line;

        // Over the line, on paper left of an upright one; a figure moved out stands off the line on its far side.
        var paperOut = surface.Mirrored && !IsLevel ? -Outwards : Outwards;
        var off = moved == 0 ? (IsLevel ? 0.6 : -0.6) : paperOut * Moved(moved) + (IsLevel ? (paperOut < 0 ? -Height : 0) : paperOut > 0 ? Height : 0);
        var figureAt = IsLevel ? surface.Turn(new PaperPoint(along, line)) + new PaperPoint(0, off) : new PaperPoint(paperLine + off, along);
        surface.Size(new Dimension(
            tierRow, "dim.stroke", surface.Turn(from), surface.Turn(to), !IsLevel, paperLine, one.Figure.Text, figureAt, one.Figure.Model, Height,
            End(row, IsLevel ? from.X : from.Y), End(row, IsLevel ? to.X : to.Y))
        {
            MeasureId = measure.Id,
        });
        surface.Texts.Add(surface.Turn(surface.Sizes.Typeface.Box(new Text(tierRow, one.Figure.Text, figureAt, Height, Align.Centre, IsLevel ? 0 : 90))));
        Witness(from, line);
        Witness(to, line);
    }

    private void Witness(PaperPoint from, double line)
    {
        var (start, end) = IsLevel ? (from.Y, line) : (from.X, line);
        var way = Math.Sign(end - start);
        var (a, b) = (start + way, end + way * Over);
        surface.Soft.Add(IsLevel ? (new(from.X, a), new(from.X, b)) : (new(a, from.Y), new(b, from.Y)));
        Witnessed.Add((IsLevel ? from.X : from.Y, b));
    }

    private static Terminator End(Rowed[] row, double at) =>
        row.Any(one => one.Span < Dotted && (Math.Abs(one.Low - at) < 0.01 || Math.Abs(one.High - at) < 0.01)) ? Terminator.Dot : Terminator.Stroke;

    /// <summary>Where the witness line starts: the place itself, where it is drawn, or the outermost edge on the line's way out, so that it never runs through the drawing.</summary>
    private PaperPoint Start(Point model, double line, string chain)
    {
        var at = surface.At(model);
        if (chain == Chains.RoofEnd && !IsLevel)
        {
            // Where the roof is broken off: from a place further in the line would run along a surface that falls away under it.
            return at with { X = _edge };
        }

        var best = IsLevel ? at.Y : at.X;
        best = Outwards * (best - _edge) > 0 ? _edge : best; // a place on a run that is broken off before it
        foreach (var shape in surface.Shapes)
        {
            if (shape.Look == Look.Open)
            {
                continue;
            }

            foreach (var nudge in (ReadOnlySpan<double>)[-0.02, 0.02])
            {
                foreach (var (low, high) in shape.Spans((IsLevel ? at.X : at.Y) + nudge, !IsLevel))
                {
                    var edge = Outwards > 0 ? high : low;
                    best = Outwards * (edge - best) > 0 && Outwards * (line - edge) > 0 ? edge : best;
                }
            }
        }

        return IsLevel ? at with { Y = best } : at with { X = best };
    }
}
