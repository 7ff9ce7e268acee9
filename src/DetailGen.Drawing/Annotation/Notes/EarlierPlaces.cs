namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>The places that notes had in an earlier issue of the sheet.</summary>
internal sealed class EarlierPlaces(Surface surface, AnnotationRequest request, IReadOnlyList<Column> columns)
{
    private readonly IReadOnlyList<EarlierPlace> _places = request.Earlier;

    private NoteWays? _ways;

    /// <summary>All that notes could do in a first issue, where nothing is dearer for being moved.</summary>
    private NoteWays Ways => _ways ??= new(surface, request with { Earlier = [] }, columns);

    /// <summary>Levels nearer than this are the same, mm.</summary>
    private const double Same = 1e-6;

    /// <summary>The notes that can stand just where they stood, none of which disturbs another.</summary>
    internal List<HeldNote> Kept(IReadOnlyList<Note> notes)
    {
        var held = new List<HeldNote>();
        foreach (var way in notes.Select(note => Again(note, notes)).OfType<HeldNote>())
        {
            if (!held.Exists(way.Disturbs))
            {
                held.Add(way);
            }
        }

        return held;
    }

    /// <summary>Place of a note from the top of a column; −1 where it did not stand there.</summary>
    internal int Rank(Note note, Column column) =>
        _places.Where(place => place.Column == column.Id).OrderByDescending(place => place.Y).ThenBy(place => place.PartId, StringComparer.Ordinal).ToList().FindIndex(place => place.PartId == note.Id);

    private HeldNote? Again(Note note, IReadOnlyList<Note> notes) => _places.FirstOrDefault(place => place.PartId == note.Id) is { } place
        ? All(note, notes, place).FirstOrDefault(way =>
            way.Column.Id == place.Column && Math.Abs(way.Option.Level - place.Y) < Same && Math.Abs(way.Width - place.Width) < Same && (way.Option.Tip - place.Tip).Length < Same)
        : null;

    private IEnumerable<HeldNote> All(Note note, IReadOnlyList<Note> notes, EarlierPlace place) => columns.FirstOrDefault(column => column.Id == place.Column) is { } column
        ? NoteWays.Shares.Select(share => Ways.Wrapped(note, column, share)).Where(block => block.Width <= place.Width + Same)
            .SelectMany(block => Ways.Of(block, column, place.Width, setBack: false).Concat(Ways.Of(block, column, place.Width, setBack: true)))
        : Ways.Loose(note, notes).Concat(Ways.Numbers(note, notes, alongToo: true));
}
