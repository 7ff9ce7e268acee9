
namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note in its place.</summary>
internal sealed record PlacedNote(Block Block, Column Column, double ColumnWidth, Option Option, bool Keyed, double ShortestLeader);

/// <summary>Shares the notes out among the columns, places each column at its best, and shortens to keys what does not fit.</summary>
internal sealed class NotePlacement(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    private const double Full = 0.7;

    private readonly Options _options = new(surface, request.View.LongestLeader);
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
        var options = Find(note, Wrapped(note, column), column, Wrapped(note, column).Width);
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

    private Block Wrapped(Note note, Column column) =>
        Block.Wrap(_keyed.Contains(note.Id) ? note with { Words = "" } : note, Math.Min(column.Widest, request.View.NoteWidth));

    private Option[] Find(Note note, Block block, Column column, double width)
    {
        var earlier = request.Earlier.FirstOrDefault(place => place.PartId == note.Id);
        var strict = _options.Of(note, block, column, width, true, earlier);
        return strict.Length > 0 ? strict : _options.Of(note, block, column, width, false, earlier);
    }

    private void PlaceColumn(Column column, List<Note> notes, SortedDictionary<string, string> home)
    {
        while (notes.Count > 0)
        {
            var blocks = notes.Select(note => Wrapped(note, column)).ToArray();
            var width = blocks.Max(block => block.Width);
            var options = blocks.Select((block, i) => Find(notes[i], block, column, width)).ToArray();
            var stuck = Array.FindIndex(options, some => some.Length == 0);
            if (stuck >= 0)
            {
                GiveWay(notes, stuck, column, home);
                continue;
            }

            var search = new ColumnSearch(options, blocks, column.Side, [.. notes.Select(note => EarlierRank(note, column))]);
            var answer = search.Solve();
            if (answer.HasFault)
            {
                GiveWay(notes, Worst(search, answer, blocks), column, home);
                continue;
            }

            Cost += answer.Cost;
            Bound += answer.Bound;
            for (var i = 0; i < answer.Order.Length; i++)
            {
                var note = answer.Order[i];
                var placed = new PlacedNote(
                    blocks[note], column, width, answer.Taken[i], _keyed.Contains(notes[note].Id), options[note].Min(option => option.Run) + Column.Shoulder);
                Placed.Add(placed);
                NoteDrawing.Draw(surface, placed);
                if (placed.Keyed)
                {
                    Keyed.Add(new(notes[note].Id, notes[note].Reference, notes[note].Words));
                }
            }

            return;
        }
    }

    /// <summary>The note whose absence takes most away; of equal ones the one with the longest text.</summary>
    private static int Worst(ColumnSearch search, ColumnAnswer answer, Block[] blocks)
    {
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
    private void GiveWay(List<Note> notes, int index, Column column, SortedDictionary<string, string> home)
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
        }

        notes.RemoveAt(index);
    }

    private int EarlierRank(Note note, Column column)
    {
        var places = request.Earlier.Where(place => place.Column == column.Id).OrderByDescending(place => place.Y).ThenBy(place => place.PartId, StringComparer.Ordinal).ToList();
        return places.FindIndex(place => place.PartId == note.Id);
    }
}
