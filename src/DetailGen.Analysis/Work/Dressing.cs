using DetailGen.Sections;

namespace DetailGen.Analysis.Work;

/// <summary>A sheet is dressed down where there is something to dress it on: its first legs wait for what they are turned over.</summary>
internal static class Dressing
{
    /// <summary>How near something has to be to carry a sheet; mm.</summary>
    private const double Near = 1;

    internal static IReadOnlyList<IReadOnlyList<Part>> Later(IReadOnlyList<IReadOnlyList<Part>> stages)
    {
        List<Part>[] all = [.. stages.Select(stage => stage.ToList())];
        for (var now = 0; now < all.Length; now++)
        {
            foreach (var part in stages[now].Where(part => part is { Sheet: not null, Rises: false, Presence: Presence.Cut }))
            {
                var face = part.Sheet!.Face;
                var legs = Enumerable.Range(0, face.Count - 1).TakeWhile(leg => !Carried(part, leg, stages.Take(now + 1))).Count();
                var later = Enumerable.Range(now + 1, all.Length - now - 1).FirstOrDefault(stage => Enumerable.Range(0, legs).All(leg => Carried(part, leg, stages.Take(stage + 1))));
                if (legs == 0 || legs == face.Count - 1 || later == 0)
                {
                    continue;
                }

                var waits = part.Region.Intersect(Along([.. face.Take(legs + 1)], part.Sheet.Thickness));
                all[now][all[now].IndexOf(part)] = part with { Region = part.Region.Minus(waits), Sheet = part.Sheet with { Face = [.. face.Skip(legs)] } };
                all[later].Add(part with { Region = waits, Sheet = part.Sheet with { Face = [.. face.Take(legs + 1)] } });
            }
        }

        return all;
    }

    private static bool Carried(Part part, int leg, IEnumerable<IReadOnlyList<Part>> stages)
    {
        var (a, b) = (part.Sheet!.Face[leg], part.Sheet.Face[leg + 1]);
        var middle = a + (0.5 * (b - a));
        Point[] beside = [middle - (Near * (b - a).Unit.Left), middle + ((part.Sheet.Thickness + Near) * (b - a).Unit.Left)];
        return stages.SelectMany(stage => stage).Any(other => other.Id != part.Id && other.Presence == Presence.Cut && beside.Any(other.Region.Contains));
    }

    private static Region Along(IReadOnlyList<Point> face, double thickness) => Region.Union(Enumerable.Range(0, face.Count - 1).Select(leg => Region.Hull(
        [.. new[] { face[leg], face[leg + 1] }.SelectMany(corner => new[] { -thickness, 2 * thickness }.Select(by => corner + (by * (face[leg + 1] - face[leg]).Unit.Left)))])));
}
