namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note in its place.</summary>
internal sealed record PlacedNote(Block Block, Column Column, double ColumnWidth, Option Option, bool Keyed, double ShortestLeader);

/// <summary>Shares the notes out among the columns, places each column at its best, makes room for what is left over, and marks with a number what has no room for words.</summary>
internal sealed class NotePlacement(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    /// <summary>What is told of a note without a place.</summary>
    internal const string What = "note";

    private const double Full = 0.7;

    /// <summary>What to try for a column: blocks of a width, with strict ways of leading them or with more.</summary>
    private static readonly (double Share, Reach Reach)[] Tries =
        [(NoteWays.Usual, Reach.Strict), (1, Reach.Strict), (0.6, Reach.Strict), (NoteWays.Usual, Reach.Lax), (1, Reach.Lax), (NoteWays.Usual, Reach.SetBack), (1, Reach.SetBack)];

    /// <summary>What holds most: where the notes do not fit so, nothing else need be tried.</summary>
    private static readonly (double Share, Reach Reach)[] Roomiest = [(NoteWays.Usual, Reach.SetBack), (1, Reach.SetBack)];

    /// <summary>Steps to see whether the notes of one column fit.</summary>
    private const int FitSteps = 100;

    /// <summary>Words in lines shorter than this are not read at a glance, mm.</summary>
    private const double Narrowest = 22;

    private readonly NoteWays _all = new(surface, request, columns, request.Earlier);
    private readonly Dictionary<(string, string, int, double, Reach), HeldNote[]> _open = [];
    private readonly EarlierPlaces _earlier = new(surface, request, columns);
    private readonly Disturbances _disturbances = new();
    private List<HeldNote> _held = [];
    private List<HeldNote> _kept = [];
    private readonly SortedSet<string> _lost = new(StringComparer.Ordinal);

    /// <summary>Whether notes stand in the columns or not at all.</summary>
    internal bool InColumnsOnly { get; init; }

    internal List<PlacedNote> Placed { get; } = [];

    internal List<KeyedNote> Keyed { get; } = [];

    internal double Cost { get; private set; }

    internal double Bound { get; private set; }

    /// <param name="toBeat">What another sheet lacks (<see cref="AnnotationLayout.Lack"/>): the work is broken off where as much is left over before numbers are given.</param>
    /// <returns>False where it was broken off; nothing is drawn then.</returns>
    internal bool Place(IReadOnlyList<Note> notes, int toBeat = int.MaxValue)
    {
        _kept = _earlier.Kept(notes);
        _held = [.. _kept];
        Cost = Bound = _held.Sum(one => one.Option.Cost);
        Note[] open = [.. notes.Where(note => !_held.Exists(one => one.Id == note.Id))];
        var home = Assign(open);
        foreach (var column in columns)
        {
            var here = open.Where(note => home.TryGetValue(note.Id, out var id) && id == column.Id).ToList();
            PlaceColumn(column, here, home);
        }

        if (_held.Count < notes.Count && !Repair(notes, toBeat))
        {
            return false;
        }

        Better(notes);
        foreach (var one in _held)
        {
            Draw(one, notes);
        }

        foreach (var note in notes.Where(note => !_held.Exists(one => one.Id == note.Id)))
        {
            surface.Unplaced.Add(new(What, note.Id, _lost.Contains(note.Id) ? "Its column is full." : "No leader reaches it without a fault."));
            Keyed.AddRange(Listed(note, notes));
        }

        return true;
    }

    private void Draw(HeldNote one, IReadOnlyList<Note> notes)
    {
        var placed = new PlacedNote(one.Block, one.Column, one.Width, one.Option, one.IsNumber, one.ShortestLeader);
        Placed.Add(placed);
        NoteDrawing.Draw(surface, placed);
        if (placed.Keyed)
        {
            Keyed.AddRange(Listed(notes.First(note => note.Id == one.Id), notes));
        }
    }

    private static IEnumerable<KeyedNote> Listed(Note note, IReadOnlyList<Note> notes) => note.Listed.Select(one => new KeyedNote(one.Id, NoteWays.KeyOf(one, notes), one.Words));

    /// <returns>False where as much is left over as another sheet lacks.</returns>
    private bool Repair(IReadOnlyList<Note> notes, int toBeat)
    {
        var widths = columns.ToDictionary(column => column.Id, WidthOf, StringComparer.Ordinal);
        var ways = notes.ToDictionary(
            note => note.Id, note => _kept.Find(one => one.Id == note.Id) is { } stays ? [stays] : columns.Where(column => widths[column.Id] >= Narrowest).SelectMany(column => _all.Within(note, column, widths[column.Id])).ToArray(), StringComparer.Ordinal);
        var rest = new LeftOver(_all, columns, notes, ways, _disturbances) { InColumnsOnly = InColumnsOnly };
        if (!rest.Place(_held, _kept, left => AnnotationLayout.Lack(surface.Unplaced.Count, left) < toBeat))
        {
            return false;
        }

        (_held, Bound) = (rest.Held, rest.Bound);
        Cost = _held.Sum(one => one.Option.Cost);
        return true;
    }

    /// <summary>Notes that stand dearly, as with a leader over many parts, to better places: in whatever column, else by themselves.</summary>
    private void Better(IReadOnlyList<Note> notes)
    {
        if (request.Earlier.Count > 0)
        {
            return; // they stay where they were
        }

        var exchange = new NoteExchange(
            id => columns.SelectMany(column => _all.Within(notes.First(note => note.Id == id), column, WidthOf(column))), (id, most) => InColumnsOnly ? [] : _all.Loose(notes.First(note => note.Id == id), notes, most));
        (_held, var gain, var slack) = exchange.Bettered(_held);
        (Cost, Bound) = (Cost - gain, Bound - slack);
    }

    /// <summary>Of the blocks that stand in a column; of an empty one, what is usual.</summary>
    private double WidthOf(Column column) =>
        _held.Where(one => one.Column.Id == column.Id).Select(one => one.Width).FirstOrDefault(Math.Min(column.Widest, NoteWays.Usual * request.View.NoteWidth));

    /// <summary>Each note to the column that leads to it most cheaply, the wrong side of the wall counted, columns not overfilled.</summary>
    private SortedDictionary<string, string> Assign(IReadOnlyList<Note> notes)
    {
        var home = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var load = columns.ToDictionary(column => column.Id, _ => 0.0, StringComparer.Ordinal);
        var choices = notes.Select(note => (Note: note, Costs: columns.Select(column => Cheapest(note, column)).ToArray())).ToArray();

        // Those with the least choice first.
        foreach (var (note, costs) in choices.OrderBy(choice => choice.Costs.Count(cost => cost < Weights.Fault)).ThenBy(choice => choice.Note.Id, StringComparer.Ordinal))
        {
            var best = -1;
            var least = Weights.Fault;
            for (var i = 0; i < columns.Count; i++)
            {
                var column = columns[i];
                var block = _all.Wrapped(note, column);
                var share = (load[column.Id] + block.Above + block.Below + Column.Gap) / Math.Max(1, column.Room.Height);
                var crowded = share > Full ? 400 * (share - Full) + 20 : 0;
                if (costs[i] + crowded < least - 1e-9)
                {
                    (best, least) = (i, costs[i] + crowded);
                }
            }

            if (best >= 0)
            {
                var block = _all.Wrapped(note, columns[best]);
                load[columns[best].Id] += block.Above + block.Below + Column.Gap;
                home.Add(note.Id, columns[best].Id);
            }
        }

        return home;
    }

    private double Cheapest(Note note, Column column)
    {
        var block = _all.Wrapped(note, column);
        var ways = Open(block, column, block.Width, Reach.Strict);
        ways = ways.Length == 0 ? Open(block, column, block.Width, Reach.SetBack) : ways;
        return ways.Length == 0 ? 2 * Weights.Fault : ways[0].Option.Cost;
    }

    /// <summary>What the notes that stand leave of it; strict ways alone where there are any, unless more are wanted.</summary>
    private HeldNote[] Open(Block block, Column column, double width, Reach reach)
    {
        if (block.Width > width + 1e-9)
        {
            return [];
        }

        var key = (block.Note.Id, column.Id, block.Lines.Count, width, reach);
        if (!_open.TryGetValue(key, out var open))
        {
            open = _disturbances.Undisturbed(_all.Of(block, column, width, reach == Reach.SetBack), _held);
            open = reach == Reach.Strict && Array.Exists(open, way => way.Option.Strict) ? Array.FindAll(open, way => way.Option.Strict) : open;
            _open.Add(key, open);
        }

        return open;
    }

    private sealed record Trial(HeldNote[][] Ways, ColumnSearch Search, ColumnAnswer Answer)
    {
        internal bool HasFault => Answer.HasFault;
    }

    private void PlaceColumn(Column column, List<Note> notes, SortedDictionary<string, string> home)
    {
        var gone = new List<Note>();
        Trial? trial = null;
        while (notes.Count > 0 && trial is null)
        {
            if (Stuck(column, notes) is >= 0 and var stuck)
            {
                GiveWay(notes, stuck, column, home, gone);
                continue;
            }

            if (notes.Select(note => _all.Wrapped(note, column, 1)).Sum(block => block.Above + block.Below) + (notes.Count - 1) * Column.Gap > column.Room.Height)
            {
                GiveWay(notes, notes.IndexOf(notes.MaxBy(note => _all.Wrapped(note, column, 1).Lines.Count)!), column, home, gone);
                continue;
            }

            var tried = Try(column, notes, out var left);
            if (tried is null or { HasFault: true })
            {
                GiveWay(notes, tried is null ? left : Worst(tried), column, home, gone);
                continue;
            }

            trial = tried;
        }

        if (trial is null)
        {
            return;
        }

        // What gave way before others did may fit after all.
        foreach (var note in gone)
        {
            List<Note> more = [.. notes.Append(note).OrderBy(other => other.Id, StringComparer.Ordinal)];
            var tried = Better(column, more, trial);
            if (!ReferenceEquals(tried, trial))
            {
                (trial, notes) = (tried, more);
            }
        }

        Cost += trial.Answer.Cost;
        Bound += trial.Answer.Bound;
        _held.AddRange(trial.Answer.Order.Select((note, at) => trial.Ways[note].First(way => way.Option == trial.Answer.Taken[at])));
        _open.Clear();
    }

    /// <summary>The first note that cannot be led to at all from this column with its neighbours' width; −1 if none.</summary>
    private int Stuck(Column column, List<Note> notes)
    {
        var width = CommonWidth(column, notes.Select(note => _all.Wrapped(note, column)));
        return notes.FindIndex(note => Open(_all.Wrapped(note, column), column, width, Reach.Lax).Length == 0 && Open(_all.Wrapped(note, column), column, width, Reach.SetBack).Length == 0);
    }

    /// <summary>Of the widest block; of those that stand in the column already, where there are any, for all must begin in line.</summary>
    private double CommonWidth(Column column, IEnumerable<Block> blocks) =>
        _held.Where(one => one.Column.Id == column.Id).Select(one => one.Width).FirstOrDefault(Math.Max(column.Least, blocks.Max(block => block.Width)));

    private Trial Better(Column column, List<Note> notes, Trial before) =>
        Stuck(column, notes) < 0 && Try(column, notes, out _) is { HasFault: false } tried ? tried : before;

    /// <summary>The notes at their best by strict options, or by all where that is not enough, or in wider or narrower blocks; null where they cannot be seen to fit at all.</summary>
    /// <param name="left">A note for which no room was found beside the others, where they do not fit.</param>
    private Trial? Try(Column column, List<Note> notes, out int left)
    {
        int[] ranks = [.. notes.Select(note => _earlier.Rank(note, column))];
        Trial? best = null;
        left = 0;
        foreach (var how in Tries)
        {
            // Whether they fit at all is soon seen; only then is it worth looking for the best.
            if (Fit(column, notes, how) is not { } fit || fit.Places.Count < notes.Count)
            {
                if (how == Tries[0] && Fits(column, notes, Roomiest) is { } most && most.Count < notes.Count)
                {
                    left = LongestLeftOver(notes, most, column);
                    return null;
                }

                continue;
            }

            var search = new ColumnSearch(Array.ConvertAll(fit.Ways, one => Array.ConvertAll(one, way => way.Option)), Array.ConvertAll(fit.Ways, one => one[0].Block), column.Side, ranks);
            var trial = new Trial(fit.Ways, search, search.Solve([.. notes.Select(note => fit.Places.First(one => one.Id == note.Id).Option)]));
            if (best is null || trial.Answer.Cost < best.Answer.Cost)
            {
                best = trial;

                // With places of an earlier issue every way is weighed: the one that they were found by moves least.
                if (!trial.HasFault && request.Earlier.Count == 0)
                {
                    return trial;
                }
            }
        }

        return best;
    }

    private List<HeldNote> Fits(Column column, List<Note> notes, (double Share, Reach Reach)[] tries)
    {
        List<HeldNote> most = [];
        foreach (var how in tries)
        {
            most = Fit(column, notes, how) is { } fit && fit.Places.Count > most.Count ? fit.Places : most;
            if (most.Count == notes.Count)
            {
                break;
            }
        }

        return most;
    }

    /// <summary>All ways of the notes in blocks of that width, and as many of their places as can stand together; null where a note has no way at all.</summary>
    private (HeldNote[][] Ways, List<HeldNote> Places)? Fit(Column column, List<Note> notes, (double Share, Reach Reach) how)
    {
        var blocks = notes.Select(note => _all.Wrapped(note, column, how.Share)).ToArray();
        var width = CommonWidth(column, blocks);
        var ways = Array.ConvertAll(blocks, block => Open(block, column, width, how.Reach));
        return Array.Exists(ways, one => one.Length == 0) ? null : (ways, new NoteRepair(ways.ToDictionary(one => one[0].Id, StringComparer.Ordinal), _disturbances).Solve([], FitSteps));
    }

    private int LongestLeftOver(List<Note> notes, List<HeldNote> fit, Column column) =>
        notes.IndexOf(notes.Where(note => !fit.Exists(one => one.Id == note.Id)).MaxBy(note => _all.Wrapped(note, column).Lines.Count)!);

    /// <summary>The note whose absence takes most away; of equal ones the one with the longest text.</summary>
    private static int Worst(Trial trial)
    {
        var (search, answer) = (trial.Search, trial.Answer);
        var (worst, least) = (answer.Order[0], double.MaxValue);
        for (var i = 0; i < answer.Order.Length; i++)
        {
            var left = Math.Floor(search.Judge([.. answer.Order[..i], .. answer.Order[(i + 1)..]], [.. answer.Taken[..i], .. answer.Taken[(i + 1)..]], answer.Main) / Weights.Fault) * 100 - trial.Ways[answer.Order[i]][0].Block.Lines.Count;
            (worst, least) = left < least ? (answer.Order[i], left) : (worst, least);
        }

        return worst;
    }

    /// <summary>A note that does not fit: to a column still to come, or to those for which room must be made.</summary>
    private void GiveWay(List<Note> notes, int index, Column column, SortedDictionary<string, string> home, List<Note> gone)
    {
        var note = notes[index];
        var later = columns.SkipWhile(other => other.Id != column.Id).Skip(1)
            .Select(other => (other.Id, Cost: Cheapest(note, other)))
            .Where(other => other.Cost < Weights.Fault).OrderBy(other => other.Cost).ThenBy(other => other.Id, StringComparer.Ordinal).ToArray();
        if (later.Length > 0)
        {
            home[note.Id] = later[0].Id;
        }
        else
        {
            _lost.Add(note.Id);
            gone.Add(note);
        }

        notes.RemoveAt(index);
    }
}
