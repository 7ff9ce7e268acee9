using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A leader that ends in a part: from its bend to its tip.</summary>
/// <param name="Strict">All angles to fills and edges are kept; the others are there for need.</param>
internal readonly record struct Way(PaperPoint Tip, Ending Ending, double Run, double Cost, bool Strict);

/// <summary>
/// The straight line from a tip outwards at one angle, with all that stands on it by its distance from the tip: every leader that ends there at that angle lies on it,
/// wherever it bends, so that the drawing is looked through once for all of them.
/// </summary>
internal sealed class Ray
{
    private const double Parallel = 10;

    /// <summary>So many foreign parts a leader may cross where it must.</summary>
    private const int MostParts = 2;

    /// <summary>So far a leader may run in the fill of a foreign part at the fill's own angle, and lengthwise in a sheet, mm.</summary>
    private const double MostInFill = 5, MostInSheet = 3;

    /// <summary>So much farther off than its clearance the face of a band may be met, mm.</summary>
    internal const double Face = 2;

    private readonly Surface _surface;
    private readonly Shape _shape;
    private readonly TipPlace _place;
    private readonly PaperPoint _way;
    private readonly bool _isSuited;
    private readonly bool _isLevel;
    private readonly List<(double Near, double Cross)> _witnesses = [];

    // Looked for when the first leader reaches out so: most rays never see one.
    private Foreign[]? _foreign;

    // Where the leader ends, which for a band is its face; where its own edge is met too flatly.
    private double _start;
    private double _flat = double.MaxValue;

    /// <summary>Beyond that distance a leader has run along a line of the drawing for too long.</summary>
    private double _along;

    private Ray(Surface surface, Shape shape, TipPlace place, PaperPoint way, bool isLevel, bool isSuited) =>
        (_surface, _shape, _place, _way, _isLevel, _isSuited) = (surface, shape, place, way, isLevel, isSuited);

    /// <summary>Beyond that distance from the tip a bend would lead through something.</summary>
    internal double Longest { get; private set; }

    /// <summary>Null where no leader may end so.</summary>
    internal static Ray? Of(Surface surface, Shape shape, TipPlace place, double degrees, int side, double longest)
    {
        if (!AngleSuits(shape, degrees, out var isSuited))
        {
            return null;
        }

        var angle = degrees * Math.PI / 180;
        var ray = new Ray(surface, shape, place, new(side * Math.Cos(angle), Math.Sin(angle)), degrees == 0, isSuited) { Longest = longest };
        return ray.Starts() && ray.IsClear() ? ray : null;
    }

    /// <summary>The leader that bends at a distance from the tip's place; null where something is in its way.</summary>
    /// <param name="alongToo">Whether it may run along a line of the drawing: rather that than a note without any mark.</param>
    internal Way? To(double distance, bool alongToo = false)
    {
        if (distance > Longest || (distance > _along && !alongToo))
        {
            return null;
        }

        var strict = _isSuited && distance < _flat;
        var (parts, witnesses) = (0, 0);
        var cost = distance > _along ? Weights.Along : 0;
        foreach (var (near, cross) in _witnesses)
        {
            if (near < distance && cross > distance)
            {
                return null;
            }

            witnesses += cross <= distance ? 1 : 0;
        }

        foreach (var foreign in _foreign ??= Crossed())
        {
            var inside = foreign.Inside(distance);
            if (inside < 0.05)
            {
                continue;
            }

            var parallel = foreign.Flat < distance;
            if (foreign.Shape.Look == Look.Band)
            {
                cost += Weights.ForeignSheet;
                parallel |= inside > MostInSheet;
            }
            else
            {
                parts++;
                cost += Weights.ForeignPart + Weights.Through * inside + (parts > MostParts ? Weights.ManyParts : 0);
                parallel |= inside > MostInFill && foreign.IsAlongFill;
            }

            strict &= !parallel && parts <= MostParts;
        }

        var run = distance - _start;
        cost += run + Column.Shoulder + (_isLevel ? 0 : Weights.Bend) + Weights.Witness * witnesses + (strict ? 0 : Weights.Lax)
            + Weights.Clearance * (1 - Math.Min(1, _place.Clearance / Math.Min(_place.Best, 3)));
        return new(At(_start), _shape.Look == Look.Band ? Ending.Arrow : Ending.Dot, run, cost, strict);
    }

    private PaperPoint At(double distance) => _place.At + distance * _way;

    /// <summary>Finds the end: from the column the head of an arrow touches the first face of the band that the leader meets.</summary>
    private bool Starts()
    {
        Span<Cut> cuts = stackalloc Cut[Shape.MostCuts];
        cuts = cuts[.._shape.Cuts(_place.At, _way, Longest, cuts)];
        if (_shape.Look != Look.Band)
        {
            foreach (var cut in cuts)
            {
                _flat = _shape.Look != Look.Open && cut.Degrees < Parallel ? Math.Min(_flat, cut.At) : _flat;
            }

            return true;
        }

        _start = -1;
        foreach (var cut in cuts)
        {
            if (cut.At > _place.Clearance + Face)
            {
                Longest = Math.Min(Longest, cut.At);
                break;
            }

            if (cut.Degrees < Parallel)
            {
                return false;
            }

            _start = cut.At;
        }

        return _start >= 0;
    }

    /// <summary>Looks through what is on the paper; false where the end itself is in the way of something.</summary>
    private bool IsClear()
    {
        var tip = At(_start);
        foreach (var other in _surface.Tips)
        {
            if ((other - tip).Length < Options.TipsApart)
            {
                return false;
            }

            Stop(Lines.Reach(tip, _way, other, other, Options.TipGap));
        }

        _along = _start + _surface.Edges.Reach(tip, _way);
        foreach (var text in _surface.Texts)
        {
            Stop(Lines.Reach(tip, _way, text.Grow(Options.TipGap)));
        }

        var whole = Surface.Around(tip, At(Longest)).Grow(Options.LeaderGap);
        foreach (var (from, to) in _surface.Hard)
        {
            if (whole.Meets(Surface.Around(from, to), Lines.Touch))
            {
                Stop(Lines.Reach(tip, _way, from, to, Options.LeaderGap));
            }
        }

        if (Longest <= _start)
        {
            return false;
        }

        Witness(tip);
        return true;
    }

    private void Stop(double reach) => Longest = Math.Min(Longest, _start + reach);

    private void Witness(PaperPoint tip)
    {
        const double Near = 0.35, Steep = 29;
        var end = At(Longest);
        var whole = Surface.Around(tip, end).Grow(Near);
        foreach (var (from, to) in _surface.Soft)
        {
            if (!whole.Meets(Surface.Around(from, to), Lines.Touch))
            {
                continue;
            }

            var near = Lines.Reach(tip, _way, from, to, Near);
            if (_start + near >= Longest)
            {
                continue;
            }

            if (Lines.Cross(tip, end, from, to) && Lines.Between(Lines.Angle(tip, end), Lines.Angle(from, to)) >= Steep)
            {
                _witnesses.Add((_start + near, _start + Lines.Reach(tip, _way, from, to, 0)));
            }
            else
            {
                Longest = _start + near;
                end = At(Longest);
            }
        }
    }

    private Foreign[] Crossed()
    {
        var crossed = new List<Foreign>();
        Span<Cut> cuts = stackalloc Cut[Shape.MostCuts];
        var tip = At(_start);
        var whole = Surface.Around(tip, At(Longest));
        foreach (var shape in _surface.Shapes)
        {
            if (ReferenceEquals(shape, _shape) || shape.Look is Look.Open or Look.Beyond || !shape.Box.Meets(whole))
            {
                continue;
            }

            var count = shape.Cuts(tip, _way, Longest - _start, cuts);
            var within = shape.Contains(tip.X, tip.Y);
            if (count > 0 || within)
            {
                crossed.Add(Foreign.Of(shape, within, cuts[..count], _start, RunsAlongFill(shape)));
            }
        }

        return [.. crossed];
    }

    private bool RunsAlongFill(Shape shape)
    {
        var degrees = Math.Atan2(_way.Y, _way.X) * 180 / Math.PI;
        return Array.Exists(shape.FillAngles, fill => Lines.Between(fill, degrees) < Parallel || Lines.Between(180 - fill, degrees) < Parallel);
    }

    private static bool AngleSuits(Shape shape, double degrees, out bool strict)
    {
        // Into a level layer at 30° or steeper.
        var layer = shape.Look != Look.Band && shape.Box.Width > 4 * shape.Box.Height && shape.Box.Height < 12;
        strict = !layer || Lines.Between(degrees, 0) >= 29;

        // A mirrored sheet keeps its fills: both ways are kept clear, so that its layout is the mirrored one.
        return !Array.Exists(shape.FillAngles, fill => Lines.Between(fill, degrees) < Parallel || Lines.Between(180 - fill, degrees) < Parallel);
    }

    /// <summary>A foreign part on the ray.</summary>
    /// <param name="Flat">Where an edge of it is first crossed at a flat angle.</param>
    /// <param name="IsAlongFill">Whether the ray has the angle of its fill.</param>
    private sealed record Foreign(Shape Shape, (double From, double To)[] Spans, double Flat, bool IsAlongFill)
    {
        internal static Foreign Of(Shape shape, bool within, ReadOnlySpan<Cut> cuts, double start, bool isAlongFill)
        {
            var (spans, ends) = (new (double From, double To)[(cuts.Length + (within ? 2 : 1)) / 2], 0);
            var (from, flat) = (within ? start : double.NaN, double.MaxValue);
            foreach (var cut in cuts)
            {
                flat = cut.Degrees < Parallel ? Math.Min(flat, start + cut.At) : flat;
                if (double.IsNaN(from))
                {
                    from = start + cut.At;
                }
                else
                {
                    spans[ends++] = (from, start + cut.At);
                    from = double.NaN;
                }
            }

            if (!double.IsNaN(from))
            {
                spans[ends] = (from, double.MaxValue);
            }

            return new(shape, spans, flat, isAlongFill);
        }

        internal double Inside(double distance)
        {
            var inside = 0.0;
            foreach (var (from, to) in Spans)
            {
                inside += Math.Max(0, Math.Min(to, distance) - from);
            }

            return inside;
        }
    }
}
