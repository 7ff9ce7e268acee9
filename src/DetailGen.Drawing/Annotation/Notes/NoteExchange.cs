namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Betters places that are settled: a note that stands dearly takes a cheaper place, and the few that it sends away look for others, as long as all together gain.</summary>
/// <param name="inColumns">All that a note might do in the columns.</param>
/// <param name="alone">All that it might do by itself up to a cost: asked for only where the columns are of no help.</param>
internal sealed class NoteExchange(Func<string, IEnumerable<HeldNote>> inColumns, Func<string, double, IEnumerable<HeldNote>> alone, Disturbances disturbances)
{
    private readonly Dictionary<string, (HeldNote[] Ways, double Most)> _ways = new(StringComparer.Ordinal);

    /// <summary>So many notes may be sent away at once.</summary>
    private const int MostSent = 3;

    /// <summary>So many cheaper places of a note are looked at.</summary>
    private const int MostTried = 200;

    private const int Rounds = 4;

    /// <summary>The places with what they gain, and how much less than before the notes that moved might cost at best.</summary>
    internal (List<HeldNote> Held, double Gain, double Slack) Bettered(List<HeldNote> before)
    {
        var held = Settled(before);
        _ways.Clear();
        var after = Settled(held, withAlone: true);
        var moved = before.Where(one => !after.Contains(one)).ToArray();
        return (after, before.Sum(one => one.Option.Cost) - after.Sum(one => one.Option.Cost), moved.Sum(one => Math.Max(0, one.Option.Cost - Ways(one.Id, one.Option.Cost, withAlone: true)[0].Option.Cost)));
    }

    /// <param name="most">Those that cost more may be missing.</param>
    private HeldNote[] Ways(string id, double most, bool withAlone)
    {
        if (!_ways.TryGetValue(id, out var known) || known.Most < most)
        {
            known = ([.. inColumns(id).Concat(withAlone ? alone(id, most) : []).OrderBy(way => way.Option.Cost).ThenBy(way => way.Option.Level).ThenBy(way => way.Column.Bend)], withAlone ? most : double.MaxValue);
            _ways[id] = known;
        }

        return known.Ways;
    }

    private List<HeldNote> Settled(List<HeldNote> held, bool withAlone = false)
    {
        for (var round = 0; round < Rounds; round++)
        {
            var before = held;
            foreach (var own in held.Where(one => one.Option.Cost - one.ShortestLeader > Weights.Dear).OrderByDescending(one => one.Option.Cost).ThenBy(one => one.Id, StringComparer.Ordinal).ToArray())
            {
                held = held.Contains(own) ? Without(held, own, withAlone) ?? held : held;
            }

            if (ReferenceEquals(before, held))
            {
                break;
            }
        }

        return held;
    }

    /// <summary>All places with that note in a cheaper one; null where none gains.</summary>
    private List<HeldNote>? Without(List<HeldNote> held, HeldNote own, bool withAlone)
    {
        var rest = held.Where(one => !ReferenceEquals(one, own)).ToArray();
        var mine = Ways(own.Id, own.Option.Cost, withAlone);
        var sent = new List<int>[mine.Length];
        for (var i = 0; i < rest.Length; i++)
        {
            foreach (var way in disturbances.Of(rest[i], mine))
            {
                (sent[way] ??= []).Add(i);
            }
        }

        var (tried, below) = (0, own.Option.Cost - Weights.Better);
        List<HeldNote>? best = null;
        for (var i = 0; i < mine.Length && mine[i].Option.Cost < below && tried < MostTried; i++)
        {
            if (sent[i] is not { } gone)
            {
                return [.. rest, mine[i]];
            }

            if (gone.Count <= MostSent)
            {
                tried++;
                if (Replaced(rest, gone, mine[i], below, withAlone) is { } found)
                {
                    (best, below) = found;
                }
            }
        }

        return best;
    }

    /// <summary>Those that were sent away to the cheapest places that the others leave, in turn; null where what is taken and what they lose together costs no less than a limit.</summary>
    private (List<HeldNote> Held, double Cost)? Replaced(HeldNote[] rest, List<int> gone, HeldNote taken, double below, bool withAlone)
    {
        var cost = taken.Option.Cost;
        List<HeldNote> all = [.. rest.Where((_, i) => !gone.Contains(i)), taken];
        foreach (var own in gone.Select(i => rest[i]))
        {
            var most = own.Option.Cost + below - cost;
            if (Least(Ways(own.Id, most, withAlone), most, all) is not { } next)
            {
                return null;
            }

            cost += next.Option.Cost - own.Option.Cost;
            all.Add(next);
        }

        return cost < below ? (all, cost) : null;
    }

    /// <summary>The cheapest of the ways that disturbs none; null where none is cheap enough.</summary>
    private HeldNote? Least(HeldNote[] ways, double below, List<HeldNote> others)
    {
        var isTaken = disturbances.Taken(ways, others);
        for (var i = 0; i < ways.Length && ways[i].Option.Cost < below; i++)
        {
            if (!isTaken[i])
            {
                return ways[i];
            }
        }

        return null;
    }
}
