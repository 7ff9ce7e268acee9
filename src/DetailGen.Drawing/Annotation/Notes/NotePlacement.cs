
namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note in its place.</summary>
internal sealed record PlacedNote(Block Block, Column Column, double ColumnWidth, Option Option, bool Keyed, double ShortestLeader);

/// <summary>Shares the notes out among the columns, places each column at its best, and shortens to keys what does not fit.</summary>
internal sealed class NotePlacement(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    private const double Full = 0.7;

    /// <summary>Width of the widest block, as a share of what is allowed: the rest is for need.</summary>
    private const double Usual = 0.85;

    /// <summary>What to try for a column: blocks of a width, with strict ways of leading them or with all.</summary>
    private static readonly (double Share, bool All)[] Ways = [(Usual, false), (1, false), (0.6, false), (Usual, true), (1, true)];

    private readonly Options _options = new(surface, request.View.LongestLeader);
    private readonly Dictionary<(string, string, bool, double), Block> _blocks = [];
    private readonly SortedSet<string> _keyed = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _lost = new(StringComparer.Ordinal);

    internal List<PlacedNote> Placed { get; } = [];

    internal List<KeyedNote> Keyed { get; } = [];

    internal double Cost { get; private set; }

    internal double Bound { get; private set; }

    internal void Place(IReadOnlyList<Note> notes)
    {
        var home = Assign(notes);
        foreach (var column in columns)
        {
            var here = notes.Where(note => home.TryGetValue(note.Id, out var id) && id == column.Id).ToList();
            PlaceColumn(column, here, home);
        }

        foreach (var note in notes.Where(note => !Placed.Exists(placed => placed.Block.Note.Id == note.Id)))
        {
            surface.Unplaced.Add(new("note", note.Id, _lost.Contains(note.Id) ? "Its column is full." : "No leader reaches it without a fault."));
            Keyed.Add(new(note.Id, note.Reference, note.Words));
        }
    }

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
                var block = Wrapped(note, column);
                var share = (load[column.Id] + Block.Above + block.Below + Column.Gap) / Math.Max(1, column.Room.Height);
                var crowded = share > Full ? 400 * (share - Full) + 20 : 0;
                if (costs[i] + crowded < least - 1e-9)
                {
                    (best, least) = (i, costs[i] + crowded);
                }
            }

            if (best >= 0)
            {
                var block = Wrapped(note, columns[best]);
                load[columns[best].Id] += Block.Above + block.Below + Column.Gap;
                home.Add(note.Id, columns[best].Id);
            }
        }

        return home;
    }

    private double Cheapest(Note note, Column column)
    {
        var block = Wrapped(note, column);
        var options = Find(block, column, block.Width, false);
        return options.Length == 0 ? 2 * Weights.Fault : options[0].Cost + (Suits(note, column) ? 0 : Weights.OtherSide);
    }

    private bool Suits(Note note, Column column)
    {
        var box = note.PartIds.Select(id => surface.ById[id].Box).First();
        var (left, right) = WallFaces();
        var middle = (left + right) / 2;
        return (column.Side < 0 ? box.Left < middle : box.Right > middle)
            && ((box.Left < middle && box.Right > middle && box.Width > 0.4 * (right - left)) || column.Side < 0 == (box.Left + box.Right) / 2 < middle);
    }

    private (double Left, double Right) WallFaces()
    {
        var wall = request.Section.Buildups.FirstOrDefault(buildup => buildup.Id == "wall");
        var (a, b) = wall is null ? (surface.Drawn.Left, surface.Drawn.Right) : (surface.At(wall.At.From).X, surface.At(wall.At.To).X);
        return (Math.Min(a, b), Math.Max(a, b));
    }

    private Block Wrapped(Note note, Column column) => Wrapped(note, column, Usual);

    private Block Wrapped(Note note, Column column, double share)
    {
        var key = (note.Id, column.Id, _keyed.Contains(note.Id), share);
        if (!_blocks.TryGetValue(key, out var block))
        {
            block = Block.Wrap(key.Item3 ? note with { Words = "" } : note, Math.Min(column.Widest, share * request.View.NoteWidth));
            _blocks.Add(key, block);
        }

        return block;
    }

    private Option[] Find(Block block, Column column, double width, bool all) =>
        _options.Of(block, column, width, request.Earlier.FirstOrDefault(place => place.PartId == block.Note.Id), all);

    private sealed record Trial(Column Column, Block[] Blocks, double Width, Option[][] Options, ColumnSearch Search, ColumnAnswer Answer)
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

            if (notes.Sum(note => Block.Above + Wrapped(note, column, 1).Below) + (notes.Count - 1) * Column.Gap > column.Room.Height)
            {
                GiveWay(notes, notes.IndexOf(notes.MaxBy(note => Wrapped(note, column, 1).Lines.Count)!), column, home, gone);
                continue;
            }

            var tried = Try(column, notes);
            if (tried.HasFault)
            {
                GiveWay(notes, Worst(tried), column, home, gone);
                continue;
            }

            trial = tried;
        }

        if (trial is null)
        {
            return;
        }

        // What gave way before others did may fit after all.
        foreach (var note in notes.Where(note => _keyed.Contains(note.Id)).ToArray())
        {
            _keyed.Remove(note.Id);
            trial = Better(column, notes, trial);
            if (trial.Blocks[notes.IndexOf(note)].Note.Words.Length == 0)
            {
                _keyed.Add(note.Id);
            }
        }

        foreach (var note in gone)
        {
            List<Note> more = [.. notes.Append(note).OrderBy(other => other.Id, StringComparer.Ordinal)];
            var tried = Better(column, more, trial);
            if (!ReferenceEquals(tried, trial))
            {
                (trial, notes) = (tried, more);
            }
        }

        Draw(trial, notes);
    }

    /// <summary>The first note that cannot be led to at all from this column with its neighbours' width; −1 if none.</summary>
    private int Stuck(Column column, List<Note> notes)
    {
        var width = Math.Max(column.Least, notes.Max(note => Wrapped(note, column).Width));
        return notes.FindIndex(note => Find(Wrapped(note, column), column, width, true).Length == 0);
    }

    private Trial Better(Column column, List<Note> notes, Trial before) =>
        Stuck(column, notes) < 0 && Try(column, notes) is { HasFault: false } tried ? tried : before;

    /// <summary>The notes at their best by strict options, or by all where that is not enough, or in wider or narrower blocks.</summary>
    private Trial Try(Column column, List<Note> notes)
    {
        int[] ranks = [.. notes.Select(note => EarlierRank(note, column))];
        Trial? best = null;
        foreach (var (share, all) in Ways)
        {
            if (With(share, all) is { } trial && (best is null || trial.Answer.Cost < best.Answer.Cost))
            {
                best = trial;

                // With places of an earlier issue every way is weighed: the one that they were found by moves least.
                if (!trial.HasFault && request.Earlier.Count == 0)
                {
                    return trial;
                }
            }
        }

        return best!;

        Trial? With(double share, bool all)
        {
            var blocks = notes.Select(note => Wrapped(note, column, share)).ToArray();
            var width = Math.Max(column.Least, blocks.Max(block => block.Width));
            var options = blocks.Select(block => Find(block, column, width, all)).ToArray();
            if (Array.Exists(options, one => one.Length == 0))
            {
                return null;
            }

            var search = new ColumnSearch(options, blocks, column.Side, ranks);
            return new(column, blocks, width, options, search, search.Solve());
        }
    }

    private void Draw(Trial trial, List<Note> notes)
    {
        Cost += trial.Answer.Cost;
        Bound += trial.Answer.Bound;
        for (var i = 0; i < trial.Answer.Order.Length; i++)
        {
            var note = trial.Answer.Order[i];
            var placed = new PlacedNote(
                trial.Blocks[note], trial.Column, trial.Width, trial.Answer.Taken[i], _keyed.Contains(notes[note].Id), trial.Options[note].Min(option => option.Run) + Column.Shoulder);
            Placed.Add(placed);
            NoteDrawing.Draw(surface, placed);
            if (placed.Keyed)
            {
                Keyed.Add(new(notes[note].Id, notes[note].Reference, notes[note].Words));
            }
        }

        _options.Forget();
    }

    /// <summary>The note whose absence takes most away; of equal ones the one with the longest text.</summary>
    private static int Worst(Trial trial)
    {
        var (search, answer, blocks) = (trial.Search, trial.Answer, trial.Blocks);
        var (worst, least) = (answer.Order[0], double.MaxValue);
        for (var i = 0; i < answer.Order.Length; i++)
        {
            int[] order = [.. answer.Order[..i], .. answer.Order[(i + 1)..]];
            Option[] taken = [.. answer.Taken[..i], .. answer.Taken[(i + 1)..]];
            var left = Math.Floor(search.Judge(order, taken, answer.Main) / Weights.Fault) * 100 - blocks[answer.Order[i]].Lines.Count;
            (worst, least) = left < least ? (answer.Order[i], left) : (worst, least);
        }

        return worst;
    }

    /// <summary>A note that does not fit: to a column still to come, then to its key, then to the list.</summary>
    private void GiveWay(List<Note> notes, int index, Column column, SortedDictionary<string, string> home, List<Note> gone)
    {
        var note = notes[index];
        var later = columns.SkipWhile(other => other.Id != column.Id).Skip(1)
            .Select(other => (other.Id, Cost: Cheapest(note, other)))
            .Where(other => other.Cost < Weights.Fault).OrderBy(other => other.Cost).ThenBy(other => other.Id, StringComparer.Ordinal).ToArray();
        if (later.Length > 0 && !_keyed.Contains(note.Id))
        {
            home[note.Id] = later[0].Id;
        }
        else if (note.Reference.Length > 0 && _keyed.Add(note.Id))
        {
            return;
        }
        else
        {
            _lost.Add(note.Id);
            gone.Add(note);
        }

        notes.RemoveAt(index);
    }

    private int EarlierRank(Note note, Column column)
    {
        var places = request.Earlier.Where(place => place.Column == column.Id).OrderByDescending(place => place.Y).ThenBy(place => place.PartId, StringComparer.Ordinal).ToList();
        return places.FindIndex(place => place.PartId == note.Id);
    }
}
