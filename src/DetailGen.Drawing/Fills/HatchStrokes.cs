using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>The plain strokes of a hatch: what every format shows that cannot repeat a pattern by itself.</summary>
public static class HatchStrokes
{
    /// <summary>Slivers shorter than this are not drawn, mm.</summary>
    public const double Least = 0.8;

    /// <summary>All strokes of all families, cut to the outline. Strokes come family by family, line by line, so the order is fixed.</summary>
    public static IReadOnlyList<(PaperPoint From, PaperPoint To)> Of(Hatch hatch)
    {
        var area = Area.Of(hatch.Outline, hatch.Holes);
        return [.. hatch.Families.SelectMany(family => Of(family, area))];
    }

    public static IEnumerable<(PaperPoint From, PaperPoint To)> Of(LineFamily family, Area area)
    {
        if (area.IsEmpty)
        {
            yield break;
        }

        var along = Planes.Along(family.Angle);
        var across = Planes.Left(along);
        PaperPoint[] corners = [new(area.Box.Left, area.Box.Bottom), new(area.Box.Right, area.Box.Bottom), new(area.Box.Right, area.Box.Top), new(area.Box.Left, area.Box.Top)];
        var first = (int)Math.Ceiling(corners.Min(corner => Planes.Dot(corner - family.Base, across)) / family.Spacing);
        var last = (int)Math.Floor(corners.Max(corner => Planes.Dot(corner - family.Base, across)) / family.Spacing);
        var from = corners.Min(corner => Planes.Dot(corner - family.Base, along)) - 1;
        var to = corners.Max(corner => Planes.Dot(corner - family.Base, along)) + 1;
        for (var line = first; line <= last; line++)
        {
            var foot = family.Base + line * family.Spacing * across;
            var shift = line * family.Shift;
            foreach (var (a, b) in area.Inside(foot + from * along, foot + to * along))
            {
                var (start, end) = (from + a * (to - from), from + b * (to - from));
                foreach (var (dashFrom, dashTo, whole) in Dashes(family.Dashes, start - shift, end - shift))
                {
                    if (dashTo - dashFrom >= Math.Min(Least, whole) - 1e-9)
                    {
                        yield return (foot + (dashFrom + shift) * along, foot + (dashTo + shift) * along);
                    }
                }
            }
        }
    }

    private static IEnumerable<(double From, double To, double Whole)> Dashes(IReadOnlyList<double> dashes, double start, double end)
    {
        if (dashes.Count == 0)
        {
            yield return (start, end, Least);
            yield break;
        }

        var period = dashes.Sum(Math.Abs);
        for (var round = Math.Floor(start / period) * period; round < end; round += period)
        {
            var at = round;
            foreach (var dash in dashes)
            {
                if (dash >= 0 && at + dash > start && at < end)
                {
                    yield return (Math.Max(at, start), Math.Min(at + dash, end), dash);
                }

                at += Math.Abs(dash);
            }
        }
    }
}
