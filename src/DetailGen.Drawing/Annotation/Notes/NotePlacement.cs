using System.Globalization;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>A note in its place.</summary>
internal sealed record PlacedNote(Block Block, Column Column, double ColumnWidth, Option Option, bool Keyed, double ShortestLeader);

/// <summary>Shares the notes out among the columns, places each column at its best, makes room for what is left over, and marks with a number what has no room for words.</summary>
internal sealed class NotePlacement(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    private const double Full = 0.7;

    /// <summary>Width of the widest block, as a share of what is allowed: the rest is for need.</summary>
    private const double Usual = 0.85;

    /// <summary>What to try for a column: blocks of a width, with strict ways of leading them or with more.</summary>
    private static readonly (double Share, Reach Reach)[] Tries =
        [(Usual, Reach.Strict), (1, Reach.Strict), (0.6, Reach.Strict), (Usual, Reach.Lax), (1, Reach.Lax), (Usual, Reach.SetBack), (1, Reach.SetBack)];

    /// <summary>Widths to try for a note that looks for another place.</summary>
    private static readonly double[] Late = [Usual, 1, 0.6, 0.45];

    /// <summary>How often the notes that are left over are given numbers.</summary>
    private const int NumberRounds = 3;

    /// <summary>Words in lines shorter than this are not read at a glance, mm.</summary>
    private const double Narrowest = 22;

    private readonly Options _options = new(surface, request.View.LongestLeader, columns);
    private readonly Dictionary<(string, string, double), Block> _blocks = [];
    private readonly SortedSet<string> _lost = new(StringComparer.Ordinal);

    internal List<PlacedNote> Placed { get; } = [];

    internal List<KeyedNote> Keyed { get; } = [];

    internal double Cost { get; private set; }

    internal double Bound { get; private set; }

    internal void Place(IReadOnlyList<Note> notes)
    {
        var before = surface.Taken;
        var home = Assign(notes);
        foreach (var column in columns)
        {
            var here = notes.Where(note => home.TryGetValue(note.Id, out var id) && id == column.Id).ToList();
            PlaceColumn(column, here, home);
        }

        if (Placed.Count < notes.Count)
        {
            Repair(notes, before);
        }

        foreach (var note in notes.Where(note => !Placed.Exists(placed => placed.Block.Note.Id == note.Id)))
        {
            surface.Unplaced.Add(new("note", note.Id, _lost.Contains(note.Id) ? "Its column is full." : "No leader reaches it without a fault."));
            Keyed.Add(new(note.Id, KeyOf(note, notes), note.Words));
        }

        Keyed.Sort((one, other) => one.Key.Length != other.Key.Length ? one.Key.Length.CompareTo(other.Key.Length) : string.CompareOrdinal(one.Key, other.Key));
    }

    /// <summary>The number of a note: its reference, or one of its own where it has none.</summary>
    private static string KeyOf(Note note, IReadOnlyList<Note> notes) => note.Reference.Length > 0
        ? note.Reference
        : "N" + notes.Where(other => other.Reference.Length == 0).TakeWhile(other => other.Id != note.Id).Append(note).Count().ToString(CultureInfo.InvariantCulture);

    /// <summary>A number near its part, wherever there is white for it, on either side; cheapest first.</summary>
    private HeldNote[] Numbers(Note note, IReadOnlyList<Note> notes)
    {
        const int Enough = 200;
        var block = Block.Wrap(note with { Reference = KeyOf(note, notes), Words = "" }, request.View.NoteWidth);
        var room = surface.Zone;

        // Blocks on one bend line stand in line: the numbers of two notes have no bend line in common.
        var own = 0.2 * (notes.TakeWhile(other => other.Id != note.Id).Count() % 15);
        var ways = from bend in KeyBends(note, own)
                   from side in (int[])[1, -1]
                   let column = new Column(FormattableString.Invariant($"number {note.Id} {bend:0.0} {(side > 0 ? "right" : "left")}"), side, bend, side > 0 ? room with { Left = bend } : room with { Right = bend })
                   let options = _options.Of(block, column, block.Width, null, Reach.Lax)
                   from option in options
                   select new HeldNote(block, column, block.Width, option with { Cost = option.Cost + Weights.Number }, options.Min(other => other.Run) + Column.Shoulder);
        return [.. ways.OrderBy(way => way.Option.Cost).ThenBy(way => way.Option.Level).ThenBy(way => way.Column.Bend).Take(Enough)];
    }

    private IEnumerable<double> KeyBends(Note note, double offset)
    {
        const double Step = 3, Far = 45;
        var boxes = note.PartIds.Select(id => surface.ById[id].Box).ToArray();
        for (var bend = Math.Ceiling((boxes.Min(box => box.Left) - Far) / Step) * Step + offset; bend <= boxes.Max(box => box.Right) + Far; bend += Step)
        {
            if (bend > surface.Zone.Left && bend < surface.Zone.Right)
            {
                yield return bend;
            }
        }
    }

    /// <summary>All notes anew, from where they stand, on the paper as it was before them.</summary>
    private void Repair(IReadOnlyList<Note> notes, (int Items, int Texts, int Hard, int Tips) before)
    {
        HeldNote[] standing = [.. Placed.Select(placed => new HeldNote(placed.Block, placed.Column, placed.ColumnWidth, placed.Option, placed.ShortestLeader))];
        surface.ClearTo(before);
        _options.Forget();
        Placed.Clear();
        var widths = columns.ToDictionary(
            column => column.Id,
            column => standing.Where(one => one.Column.Id == column.Id).Select(one => one.Width).FirstOrDefault(Math.Min(column.Widest, Usual * request.View.NoteWidth)),
            StringComparer.Ordinal);
        var ways = notes.ToDictionary(
            note => note.Id, note => columns.Where(column => widths[column.Id] >= Narrowest).SelectMany(column => Ways(note, column, widths[column.Id])).ToArray(), StringComparer.Ordinal);
        var held = new NoteRepair(ways).Solve(standing);
        for (var round = 0; round < NumberRounds && held.Count < notes.Count; round++)
        {
            // What is left over now may stand as a number, and so may what that sends away.
            foreach (var note in notes.Where(note => !held.Any(one => one.Id == note.Id)))
            {
                ways[note.Id] = [.. ways[note.Id].Where(way => !IsNumber(way.Column)), .. Numbers(note, notes)];
            }

            held = new NoteRepair(ways).Solve(held);
        }

        (Cost, Bound) = (0, 0);
        foreach (var one in held.OrderBy(one => one.Id, StringComparer.Ordinal))
        {
            Draw(one.Block, one.Column, one.Width, one.Option, one.ShortestLeader, IsNumber(one.Column));
            if (IsNumber(one.Column))
            {
                Keyed.Add(new(one.Id, one.Block.Note.Reference, notes.First(note => note.Id == one.Id).Words));
            }

            Cost += one.Option.Cost;
            Bound += ways[one.Id].Select(way => way.Option.Cost).Append(one.Option.Cost).Min();
        }
    }

    private bool IsNumber(Column column) => !columns.Any(other => other.Id == column.Id);

    /// <summary>All that a note can do in a column whose blocks are as wide as given.</summary>
    private IEnumerable<HeldNote> Ways(Note note, Column column, double width)
    {
        var blocks = Late.Select(share => Wrapped(note, column, share)).Where(block => block.Width <= width + 1e-9).DistinctBy(block => block.Lines.Count);
        return from block in blocks
               let options = Find(block, column, width, Reach.SetBack)
               from option in options
               select new HeldNote(block, column, width, option, options.Min(other => other.Run) + Column.Shoulder);
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
        var options = Find(block, column, block.Width, Reach.Strict);
        options = options.Length == 0 ? Find(block, column, block.Width, Reach.SetBack) : options;
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
        var key = (note.Id, column.Id, share);
        if (!_blocks.TryGetValue(key, out var block))
        {
            block = Block.Wrap(note, Math.Min(column.Widest, share * request.View.NoteWidth));
            _blocks.Add(key, block);
        }

        return block;
    }

    private Option[] Find(Block block, Column column, double width, Reach reach) =>
        _options.Of(block, column, width, request.Earlier.FirstOrDefault(place => place.PartId == block.Note.Id), reach);

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
        foreach (var note in gone)
        {
            List<Note> more = [.. notes.Append(note).OrderBy(other => other.Id, StringComparer.Ordinal)];
            var tried = Better(column, more, trial);
            if (!ReferenceEquals(tried, trial))
            {
                (trial, notes) = (tried, more);
            }
        }

        Draw(trial);
    }

    /// <summary>The first note that cannot be led to at all from this column with its neighbours' width; −1 if none.</summary>
    private int Stuck(Column column, List<Note> notes)
    {
        var width = Math.Max(column.Least, notes.Max(note => Wrapped(note, column).Width));
        return notes.FindIndex(note => Find(Wrapped(note, column), column, width, Reach.SetBack).Length == 0);
    }

    private Trial Better(Column column, List<Note> notes, Trial before) =>
        Stuck(column, notes) < 0 && Try(column, notes) is { HasFault: false } tried ? tried : before;

    /// <summary>The notes at their best by strict options, or by all where that is not enough, or in wider or narrower blocks.</summary>
    private Trial Try(Column column, List<Note> notes)
    {
        int[] ranks = [.. notes.Select(note => EarlierRank(note, column))];
        Trial? best = null;
        foreach (var (share, reach) in Tries)
        {
            if (With(share, reach) is { } trial && (best is null || trial.Answer.Cost < best.Answer.Cost))
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

        Trial? With(double share, Reach reach)
        {
            var blocks = notes.Select(note => Wrapped(note, column, share)).ToArray();
            var width = Math.Max(column.Least, blocks.Max(block => block.Width));
            var options = blocks.Select(block => Find(block, column, width, reach)).ToArray();
            if (Array.Exists(options, one => one.Length == 0))
            {
                return null;
            }

            var search = new ColumnSearch(options, blocks, column.Side, ranks, reach == Reach.SetBack);
            return new(column, blocks, width, options, search, search.Solve());
        }
    }

    private void Draw(Trial trial)
    {
        Cost += trial.Answer.Cost;
        Bound += trial.Answer.Bound;
        for (var i = 0; i < trial.Answer.Order.Length; i++)
        {
            var note = trial.Answer.Order[i];
            Draw(trial.Blocks[note], trial.Column, trial.Width, trial.Answer.Taken[i], trial.Options[note].Min(option => option.Run) + Column.Shoulder, false);
        }
    }

    private void Draw(Block block, Column column, double width, Option option, double shortest, bool keyed)
    {
        var placed = new PlacedNote(block, column, width, option, keyed, shortest);
        Placed.Add(placed);
        NoteDrawing.Draw(surface, placed);
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

    private int EarlierRank(Note note, Column column)
    {
        var places = request.Earlier.Where(place => place.Column == column.Id).OrderByDescending(place => place.Y).ThenBy(place => place.PartId, StringComparer.Ordinal).ToList();
        return places.FindIndex(place => place.PartId == note.Id);
    }
}
