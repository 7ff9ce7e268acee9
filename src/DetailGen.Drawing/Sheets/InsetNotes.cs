using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Annotation.Notes;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using NoteColumn = DetailGen.Drawing.Annotation.Notes.Column;

namespace DetailGen.Drawing.Sheets;

/// <summary>On which sides of an inset its parts are named.</summary>
internal enum Named
{
    OnBothSides,

    /// <summary>On the roof's side.</summary>
    OnOneSide,
    Nowhere,
}

/// <summary>Names what an inset shows, by reference and name: what there is to say of a part besides stands beside the view.</summary>
internal static class InsetNotes
{
    /// <summary>From the ring to where the leaders bend.</summary>
    private const double BendOff = 3;

    /// <summary>What a leader may measure beyond the radius, mm.</summary>
    private const double Reach = 20;

    private const int RingSides = 48;

    /// <summary>What a name takes of the height beside the ring, with white, and the widest one; mm.</summary>
    private static double Each(TextSizes sizes) => sizes.ByNotes(7);

    private static double Widest(TextSizes sizes) => sizes.ByNotes(36);

    /// <summary>What the names take beside the ring, mm.</summary>
    internal static double Beside(TextSizes sizes) => BendOff + NoteColumn.Shoulder + Widest(sizes);

    /// <param name="drawn">The inset as drawn.</param>
    /// <param name="ring">Round it, in its own mm.</param>
    /// <returns>Empty where they would not stand without a fault.</returns>
    internal static IReadOnlyList<Item> Of(InsetBasis basis, DrawnView drawn, Ring ring, Named named)
    {
        var (sizes, radius, off) = (basis.Format.TextSizes, ring.Diameter / 2, ring.Diameter / 2 + BendOff);
        var beside = radius + Beside(sizes);
        var other = named == Named.OnBothSides ? beside : radius;
        var (left, right) = drawn.Mirror ? (beside, other) : (other, beside);
        PaperBox zone = new(ring.Centre.X - left, ring.Centre.Y - radius, ring.Centre.X + right, ring.Centre.Y + radius);
        var view = AnnotatedView.Of(drawn, zone, radius + Reach, Widest(sizes)) with { TextSizes = sizes };
        var request = new AnnotationRequest(basis.Section, view, ReferencesOf(basis.Section), null, []);
        var surface = new Surface(view);
        surface.Soft.AddRange(surface.PiecesOf(new(ring.Row, Ring.Corners(ring.Centre, ring.Diameter, RingSides), true))); // words keep off it, leaders cross it

        var centre = surface.Turn(ring.Centre);
        NoteColumn[] columns = [.. from side in named == Named.OnBothSides ? (int[])[1, -1] : [1] select new NoteColumn(side > 0 ? "right" : "left", side, centre.X + side * off, RoomOf(surface.Zone, centre.X + side * off, side))];
        var placement = new NotePlacement(surface, request, columns) { InColumnsOnly = true };
        placement.Place(NotesOf(request, drawn, ring.Centre, (int)(columns.Length * ring.Diameter / Each(sizes))));
        return LayoutCheck.Faults(surface.Items, request).Count == 0 ? surface.Items : [];
    }

    /// <summary>Those of the view; a part of which the view names another piece has the reference of that one.</summary>
    private static SortedDictionary<string, string> ReferencesOf(Section section)
    {
        var own = References.Of(section);
        var all = new SortedDictionary<string, string>(own.ToDictionary(), StringComparer.Ordinal);
        foreach (var part in section.Parts.Where(part => !part.IsAir && !own.ContainsKey(part.Id)))
        {
            if (section.Parts.FirstOrDefault(other => own.ContainsKey(other.Id) && other.Name == part.Name && other.Material.Id == part.Material.Id) is { } named)
            {
                all[part.Id] = own[named.Id];
            }
        }

        return all;
    }

    private static PaperBox RoomOf(PaperBox zone, double bend, int side) => side > 0 ? zone with { Left = bend } : zone with { Right = bend };

    /// <summary>One for each reference, of the parts nearest to the middle.</summary>
    private static IReadOnlyList<Note> NotesOf(AnnotationRequest request, DrawnView drawn, PaperPoint middle, int most) =>
    [
        .. drawn.Parts
            .Where(part => part.Part.Presence != Presence.Beyond && request.References.ContainsKey(part.Id))
            .GroupBy(part => request.References[part.Id], StringComparer.Ordinal)
            .Select(same => (Reference: same.Key, Parts: same.OrderBy(part => part.Id, StringComparer.Ordinal).ToArray()))
            .OrderBy(same => Math.Round(same.Parts.Min(part => part.Visible.Distance(new Point(middle.X, middle.Y))), 3)).ThenBy(same => same.Reference, StringComparer.Ordinal)
            .Take(most)
            .Select(same => new Note(
                same.Parts[0].Id, [.. same.Parts.Select(part => part.Id)], same.Reference, same.Parts[0].Part.Name, same.Parts[0].Id, same.Parts.Min(part => part.Part.BuildOrder), request.View.TextSizes))
            .OrderBy(note => note.Id, StringComparer.Ordinal),
    ];
}
