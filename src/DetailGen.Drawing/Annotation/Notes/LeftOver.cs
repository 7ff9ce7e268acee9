namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>Makes room for what the columns leave over: all notes anew from where they stand, those that find none by themselves, then as numbers.</summary>
/// <param name="notes">All notes.</param>
/// <param name="ways">What each may do in the columns, by id; those that stand where an earlier issue had them have that way alone. More is added for those in need.</param>
internal sealed class LeftOver(NoteWays all, IReadOnlyList<Column> columns, IReadOnlyList<Note> notes, Dictionary<string, HeldNote[]> ways, Disturbances disturbances)
{
    /// <summary>Steps to make room for all notes, and how many times as many to place all of them anew.</summary>
    private const int Steps = 800, Anew = 24;

    /// <summary>How often the notes that are left over are given places of their own, and how often numbers.</summary>
    private const int LooseRounds = 3, NumberRounds = 4;

    /// <summary>Whether notes stand in the columns or not at all.</summary>
    internal bool InColumnsOnly { get; init; }

    internal List<HeldNote> Held { get; private set; } = [];

    /// <summary>What those would cost at best.</summary>
    internal double Bound { get; private set; }

    private bool MoreIsWanted => Held.Count < notes.Count && !InColumnsOnly;

    /// <param name="standing">Where notes stand.</param>
    /// <param name="kept">Those of them that stay.</param>
    /// <param name="isWorth">Whether numbers are worth giving when so many notes are left over.</param>
    /// <returns>False where they are not.</returns>
    internal bool Place(List<HeldNote> standing, List<HeldNote> kept, Func<int, bool> isWorth)
    {
        var repair = new NoteRepair(ways, disturbances);
        Held = repair.Settled(repair.Solve(standing, Steps));
        for (var round = 0; round < LooseRounds && MoreIsWanted; round++)
        {
            // What is left over now may stand by itself, and so may what that sends away.
            foreach (var note in Left().Where(note => !Array.Exists(ways[note.Id], IsApart)))
            {
                ways[note.Id] = [.. ways[note.Id], .. all.Loose(note, notes)];
            }

            repair = new NoteRepair(ways, disturbances);
            Held = repair.Settled(repair.Solve(Held, Steps));
        }

        if (!isWorth(notes.Count - Held.Count))
        {
            return false;
        }

        for (var round = 0; round < NumberRounds && MoreIsWanted; round++)
        {
            // What is left over now may stand as a number, and so may what that sends away; before a note has no mark at all, so may every other.
            var isLast = round == NumberRounds - 1;
            foreach (var note in Left().Where(note => isLast || !Array.Exists(ways[note.Id], way => way.IsNumber)))
            {
                ways[note.Id] = [.. ways[note.Id], .. all.Numbers(note, notes, alongToo: isLast)];
            }

            repair = new NoteRepair(ways, disturbances, isLast ? id => Array.Exists(ways[id], way => way.IsNumber) ? [] : all.Numbers(notes.First(note => note.Id == id), notes, alongToo: false) : null);
            Held = repair.Settled(repair.Solve(Held, Steps));
        }

        // What stood in the way of a mark may do so no more where all are placed anew, or where those that stand have settled.
        foreach (var isAnew in new[] { true, false })
        {
            if (MoreIsWanted && repair.Settled(repair.Solve(isAnew ? kept : Held, isAnew ? Anew * Steps : Steps)) is var other && other.Count > Held.Count)
            {
                Held = other;
            }
        }

        Held = [.. Held.OrderBy(one => one.Id, StringComparer.Ordinal)];
        Bound = Held.Sum(one => repair.Ways(one.Id, one.Option.Cost).Select(way => way.Option.Cost).Append(one.Option.Cost).Min());
        return true;
    }

    private Note[] Left() => [.. notes.Where(note => !Held.Exists(one => one.Id == note.Id))];

    private bool IsApart(HeldNote one) => !columns.Any(other => other.Id == one.Column.Id);
}
