using System.Globalization;
using System.Runtime.InteropServices;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>All that notes might do on the paper as it was before them: as words in a column, or as a number near their part. Each is made once.</summary>
/// <param name="stood">Where notes stood in an earlier issue: leaders from there are looked at too.</param>
internal sealed class NoteWays(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns, IReadOnlyList<EarlierPlace> stood)
{
    /// <summary>Width of the widest block, as a share of what is allowed: the rest is for need.</summary>
    internal const double Usual = 0.85;

    /// <summary>Widths to try for a note that looks for another place.</summary>
    internal static readonly double[] Shares = [Usual, 1, 0.6, 0.45];

    private readonly Options _options = new(surface, request.View.LongestLeader, columns, WallFaces(surface, request), stood);
    private readonly Dictionary<(string, double), Block> _blocks = [];

    // Kept between the calls.
    private readonly List<(double Cost, double Level, int Column, int Block, int At)> _anywhere = [];
    private readonly Dictionary<(string, string, int, double, bool), HeldNote[]> _ways = [];
    private readonly Dictionary<string, Lone> _loose = new(StringComparer.Ordinal);

    private static (double Left, double Right) WallFaces(Surface surface, AnnotationRequest request)
    {
        var wall = request.Section.Buildups.FirstOrDefault(buildup => buildup.Id == "wall");
        var (a, b) = wall is null ? (surface.Drawn.Left, surface.Drawn.Left) : (surface.At(wall.At.From).X, surface.At(wall.At.To).X);
        return (Math.Min(a, b), Math.Max(a, b));
    }

    /// <summary>The number of a note: its reference, or one of its own where it has none.</summary>
    internal static string KeyOf(Note note, IReadOnlyList<Note> notes)
    {
        return string.Join(", ", note.Listed.Select(one => one.Reference.Length > 0 ? one.Reference : "N" + (1 + Before(one)).ToString(CultureInfo.InvariantCulture)));

        int Before(Note one) => notes.SelectMany(other => other.Listed).Count(other => other.Reference.Length == 0 && string.CompareOrdinal(other.Id, one.Id) < 0);
    }

    /// <summary>A number near its part, wherever there is white for it, on either side; cheapest first.</summary>
    /// <param name="alongToo">Whether its leader may run along lines of the drawing.</param>
    internal HeldNote[] Numbers(Note note, IReadOnlyList<Note> notes, bool alongToo) =>
        Anywhere(ByItself(note, notes, [Block.Wrap(note.Numbered(KeyOf(note, notes)), request.View.NoteWidth)], alongToo), Weights.Number, double.MaxValue);

    /// <summary>The words in a place of their own, wherever there is white for them, on either side; cheapest first.</summary>
    /// <param name="most">Dearer ones are of no use.</param>
    internal HeldNote[] Loose(Note note, IReadOnlyList<Note> notes, double most = double.MaxValue)
    {
        if (most < Weights.Loose)
        {
            return [];
        }

        if (!_loose.TryGetValue(note.Id, out var lone))
        {
            var blocks = Shares.Select(share => Wrapped(note, share * request.View.NoteWidth)).DistinctBy(block => block.Lines.Count);
            _loose.Add(note.Id, lone = ByItself(note, notes, [.. blocks], alongToo: false));
        }

        return Anywhere(lone, Weights.Loose, most);
    }

    private Lone ByItself(Note note, IReadOnlyList<Note> notes, Block[] blocks, bool alongToo)
    {
        // Blocks on one bend line stand in line: two notes that stand by themselves have no bend line in common.
        var own = 0.2 * (notes.TakeWhile(other => other.Id != note.Id).Count() % 15);
        var (room, bends) = (surface.Zone, Bends(note, own).ToArray());
        Column[] columns =
        [
            .. bends.Select(bend => new Column(FormattableString.Invariant($"own {note.Id} {bend:0.0} right"), 1, bend, room with { Left = bend })),
            .. bends.Select(bend => new Column(FormattableString.Invariant($"own {note.Id} {bend:0.0} left"), -1, bend, room with { Right = bend })),
        ];
        return new(blocks, columns, _options.Alone(blocks, columns, EarlierOf(note), alongToo));
    }

    private HeldNote[] Anywhere(Lone lone, double weight, double most)
    {
        const int Enough = 300, EachCell = 3;
        const double Cell = 8;
        var (blocks, columns, all) = (lone.Blocks, lone.Columns, _anywhere);
        var options = new Option[columns.Length, blocks.Length][];
        all.Clear();
        for (var i = 0; i < columns.Length; i++)
        {
            for (var block = 0; block < blocks.Length; block++)
            {
                var here = options[i, block] = _options.Of(lone.Leaders[i], blocks[block], columns[i], most - weight);
                for (var at = 0; at < here.Length; at++)
                {
                    all.Add((here[at].Cost, here[at].Level, i, block, at));
                }
            }
        }

        // The cheapest of every region of the paper: the very cheapest all lie side by side, where other notes stand as well.
        all.Sort(ByCost);
        var taken = new Dictionary<(int, int, int), int>();
        var ways = new List<HeldNote>(Math.Min(all.Count, Enough));
        var shortest = new double[columns.Length, blocks.Length];
        foreach (var (cost, level, i, block, at) in all)
        {
            if (ways.Count == Enough || cost + weight > most)
            {
                break;
            }

            var column = columns[i];
            ref var count = ref CollectionsMarshal.GetValueRefOrAddDefault(taken, (column.Side, (int)Math.Floor(column.Bend / Cell), (int)Math.Floor(level / Cell)), out _);
            if (++count <= EachCell)
            {
                ref var least = ref shortest[i, block];
                least = least == 0 ? options[i, block].Min(other => other.Run) + Column.Shoulder : least;
                ways.Add(new(blocks[block], column, blocks[block].Width, options[i, block][at] with { Cost = cost + weight }, least));
            }
        }

        return [.. ways];

        int ByCost((double Cost, double Level, int Column, int Block, int At) one, (double Cost, double Level, int Column, int Block, int At) other)
        {
            var by = one.Cost.CompareTo(other.Cost);
            by = by == 0 ? one.Level.CompareTo(other.Level) : by;
            by = by == 0 ? columns[one.Column].Bend.CompareTo(columns[other.Column].Bend) : by;
            by = by == 0 ? one.Column.CompareTo(other.Column) : by;
            return by == 0 ? one.Block.CompareTo(other.Block) : by;
        }
    }

    private IEnumerable<double> Bends(Note note, double offset)
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

    private EarlierPlace? EarlierOf(Note note) => request.Earlier.FirstOrDefault(place => place.PartId == note.Id);

    internal Block Wrapped(Note note, Column column) => Wrapped(note, column, Usual);

    internal Block Wrapped(Note note, Column column, double share) => Wrapped(note, Math.Min(column.Widest, share * request.View.NoteWidth));

    private Block Wrapped(Note note, double width)
    {
        if (!_blocks.TryGetValue((note.Id, width), out var block))
        {
            block = Block.Wrap(note, width);
            _blocks.Add((note.Id, width), block);
        }

        return block;
    }

    /// <summary>All that a note can do in a column whose blocks are as wide as given.</summary>
    internal IEnumerable<HeldNote> Within(Note note, Column column, double width)
    {
        var blocks = Shares.Select(share => Wrapped(note, column, share)).Where(block => block.Width <= width + 1e-9).DistinctBy(block => block.Lines.Count);
        return blocks.SelectMany(block => Of(block, column, width, true));
    }

    /// <summary>All that a block can do in a column on the paper as it was before the notes, cheapest first.</summary>
    /// <param name="width">Of the column's widest block.</param>
    internal HeldNote[] Of(Block block, Column column, double width, bool setBack)
    {
        var key = (block.Note.Id, column.Id, block.Lines.Count, width, setBack);
        if (!_ways.TryGetValue(key, out var ways))
        {
            var options = _options.Of(block, column, width, EarlierOf(block.Note), setBack);
            var shortest = options.Select(option => option.Run).DefaultIfEmpty(0).Min() + Column.Shoulder;
            ways = Array.ConvertAll(options, option => new HeldNote(block, column, width, option, shortest));
            _ways.Add(key, ways);
        }

        return ways;
    }

    /// <summary>A note by itself: its blocks, columns of its own, and for each of these the leaders wherever there is room.</summary>
    private sealed record Lone(Block[] Blocks, Column[] Columns, LoneLeader[][] Leaders);
}
