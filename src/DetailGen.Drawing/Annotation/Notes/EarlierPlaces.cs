namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>The places that notes had in an earlier issue of the sheet.</summary>
internal sealed class EarlierPlaces(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    private readonly IReadOnlyList<EarlierPlace> _places = request.Earlier;

    /// <summary>Levels nearer than this are the same, mm.</summary>
    private const double Same = 1e-6;

    /// <summary>The notes whose words can stand just where they stood, none of which disturbs another; of those whose leaders cannot run as they ran, the leaders go to where the parts are now.</summary>
    internal List<HeldNote> Kept(IReadOnlyList<Note> notes)
    {
        var held = new List<HeldNote>();
        if (_places.Count == 0)
        {
            return held;
        }

        // As in a first issue, where nothing is dearer for being moved.
        var first = request with { Earlier = [] };
        Keep(new(surface, first, columns, []), isSame: true);
        Keep(new(surface, first, columns, _places), isSame: false);
        return held;

        void Keep(NoteWays all, bool isSame)
        {
            foreach (var note in notes.Where(note => !held.Exists(one => one.Id == note.Id)))
            {
                if (Again(all, note, notes, isSame).FirstOrDefault(way => !held.Exists(way.Disturbs)) is { } way)
                {
                    held.Add(way);
                }
            }
        }
    }

    /// <summary>Place of a note from the top of a column; −1 where it did not stand there.</summary>
    internal int Rank(Note note, Column column) =>
        _places.Where(place => place.Column == column.Id).OrderByDescending(place => place.Y).ThenBy(place => place.PartId, StringComparer.Ordinal).ToList().FindIndex(place => place.PartId == note.Id);

    /// <param name="isSame">Whether leader and lines must be as they were.</param>
    private IEnumerable<HeldNote> Again(NoteWays all, Note note, IReadOnlyList<Note> notes, bool isSame) => _places.FirstOrDefault(place => place.PartId == note.Id) is { } place
        ? All(all, note, notes, place).Where(way =>
            way.Column.Id == place.Column && Math.Abs(way.Option.Level - place.Y) < Same && Math.Abs(way.Width - place.Width) < Same && (!isSame || IsSame(way, place)))
            .OrderBy(way => isSame ? 0 : way.Option.Cost)
        : [];

    private static bool IsSame(HeldNote way, EarlierPlace place) =>
        (way.Option.Tip - place.Tip).Length < Same && Math.Abs(way.Option.Setback - place.Setback) < Same && way.Block.Lines.Count == place.Lines;

    private IEnumerable<HeldNote> All(NoteWays all, Note note, IReadOnlyList<Note> notes, EarlierPlace place) => columns.FirstOrDefault(column => column.Id == place.Column) is { } column
        ? NoteWays.Shares.Select(share => all.Wrapped(note, column, share)).Where(block => block.Width <= place.Width + Same)
            .SelectMany(block => all.Of(block, column, place.Width, setBack: false).Concat(all.Of(block, column, place.Width, setBack: true)))
        : all.Loose(note, notes).Concat(all.Numbers(note, notes, alongToo: true));
}
