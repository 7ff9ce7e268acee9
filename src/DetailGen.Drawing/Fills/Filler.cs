using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Fills;

/// <summary>What a fill needs to know of its part; all in paper mm.</summary>
/// <param name="Outline">The part before anything was cut back.</param>
/// <param name="Ground">The part less the bands on it and a margin beside them: waves run between its faces.</param>
/// <param name="Clear">The ground less what lies over it (ties, fixings, joints): no stroke leaves it.</param>
/// <param name="Axis">Direction of the long axis, length 1.</param>
/// <param name="Variant">0 to 3, so that neighbours of one fill differ: bit 0 mirrors, bit 1 moves by half a spacing.</param>
public sealed record FillJob(
    string PartId, string Fill, string Row, string SolidRow, Region Outline, Region Ground, Region Clear, PaperPoint Axis, PaperPoint Seed, int Variant, double Scale)
{
    public Repeat? Repeat { get; init; }
}

/// <summary>What a fill came to.</summary>
/// <param name="Angle">Of its first family of lines, in degrees; null where it has none.</param>
/// <param name="Solid">Filled all over, so that its outline need not be drawn.</param>
public sealed record Filling(IReadOnlyList<Item> Items, double? Angle, bool Solid);

/// <summary>Fills one part.</summary>
public static class Filler
{
    private const double AlongEdge = 10, TurnedBy = 15;

    public static Filling Fill(FillJob job)
    {
        var ground = Area.Of(job.Ground);
        if (ground.IsEmpty)
        {
            return new([], null, false);
        }

        var spec = Chosen(job);
        if (spec is null)
        {
            return new([], null, false);
        }

        var clear = ReferenceEquals(job.Ground, job.Clear) ? ground : Area.Of(job.Clear);
        var items = new List<Item>();
        double? angle = null;
        var hatched = new List<LineFamily>();
        var name = spec.Name + (job.Variant % 2 == 1 ? "-mirrored" : "");
        foreach (var family in spec.Families)
        {
            var line = Settled(family, job, ref name);
            angle ??= line.Angle;
            if (family.FromAxis)
            {
                items.AddRange(Hatched(job, name, [line]).SelectMany(HatchStrokes.Of).Select(stroke => new Stroke(job.Row, [stroke.From, stroke.To]) { PartId = job.PartId }));
            }
            else
            {
                hatched.Add(line);
            }
        }

        if (hatched.Count > 0)
        {
            items.AddRange(Hatched(job, name, hatched));
        }

        foreach (var scatter in spec.Scatters)
        {
            items.AddRange(Strewn.Marks(scatter, clear, job.Row, job.PartId, spec.Name, job.Seed, job.Axis));
        }

        foreach (var motif in spec.Motifs)
        {
            items.AddRange(Motifs(motif, job, ground, clear));
        }

        return new(items, angle, spec.Motifs.Contains(Motif.Solid));
    }

    /// <summary>How thick a region is across its axis, on average where it tapers; mm.</summary>
    public static double Thickness(Region region, PaperPoint axis)
    {
        if (region.IsEmpty)
        {
            return 0;
        }

        var left = Planes.Left(axis);
        var corners = region.Pieces.SelectMany(piece => piece.Outline).Select(corner => new PaperPoint(corner.X, corner.Y)).ToArray();
        var across = corners.Max(p => Planes.Dot(p, left)) - corners.Min(p => Planes.Dot(p, left));
        var along = corners.Max(p => Planes.Dot(p, axis)) - corners.Min(p => Planes.Dot(p, axis));
        return Math.Min(across, Math.Min(along, region.Area / Math.Max(along, 1e-9)));
    }

    private static IEnumerable<Hatch> Hatched(FillJob job, string name, IReadOnlyList<LineFamily> families) =>
        job.Clear.Pieces.Select(piece => new Hatch(job.Row, name, Ring(piece.Outline), [.. piece.Holes.Select(Ring)], families) { PartId = job.PartId });

    // The size of the part decides, not what bands leave of it: a board does not change its sign along a lap.
    private static FillSpec? Chosen(FillJob job)
    {
        var spec = FillTable.Named(job.Fill);
        var thick = Thickness(job.Outline, job.Axis);
        if (spec.Motifs.Any(motif => motif is Motif.Loop or Motif.Zigzag))
        {
            thick = Math.Min(thick, Thickness(job.Ground, job.Axis)); // a wave needs the width that sheets leave it
        }

        return thick >= 0.97 * spec.Keep && (job.Outline.Area >= FillTable.SmallArea || spec.Keep == 0) ? spec : spec.Narrow;
    }

    private static LineFamily Settled(Family family, FillJob job, ref string name)
    {
        var axis = Planes.Angle(job.Axis);
        var angle = family.FromAxis ? axis + family.Angle : family.Angle;
        angle = Planes.Turned(job.Variant % 2 == 1 && !(family.FromAxis && family.Angle == 0) ? 2 * (family.FromAxis ? axis : 0) - angle : angle);
        if (!family.FromAxis)
        {
            while (Math.Abs(Planes.Turned(angle - axis + 90) - 90) < AlongEdge)
            {
                angle = Planes.Turned(angle + TurnedBy);
                name += "-turned";
            }
        }

        var across = Planes.Left(Planes.Along(angle));
        var offset = family.Offset + (job.Variant >= 2 ? family.Spacing / 2 : 0);
        return new(angle, family.Spacing, job.Seed + offset * across, 0, family.Dashes);
    }

    private static IEnumerable<Item> Motifs(Motif motif, FillJob job, Area ground, Area clear)
    {
        IEnumerable<Item> Strokes(IEnumerable<IReadOnlyList<PaperPoint>> lines, double least = HatchStrokes.Least) =>
            lines.Where(line => line.Count > 1).SelectMany(line => clear.Clip(line, least)).Select(run => new Stroke(job.Row, run) { PartId = job.PartId });
        switch (motif)
        {
            case Motif.Loop:
                return Strips.Of(ground, job.Axis).SelectMany(strip => Strokes([Waves.Loop(strip, job.Variant)], Waves.LeastRun(strip)));
            case Motif.Zigzag:
                return Strips.Of(ground, job.Axis).SelectMany(strip => Strokes([Waves.Zigzag(strip, job.Variant)], Waves.LeastRun(strip)));
            case Motif.Veneers:
                return Strokes(Strips.Of(Area.Of(job.Outline), job.Axis).SelectMany(Boards.Veneers), 0.3);
            case Motif.CoreTicks:
                return Strokes(Strips.Of(Area.Of(job.Outline), job.Axis).SelectMany(Boards.CoreTicks), 0.3);
            case Motif.MidLine:
                return Strokes(Strips.Of(ground, job.Axis).SelectMany(Boards.MidLine));
            case Motif.Grain:
                return Strokes(Strips.Of(ground, job.Axis).SelectMany(strip => Boards.Grain(strip, job.PartId)));
            case Motif.EndGrain:
                var once = job.PartId.Contains("pack", StringComparison.Ordinal) || job.PartId.Contains("nog", StringComparison.Ordinal);
                return Strokes(job.Outline.Pieces.SelectMany(piece => Boards.EndGrain(Ring(piece.Outline), job.Axis, once)));
            case Motif.Stones:
                return Strewn.Stones(clear, job.Row, job.PartId, job.Seed, Math.Clamp(40 / job.Scale, 1.6, 4.0));
            case Motif.Dabs:
                return Dabs(job, ground, clear);
            case Motif.InnerLine:
                return Filler.Thickness(job.Outline, job.Axis) < 6 ? [] : job.Outline.Grow(-0.7).Pieces.SelectMany(piece => Strokes([[.. Ring(piece.Outline), Ring([piece.Outline[0]])[0]]]));
            case Motif.Solid:
                return job.Clear.Pieces.Select(piece => new Solid(job.SolidRow, Ring(piece.Outline), [.. piece.Holes.Select(Ring)]) { PartId = job.PartId });
            default:
                return [];
        }
    }

    // The first dab is the ribbon at the head of the lining; below it they stand at their centres.
    private static IEnumerable<Item> Dabs(FillJob job, Area ground, Area clear)
    {
        const double Centres = 450, Length = 200;
        var pitch = (job.Repeat?.Centres is > 0 and var centres ? centres : Centres) / job.Scale;
        var dab = (job.Repeat?.Width is > 0 and var width ? width : Length) / job.Scale;
        dab = Math.Min(dab, 0.6 * pitch);
        var scatter = new Scatter(Mark.Grain, 0.8, 0.2, 0.2);
        var upwards = job.Axis.Y >= 0 ? job.Axis : -1 * job.Axis;
        foreach (var strip in Strips.Of(ground, upwards))
        {
            for (var head = strip.End; head > strip.Start + 0.8; head -= pitch)
            {
                var foot = Math.Max(strip.Start, head - dab);
                var (lo, hi) = (strip.Faces(foot + 1e-6), strip.Faces(head - 1e-6));
                PaperPoint[] outline = [strip.At(foot, lo.Lo), strip.At(head, hi.Lo), strip.At(head, hi.Hi), strip.At(foot, lo.Hi)];
                foreach (var mark in Strewn.Marks(scatter, Area.Of(outline, []), job.Row, job.PartId, job.Fill, job.Seed, job.Axis))
                {
                    yield return mark;
                }

                foreach (var (a, b) in new[] { (outline[0], outline[3]), (outline[1], outline[2]) })
                {
                    foreach (var run in clear.Clip([a, b], 0.3))
                    {
                        yield return new Stroke(job.Row, run) { PartId = job.PartId };
                    }
                }
            }
        }
    }

    private static PaperPoint[] Ring(IReadOnlyList<Point> corners) => [.. corners.Select(corner => new PaperPoint(corner.X, corner.Y))];
}
