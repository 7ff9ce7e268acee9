namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Betters places that are settled: a note that stands dearly takes a cheaper place, and the few that it sends away look for others, as long as all together gain.</summary>
/// <param name="inColumns">All that a note might do in the columns.</param>
/// <param name="alone">All that it might do by itself up to a cost: asked for only where the columns are of no help.</param>
internal sealed class NoteExchange(Func<string, IEnumerable<HeldNote>> inColumns, Func<string, double, IEnumerable<HeldNote>> alone)
{
    private readonly Dictionary<string, Choice> _inColumns = new(StringComparer.Ordinal), _alone = new(StringComparer.Ordinal);

    /// <summary>So many notes may be sent away at once.</summary>
    private const int MostSent = 3;

    /// <summary>So many cheaper places of a note are looked at.</summary>
    private const int MostTried = 200;

    private const int Rounds = 4;

    /// <summary>The places with what they gain, and how much less than before the notes that moved might cost at best.</summary>
    internal (List<HeldNote> Held, double Gain, double Slack) Bettered(List<HeldNote> before)
    {
        var after = Settled(Settled(before), withAlone: true);
        var moved = before.Where(one => !after.Contains(one)).ToArray();
        return (after, before.Sum(one => one.Option.Cost) - after.Sum(one => one.Option.Cost), moved.Sum(one => Math.Max(0, one.Option.Cost - Own(one, withAlone: true).Ways[0].Option.Cost)));
    }

    private Choice InColumns(string id)
    {
        if (!_inColumns.TryGetValue(id, out var known))
        {
            _inColumns.Add(id, known = Choice.Of(inColumns(id), double.MaxValue));
        }

        return known;
    }

    /// <param name="most">Those that cost more may be missing.</param>
    private Choice Alone(string id, double most)
    {
        if (!_alone.TryGetValue(id, out var known) || known.Most < most)
        {
            _alone[id] = known = Choice.Of(alone(id, most), most);
        }

        return known;
    }

    /// <summary>All that a note might do for no more than it costs.</summary>
    private Choice Own(HeldNote own, bool withAlone) =>
        withAlone && Alone(own.Id, own.Option.Cost).Ways is { Length: > 0 } apart ? Choice.Of(InColumns(own.Id).Ways.Concat(apart), own.Option.Cost) : InColumns(own.Id);

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
        var mine = Own(own, withAlone);
        var (tried, below) = (0, own.Option.Cost - Weights.Better);
        List<HeldNote>? best = null;
        for (var i = 0; i < mine.Ways.Length && mine.Ways[i].Option.Cost < below && tried < MostTried; i++)
        {
            var (taken, sent) = (mine.Ways[i], mine.Sent(i, held));
            if (sent.Length == 0)
            {
                return Moved(held, own, sent, [taken]);
            }

            if (sent.Length <= MostSent)
            {
                tried++;
                if (Replaced(held, own, sent, taken, below, withAlone) is { } found)
                {
                    (best, below) = (Moved(held, own, sent, found.Taken), found.Cost);
                }
            }
        }

        return best;
    }

    private static List<HeldNote> Moved(List<HeldNote> held, HeldNote own, int[] sent, IEnumerable<HeldNote> taken) =>
        [.. held.Where((one, i) => !ReferenceEquals(one, own) && !sent.Contains(i)), .. taken];

    /// <summary>Those that were sent away to the cheapest places that the others leave, in turn; null where what is taken and what they lose together costs no less than a limit.</summary>
    private (HeldNote[] Taken, double Cost)? Replaced(List<HeldNote> held, HeldNote own, int[] sent, HeldNote taken, double below, bool withAlone)
    {
        var cost = taken.Option.Cost;
        var all = new HeldNote[1 + sent.Length];
        all[0] = taken;
        for (var i = 0; i < sent.Length; i++)
        {
            var gone = held[sent[i]];
            var most = gone.Option.Cost + below - cost;
            var next = Least(InColumns(gone.Id), most, held, own, sent, all.AsSpan(0, 1 + i));
            if (withAlone)
            {
                var limit = next?.Option.Cost ?? most;
                next = Least(Alone(gone.Id, limit), limit, held, own, sent, all.AsSpan(0, 1 + i)) ?? next;
            }

            if (next is null)
            {
                return null;
            }

            cost += next.Option.Cost - gone.Option.Cost;
            all[1 + i] = next;
        }

        return cost < below ? (all, cost) : null;
    }

    /// <summary>The cheapest way that disturbs none of those that stay, nor of those that have taken new places; null where none is cheap enough.</summary>
    private static HeldNote? Least(Choice choice, double below, List<HeldNote> held, HeldNote own, int[] sent, ReadOnlySpan<HeldNote> taken)
    {
        for (var i = 0; i < choice.Ways.Length && choice.Ways[i].Option.Cost < below; i++)
        {
            if (IsLeft(choice.Sent(i, held), held, own, sent) && !Meets(taken, choice.Ways[i]))
            {
                return choice.Ways[i];
            }
        }

        return null;
    }

    private static bool IsLeft(int[] disturbed, List<HeldNote> held, HeldNote own, int[] sent)
    {
        foreach (var at in disturbed)
        {
            if (!ReferenceEquals(held[at], own) && !sent.Contains(at))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Meets(ReadOnlySpan<HeldNote> taken, HeldNote way)
    {
        foreach (var one in taken)
        {
            if (one.Disturbs(way))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What a note might do, cheapest first.</summary>
    /// <param name="ways">Those that cost more than <paramref name="most"/> may be missing.</param>
    private sealed class Choice(HeldNote[] ways, double most)
    {
        private readonly int[]?[] _sent = new int[ways.Length][];
        private List<HeldNote>? _held;

        internal static Choice Of(IEnumerable<HeldNote> ways, double most) => new([.. ways.OrderBy(way => way.Option.Cost).ThenBy(way => way.Option.Level).ThenBy(way => way.Column.Bend)], most);

        internal HeldNote[] Ways { get; } = ways;

        internal double Most { get; } = most;

        /// <summary>
        /// Where in the list the notes are that a way would send away, its own left out; of more than may be sent away one more than that. Worked out once, as long as nobody moves.
        /// </summary>
        internal int[] Sent(int way, List<HeldNote> held)
        {
            if (!ReferenceEquals(held, _held))
            {
                Array.Clear(_sent);
                _held = held;
            }

            return _sent[way] ??= Found(Ways[way], held);
        }

        private static int[] Found(HeldNote way, List<HeldNote> held)
        {
            Span<int> found = stackalloc int[MostSent + 1];
            var count = 0;
            for (var i = 0; i < held.Count && count < found.Length; i++)
            {
                if (held[i].Disturbs(way) && held[i].Id != way.Id)
                {
                    found[count++] = i;
                }
            }

            return count == 0 ? [] : found[..count].ToArray();
        }
    }
}
