using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Fills;

/// <summary>Marks strewn from a seed: a part that grows keeps those it had.</summary>
public static class Strewn
{
    /// <summary>How far a mark stays inside, mm.</summary>
    public const double Clear = 0.3;

    private const double Jitter = 0.35;

    public static IEnumerable<Item> Marks(Scatter scatter, Area area, string row, string partId, string fill, PaperPoint seed, PaperPoint axis)
    {
        if (area.IsEmpty)
        {
            yield break;
        }

        var side = Math.Sqrt(scatter.Cell);
        var clear = Math.Min(Clear, 0.15 * Math.Min(area.Box.Width, area.Box.Height)); // a thin bed would keep next to nothing
        var name = Mixing.Of($"{partId}/{fill}/{scatter.Mark}/{(int)Math.Round(scatter.Cell * 100)}");
        var (i0, i1) = ((int)Math.Floor((area.Box.Left - seed.X) / side), (int)Math.Ceiling((area.Box.Right - seed.X) / side));
        var (j0, j1) = ((int)Math.Floor((area.Box.Bottom - seed.Y) / side), (int)Math.Ceiling((area.Box.Top - seed.Y) / side));
        var grains = new List<PaperPoint>();
        for (var j = j0; j < j1; j++)
        {
            for (var i = i0; i < i1; i++)
            {
                var state = Mixing.Of(name, i, j);
                var x = seed.X + (i + 0.5 + Jitter * (2 * Mixing.Draw(ref state) - 1)) * side;
                var y = seed.Y + (j + 0.5 + Jitter * (2 * Mixing.Draw(ref state) - 1)) * side;
                var centre = new PaperPoint(x, y);
                var size = scatter.Least + Mixing.Draw(ref state) * (scatter.Most - scatter.Least);
                if (!area.Contains(centre))
                {
                    continue;
                }

                switch (scatter.Mark)
                {
                    case Mark.Grain when area.EdgeDistance(centre) >= clear + size / 2:
                        grains.Add(centre);
                        break;
                    case Mark.Bubble when area.EdgeDistance(centre) >= clear + size / 2:
                        yield return new Ring(row, centre, size) { PartId = partId };
                        break;
                    case Mark.Triangle when area.EdgeDistance(centre) >= clear + size / Math.Sqrt(3):
                        var turn = 360 * Mixing.Draw(ref state);
                        yield return new Stroke(row, [.. Enumerable.Range(0, 3).Select(k => centre + size / Math.Sqrt(3) * Planes.Along(turn + 120 * k))], true) { PartId = partId };
                        break;
                    case Mark.Strand:
                        var along = Planes.Along(Planes.Angle(axis) + 30 * Mixing.Draw(ref state) - 15);
                        var (a, b) = (centre - size / 2 * along, centre + size / 2 * along);
                        if (area.Contains(a) && area.Contains(b) && area.EdgeDistance(a) >= clear && area.EdgeDistance(b) >= clear && area.Inside(a, b) is [var whole] && whole.To - whole.From > 0.999)
                        {
                            yield return new Stroke(row, [a, b]) { PartId = partId };
                        }

                        break;
                }
            }
        }

        if (grains.Count > 0)
        {
            yield return new Grains(row, grains, scatter.Least) { PartId = partId };
        }
    }

    /// <summary>Rounded stones, the largest tried first, none overlapping; smaller ones go between them until six tenths are covered.</summary>
    /// <param name="most">Largest diameter, mm.</param>
    public static IEnumerable<Item> Stones(Area area, string row, string partId, PaperPoint seed, double most)
    {
        var placed = new List<(PaperPoint Centre, double Radius)>();
        var least = Math.Max(0.8, 0.3 * most);
        var cell = most + 0.4;
        var buckets = new Dictionary<(int, int), List<int>>();
        (int, int) Bucket(PaperPoint at) => ((int)Math.Floor((at.X - seed.X) / cell), (int)Math.Floor((at.Y - seed.Y) / cell));
        bool Free(PaperPoint at, double radius)
        {
            var (bx, by) = Bucket(at);
            for (var dx = -1; dx <= 1; dx++)
            {
                for (var dy = -1; dy <= 1; dy++)
                {
                    foreach (var other in buckets.GetValueOrDefault((bx + dx, by + dy)) ?? [])
                    {
                        if ((placed[other].Centre - at).Length < placed[other].Radius + radius + 0.15)
                        {
                            return false;
                        }
                    }
                }
            }

            return true;
        }

        const int Sizes = 5;
        for (var round = 0; round < 3 * Sizes; round++)
        {
            var size = most + Math.Min(round / 3, Sizes - 1) * (least - most) / (Sizes - 1);
            var side = size * 1.05;
            var name = Mixing.Of($"{partId}/stones/{round}");
            for (var j = (int)Math.Floor((area.Box.Bottom - seed.Y) / side); j <= (area.Box.Top - seed.Y) / side; j++)
            {
                for (var i = (int)Math.Floor((area.Box.Left - seed.X) / side); i <= (area.Box.Right - seed.X) / side; i++)
                {
                    var state = Mixing.Of(name, i, j);
                    var centre = new PaperPoint(seed.X + (i + Mixing.Draw(ref state)) * side, seed.Y + (j + Mixing.Draw(ref state)) * side);
                    var radius = size / 2 * (0.85 + 0.15 * Mixing.Draw(ref state));
                    if (area.Contains(centre) && Free(centre, radius) && area.EdgeDistance(centre) >= radius + 0.1)
                    {
                        (buckets.TryGetValue(Bucket(centre), out var list) ? list : buckets[Bucket(centre)] = []).Add(placed.Count);
                        placed.Add((centre, radius));
                        yield return new Stroke(row, Pebble(centre, radius, ref state), true) { PartId = partId };
                    }
                }
            }
        }
    }

    private static PaperPoint[] Pebble(PaperPoint centre, double radius, ref ulong state)
    {
        const int Corners = 8, Between = 3;
        var turn = 360 * Mixing.Draw(ref state);
        var corners = new PaperPoint[Corners];
        for (var k = 0; k < Corners; k++)
        {
            corners[k] = centre + radius * (0.82 + 0.16 * Mixing.Draw(ref state)) * Planes.Along(turn + 360.0 * k / Corners);
        }

        var loop = new PaperPoint[Corners * Between];
        for (var k = 0; k < Corners; k++)
        {
            var (a, b, c, d) = (corners[(k + 7) % Corners], corners[k], corners[(k + 1) % Corners], corners[(k + 2) % Corners]);
            for (var m = 0; m < Between; m++)
            {
                double t = (double)m / Between, t2 = t * t, t3 = t2 * t;
                loop[k * Between + m] = 0.5 * ((-t3 + 2 * t2 - t) * a + (3 * t3 - 5 * t2 + 2) * b + ((-3 * t3 + 4 * t2 + t) * c + (t3 - t2) * d));
            }
        }

        return loop;
    }
}
