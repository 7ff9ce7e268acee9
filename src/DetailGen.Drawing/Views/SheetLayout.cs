using DetailGen.Drawing.Fills;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Views;

/// <summary>One sheet laid on paper.</summary>
/// <param name="Face">The substrate's face, paper mm.</param>
/// <param name="Profile">Height of the drawn inner edge above the face.</param>
/// <param name="Centre">The drawn centre line.</param>
internal sealed record LaidSheet(Part Part, SheetStyle Style, FacePath Face, Profile Profile, FacePath Centre)
{
    /// <summary>The drawn body: a band, or the width of a line.</summary>
    public Region Body { get; init; } = Region.Empty;

    /// <summary>As much of the body as lies in the window.</summary>
    public Region Seen { get; init; } = Region.Empty;

    /// <summary>The body and the white beneath it down to the face, and a margin: fills of neighbours stay out.</summary>
    public Region Cover { get; init; } = Region.Empty;

    /// <summary>As much of the white beneath as something pressed under the sheet fills.</summary>
    public Region Filled { get; init; } = Region.Empty;

    /// <summary>Height of the outer edge where the sheet lies flat on its face.</summary>
    public double Top => Profile.Floor + Style.Width;

    /// <summary>How far the outer edge is drawn above its true place, at most; mm on paper.</summary>
    public double Stray(double scale) =>
        Profile.Plateaus.Select(plateau => plateau.Height - plateau.True).Append(Profile.Floor).Max() + Style.Width - Part.Sheet!.Thickness / scale;
}

/// <summary>A stretch in which a face runs along another.</summary>
/// <param name="From">Along the upper face, mm.</param>
/// <param name="Shift">What to add to a place on the lower face to have it on the upper one.</param>
/// <param name="Clear">Distance of the two faces.</param>
internal sealed record Lap(double From, double To, double Shift, double Clear);

/// <summary>Lays sheets over each other in build order, with a white gap between.</summary>
internal static class SheetLayout
{
    // Two parallel ramps of 45 degrees keep their distance if the upper one starts tan(22.5°) of that distance further out.
    private static readonly double Mitre = Math.Tan(Math.PI / 8);

    private const double Parallel = 0.999;

    // What lies between two solids may sit on a sheet without lying flat on it: a level profile on a flashing with a fall of up to 1:10.
    private static readonly double Sitting = Math.Cos(Math.Atan(0.1)) - 1e-6;

    /// <param name="outlineHalf">Half the width of the outline that a face lies on.</param>
    public static IReadOnlyList<LaidSheet> Lay(IEnumerable<Part> sheets, OnPaper paper, Func<FacePath, double> outlineHalf)
    {
        var order = FromBelow(sheets);
        var laid = Lay(order, paper, outlineHalf, SheetStyles.Gaps[0]);
        foreach (var gap in SheetStyles.Gaps.Skip(1).TakeWhile(_ => laid.Exists(Strays)))
        {
            laid = Lay(order, paper, outlineHalf, gap);
        }

        return Parting.Of(Trimmed(laid));

        bool Strays(LaidSheet sheet) => sheet.Stray(paper.Scale) > SheetStyles.Budget;
    }

    // In build order, but each after those that it runs over: a flashing is built in before the membrane that it is dressed down on.
    private static Part[] FromBelow(IEnumerable<Part> sheets)
    {
        var left = sheets.OrderBy(part => part.BuildOrder).ToList();
        var order = new List<Part>(left.Count);
        while (left.Count > 0)
        {
            var next = Math.Max(0, left.FindIndex(part => !part.Sheet!.Over.Any(id => left.Exists(other => other.Id == id))));
            order.Add(left[next]);
            left.RemoveAt(next);
        }

        return [.. order];
    }

    // A free end that butts against another sheet in the model stops short of it on paper, by no more than an end may stray.
    private static List<LaidSheet> Trimmed(List<LaidSheet> laid)
    {
        for (var i = 0; i < laid.Count; i++)
        {
            foreach (var other in laid.Where((_, j) => j != i).Select(sheet => sheet.Body).ToArray())
            {
                var line = laid[i].Centre;
                var (start, end) = (Short(line, laid[i].Style.Width, other, fromStart: true), Short(line, laid[i].Style.Width, other, fromStart: false));
                if (start + end > 0 && line.Length - start - end > 1)
                {
                    var centre = line.Between(start, line.Length - end);
                    laid[i] = laid[i] with { Centre = centre, Body = Ribbon(centre, laid[i].Style.Width) };
                }
            }
        }

        return laid;
    }

    private static double Short(FacePath line, double width, Region other, bool fromStart)
    {
        // The middle of the end asks for the margin alone: beside it sheets may lie in a stack.
        var wanted = Faults.LeastGap + 0.01;
        Point End(double by) => P(fromStart ? line.At(by) : line.At(line.Length - by));
        if (!other.Bounds.Grow(wanted + width).Contains(End(0)) || other.Distance(End(0)) >= wanted)
        {
            return 0;
        }

        const double Step = 0.05, Most = 2.0;
        for (var by = Step; by <= Most + 1e-9 && by < line.Length; by += Step)
        {
            if (other.Distance(End(by)) >= wanted)
            {
                return by;
            }
        }

        return 0;
    }

    private static List<LaidSheet> Lay(Part[] order, OnPaper paper, Func<FacePath, double> outlineHalf, double gap)
    {
        var laid = new List<LaidSheet>();
        foreach (var part in order)
        {
            var style = SheetStyles.Of(part, paper.Scale);
            var face = new FacePath(paper.Face(part.Sheet!));
            var floor = style.Sign == SheetSign.Line ? outlineHalf(face) + SheetStyles.LineClear
                : part.Sheet!.Seat == Seat.Between ? (part.Sheet.Thickness / paper.Scale - style.Width) / 2
                : 0;
            var beneath = part.Sheet!.Over.Select(id => laid.FirstOrDefault(sheet => sheet.Part.Id == id)).OfType<LaidSheet>().ToArray();
            face = Lengthened(face, beneath);
            var profile = new Profile(floor);
            foreach (var under in beneath)
            {
                foreach (var lap in Laps(face, under.Face, part.Sheet.Seat == Seat.Between ? Sitting : Parallel, Apart(under)).SelectMany(lap => face.BetweenCorners(lap)))
                {
                    Raise(profile, face, under, lap, gap, under.Part.Sheet!.Thickness / paper.Scale, part.Roles.HasFlag(Roles.Drainage) || part.Roles.HasFlag(Roles.Finish));
                }
            }

            var centre = face.Beside(profile, style.Width / 2);
            var body = Ribbon(centre, style.Width);
            laid.Add(new LaidSheet(part, style, face, profile, centre) { Body = body, Cover = Cover(face, profile, style) });
        }

        return laid;
    }

    // What lies on a thick sheet has its face as far from that sheet's face as the sheet is thick.
    private static double Apart(LaidSheet under) => Math.Max(SheetStyles.Budget, under.Style.Width + 0.05);

    private static void Raise(Profile profile, FacePath face, LaidSheet under, Lap lap, double gap, double thickness, bool straight)
    {
        var rise = under.Style.Width + gap - lap.Clear; // a sheet that stands off already needs that much less
        var mitre = Mitre * Math.Max(0, rise);
        var reach = face.Smooth(lap.From, lap.To);
        // What leads water away, or is pressed to shape, takes its height at a corner: a ramp in its run would read as a rise against the fall, or as a dent.
        var (before, after) = (Outside(lap.From - lap.Shift), Outside(lap.To - lap.Shift));
        var (from, to) = straight ? reach : (lap.From - before, lap.To + after);
        profile.Add(from, to, under.Profile.Floor + rise, reach, thickness - lap.Clear);
        foreach (var plateau in under.Profile.Plateaus)
        {
            // What works on the other side of a corner does not lift this stretch; a slope that reaches into it does.
            var slope = plateau.Height - under.Profile.Floor;
            var (a, b) = (Math.Max(plateau.From, plateau.Lowest) + lap.Shift, Math.Min(plateau.To, plateau.Highest) + lap.Shift);
            if (Math.Min(b + slope + mitre, plateau.Highest + lap.Shift) <= lap.From + 1e-6 || Math.Max(a - slope - mitre, plateau.Lowest + lap.Shift) >= lap.To - 1e-6)
            {
                continue;
            }

            var (low, high) = (Math.Max(a, lap.From - before), Math.Min(b, lap.To + after));
            var missed = Math.Max(0, low - high);
            (low, high) = missed == 0 ? (low, high) : a > lap.To ? (high, high) : (low, low); // as high as its slope still is where this stretch ends
            profile.Add(straight ? reach.From : low - mitre, straight ? reach.To : high + mitre, plateau.Height - missed + rise, reach, plateau.True - missed + thickness - lap.Clear);
        }

        // A sheet that goes on round a corner, such as asphalt over the head of an upstand, stands as thick beyond it: what lies on it comes down only past that.
        double Outside(double at) => at > 0.01 && at < under.Face.Length - 0.01 ? Math.Max(SheetStyles.JoggleOutside, under.Style.Width + gap) : SheetStyles.JoggleOutside;
    }

    /// <summary>A band of even width along its centre line, ends square.</summary>
    public static Region Ribbon(FacePath centre, double width)
    {
        var half = new Profile(0);
        var (left, right) = (centre.Stations(half, width / 2), centre.Stations(half, -width / 2));
        return Strip([.. left.Select(station => station.Beside)], [.. right.Select(station => station.Beside)]);
    }

    private static Region Cover(FacePath face, Profile profile, SheetStyle style)
    {
        const double Margin = SheetStyles.FillClear;
        var stations = face.Stations(profile, style.Width + Margin, Math.Min(0, profile.Floor) - Margin);
        var (first, last) = (Margin * face.Direction(0), Margin * face.Direction(face.Pieces - 1));
        stations[0] = (stations[0].Low - first, stations[0].Beside - first);
        stations[^1] = (stations[^1].Low + last, stations[^1].Beside + last);
        return Strip([.. stations.Select(station => station.Beside)], [.. stations.Select(station => station.Low)]);
    }

    // Piece by piece where a fold lays a band over itself, so that the outline of the whole would cross.
    private static Region Strip(PaperPoint[] left, PaperPoint[] right)
    {
        Point[] whole = [.. right.Select(P), .. left.Reverse().Select(P)];
        if (Simple.Is(whole))
        {
            return Region.Polygon(whole);
        }

        var pieces = new List<Region>();
        for (var i = 0; i + 1 < left.Length; i++)
        {
            Point[] corners = [P(right[i]), P(right[i + 1]), P(left[i + 1]), P(left[i])];
            if (Convex(corners))
            {
                pieces.Add(Region.Hull(corners));
            }
        }

        return Region.Union(pieces);
    }

    private static bool Convex(Point[] corners)
    {
        double sum = 0;
        for (var i = 0; i < 4; i++)
        {
            var cross = Point.Cross(corners[(i + 1) % 4] - corners[i], corners[(i + 2) % 4] - corners[(i + 1) % 4]);
            if (cross < -1e-5)
            {
                return false;
            }

            sum += cross;
        }

        return sum > 0;
    }

    private static Point P(PaperPoint point) => new(point.X, point.Y);

    /// <summary>Stretches in which one face runs along another, or a little to its left.</summary>
    /// <param name="leastAlong">Least cosine between the two.</param>
    /// <param name="mostApart">Most distance of the two, mm.</param>
    internal static List<Lap> Laps(FacePath face, FacePath under, double leastAlong = Parallel, double mostApart = SheetStyles.Budget)
    {
        var laps = new List<Lap>();
        for (var i = 0; i < face.Pieces; i++)
        {
            var along = face.Direction(i);
            var length = face.Start(i + 1) - face.Start(i);
            for (var j = 0; j < under.Pieces; j++)
            {
                if (Planes.Dot(along, under.Direction(j)) < leastAlong)
                {
                    continue;
                }

                var (start, end) = (under.Points[j] - face.Points[i], under.Points[j + 1] - face.Points[i]);
                var (a, b) = (Planes.Dot(start, along), Planes.Dot(end, along));
                var (from, to) = (Math.Max(0, a), Math.Min(length, b));
                double ClearAt(double s) => Planes.Cross(start + (s - a) / (b - a) * (end - start), along);
                var clear = Math.Min(ClearAt(from), ClearAt(to));
                if (to - from > 0.01 && clear >= -0.05 && clear <= mostApart)
                {
                    laps.Add(new(face.Start(i) + from, face.Start(i) + to, face.Start(i) + a - under.Start(j), Math.Max(0, clear)));
                }
            }
        }

        // A lap round a corner is one lap.
        laps.Sort((x, y) => x.From.CompareTo(y.From));
        var joined = new List<Lap>();
        foreach (var lap in laps)
        {
            if (joined.Count > 0 && Math.Abs(joined[^1].To - lap.From) < 0.02 && Math.Abs(joined[^1].Shift - lap.Shift) < 0.02 && Math.Abs(joined[^1].Clear - lap.Clear) < 0.02)
            {
                joined[^1] = joined[^1] with { To = lap.To };
            }
            else
            {
                joined.Add(lap);
            }
        }

        return joined;
    }

    // A lap is drawn at least 3 long: the free end of the upper sheet runs on over the lower one.
    private static FacePath Lengthened(FacePath face, LaidSheet[] beneath)
    {
        foreach (var under in beneath)
        {
            foreach (var (from, to, shift, _) in Laps(face, under.Face))
            {
                var missing = SheetStyles.LeastLap - (to - from);
                if (missing <= 0)
                {
                    continue;
                }

                if (to > face.Length - 0.01 && under.Face.Length - (to - shift) > missing)
                {
                    return new([.. face.Points, .. under.Face.Between(to - shift, to - shift + missing).Points]);
                }

                if (from < 0.01 && from - shift > missing)
                {
                    return new([.. under.Face.Between(from - shift - missing, from - shift).Points, .. face.Points]);
                }
            }
        }

        return face;
    }
}
