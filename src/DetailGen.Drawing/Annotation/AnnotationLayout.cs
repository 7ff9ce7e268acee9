using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation;

/// <summary>A note that did not fit beside the view: on the view stands its key, the words go to a list.</summary>
public sealed record KeyedNote(string PartId, string Key, string Words)
{
    /// <summary>As a reader looks for them: by letter, then by number.</summary>
    internal static IReadOnlyList<KeyedNote> InOrder(IEnumerable<KeyedNote> notes) =>
        [.. notes.OrderBy(note => note.Key.TrimEnd(Digits), StringComparer.Ordinal).ThenBy(note => note.Key.Length).ThenBy(note => note.Key, StringComparer.Ordinal)];

    private static char[] Digits => ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'];
}

/// <summary>Something that could not be placed without a fault.</summary>
/// <param name="What">note, dimension, level, fall, label or stack.</param>
public sealed record Unplaced(string What, string Id, string Reason);

/// <summary>Figures of a layout by which it can be judged; lengths in mm, areas in mm².</summary>
/// <param name="Crossings">Of leaders with leaders, texts, dimension and level lines.</param>
/// <param name="Overlaps">Pairs of texts, or of a text and a foreign line or fill, that overlap.</param>
/// <param name="LeaderBound">Sum over the notes of the shortest admissible leader if there were no other note.</param>
/// <param name="Ratio">Total over bound; 1 without notes.</param>
/// <param name="Angles">Most different angles in one column.</param>
/// <param name="ColumnFill">Note area over column area, by column id.</param>
/// <param name="Bound">A cost that no layout with these columns and wraps can beat.</param>
/// <param name="Proved">True where cost equals bound.</param>
public sealed record LayoutReport(
    int Crossings, int Overlaps, double OverlapArea, double MinTextGap, double LeaderTotal, double LeaderBound, double Ratio, double LeaderMax, int Bends,
    int Angles, int ParallelToFill, double MinTipClearance, int RankInversions, IReadOnlyList<(string Column, double Share)> ColumnFill, double FreeSpace,
    double Cost, double Bound, bool Proved, int Notes, int Faults);

/// <summary>Annotation in its place.</summary>
/// <param name="Items">In paper mm of the view, in the order of drawing.</param>
/// <param name="Bounds">Around the drawing and all items.</param>
/// <param name="Places">To hand to the next issue's layout.</param>
public sealed record AnnotationLayout(
    IReadOnlyList<Item> Items, PaperBox Bounds, LayoutReport Report, IReadOnlyList<KeyedNote> Keyed, IReadOnlyList<Unplaced> Unplaced,
    IReadOnlyList<EarlierPlace> Places, IReadOnlyList<LayoutFault> Faults)
{
    /// <summary>Marks that are missing or faulty.</summary>
    internal int Missing => Unplaced.Count + Faults.Count;

    internal int Lacking => Lack(Missing, Keyed.Count);

    /// <summary>What a reader lacks: a mark that is missing or faulty weighs as much as ten notes that are listed elsewhere.</summary>
    internal static int Lack(int missing, int keyed) => 10 * missing + keyed;
}
