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

    /// <summary>The body and the white beneath it down to the face: fills of neighbours stay out.</summary>
    public Region Cover { get; init; } = Region.Empty;

    /// <summary>Height of the outer edge where the sheet lies flat on its face.</summary>
    public double Top => Profile.Floor + Style.Width;
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

    /// <param name="outlineHalf">Half the width of the outline that a face lies on.</param>
    public static IReadOnlyList<LaidSheet> Lay(IEnumerable<Part> sheets, OnPaper paper, Func<FacePath, double> outlineHalf)
    {
        var order = sheets.OrderBy(part => part.BuildOrder).ToArray();
        var loose = Lay(order, paper, outlineHalf, SheetStyles.Gap);
        var strays = loose.Any(sheet => sheet.Profile.Plateaus.Any(plateau => plateau.Height + sheet.Style.Width - sheet.Part.Sheet!.Thickness / paper.Scale > SheetStyles.Budget));
        return strays ? Lay(order, paper, outlineHalf, SheetStyles.TightGap) : loose;
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
                foreach (var (from, to, shift, clear) in Laps(face, under.Face))
                {
                    var over = under.Profile;
                    var rise = under.Style.Width + gap - clear; // a sheet that stands off already needs that much less
                    profile.Add(from - SheetStyles.JoggleOutside, to + SheetStyles.JoggleOutside, over.Floor + rise);
                    foreach (var (a, b, height) in over.Plateaus)
                    {
                        // A slope that reaches into the lap lifts the sheet above it as well.
                        var reach = height - over.Floor;
                        if (b + shift + reach > from && a + shift - reach < to)
                        {
                            var (low, high) = (Math.Max(a + shift, from - SheetStyles.JoggleOutside), Math.Min(b + shift, to + SheetStyles.JoggleOutside));
                            var missed = Math.Max(0, low - high);
                            profile.Add(Math.Min(low, high) - Mitre * Math.Max(0, rise), Math.Max(low, high) - missed + Mitre * Math.Max(0, rise), height - missed + rise);
                        }
                    }
                }
            }

            var centre = face.Beside(profile, style.Width / 2);
            var body = Ribbon(centre, style.Width);
            laid.Add(new LaidSheet(part, style, face, profile, centre) { Body = body, Cover = Cover(face, profile, style, body) });
        }

        return laid;
    }

    /// <summary>A band of even width along its centre line, ends square.</summary>
    public static Region Ribbon(FacePath centre, double width)
    {
        var half = new Profile(0);
        var (left, right) = (centre.Stations(half, width / 2), centre.Stations(half, -width / 2));
        return Strip([.. left.Select(station => station.Beside)], [.. right.Select(station => station.Beside)]);
    }

    private static Region Cover(FacePath face, Profile profile, SheetStyle style, Region body)
    {
        if (profile.Floor <= 0 && profile.Plateaus.Count == 0)
        {
            return body;
        }

        var stations = face.Stations(profile, style.Width);
        return body.Union(Strip([.. stations.Select(station => station.Beside)], [.. stations.Select(station => station.Face)]));
    }

    // Piece by piece, because a fold may lay a band over itself and the outline of the whole would then cross.
    private static Region Strip(PaperPoint[] left, PaperPoint[] right)
    {
        var pieces = new List<Region>();
        for (var i = 0; i + 1 < left.Length; i++)
        {
            Point[] corners = [P(right[i]), P(right[i + 1]), P(left[i + 1]), P(left[i])];
            if (Convex(corners))
            {
                pieces.Add(Region.Polygon(corners));
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

        return sum > 1e-4;
    }

    private static Point P(PaperPoint point) => new(point.X, point.Y);

    /// <summary>Stretches in which one face runs along another, or a little to its left.</summary>
    internal static List<Lap> Laps(FacePath face, FacePath under)
    {
        var laps = new List<Lap>();
        for (var i = 0; i < face.Pieces; i++)
        {
            var along = face.Direction(i);
            var length = face.Start(i + 1) - face.Start(i);
            for (var j = 0; j < under.Pieces; j++)
            {
                var clear = Planes.Cross(along, face.Points[i] - under.Points[j]);
                if (Planes.Dot(along, under.Direction(j)) < 0.999 || clear < -0.05 || clear > SheetStyles.Budget)
                {
                    continue;
                }

                var a = Planes.Dot(under.Points[j] - face.Points[i], along);
                var b = Planes.Dot(under.Points[j + 1] - face.Points[i], along);
                var (from, to) = (Math.Max(0, a), Math.Min(length, b));
                if (to - from > 0.01)
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
