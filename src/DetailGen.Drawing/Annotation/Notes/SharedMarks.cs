using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>
/// Parts so small and so near each other that the ends of two leaders could not be told apart share one: its note tells of both, each under its own reference.
/// </summary>
internal static class SharedMarks
{
    /// <summary>Larger parts always have a place apart, mm.</summary>
    private const double Small = 3 * Options.TipsApart;

    /// <summary>Of a part farther off a mark is not seen to tell, mm.</summary>
    private const double Near = 8;

    /// <summary>Of more parts under one mark nobody tells which is which: rather a larger paper.</summary>
    private const int Most = 3;

    /// <param name="sharing">Notes that found no place by themselves: each shares a mark with the nearest other one, where a leader can end near both.</param>
    internal static IReadOnlyList<Note> Join(IReadOnlyList<Note> notes, Surface surface, IReadOnlyList<string> sharing)
    {
        var joined = Join(notes, surface);
        Shape[] bands = [.. surface.Shapes.Where(shape => shape.Look == Look.Band)];
        var tips = sharing.Count == 0 ? [] : joined.SelectMany(note => note.PartIds).ToDictionary(id => id, id => Tips.Of(surface.ById[id], bands).ConvertAll(tip => tip.At), StringComparer.Ordinal);
        foreach (var id in sharing)
        {
            var lost = joined.Find(note => note.Listed.Any(one => one.Id == id))!;
            var shared = joined.Where(other => !ReferenceEquals(other, lost)).OrderBy(other => Apart(lost, other)).ThenBy(other => other.Id, StringComparer.Ordinal)
                .Select(other => (Other: other, Both: Shared(lost, other))).FirstOrDefault(one => one.Both is not null);
            if (shared.Both is { } both)
            {
                joined[joined.IndexOf(shared.Other)] = both;
                joined.Remove(lost);
            }
        }

        return joined;

        // The leader ends near all that the mark tells of.
        Note? Shared(Note one, Note other)
        {
            var all = one.With(other);
            if (all.Listed.Count > Most)
            {
                return null;
            }

            var ends = all.PartIds.SelectMany(id => tips[id]).Where(tip => all.Listed.All(note => Ends(note).Any(far => (far - tip).Length < Near))).ToHashSet();
            return ends.Count > 0 ? all with { PartIds = [.. all.PartIds.Where(id => tips[id].Exists(ends.Contains))], Ends = ends } : null;
        }

        double Apart(Note one, Note other) => Ends(one).SelectMany(_ => Ends(other), (near, far) => (far - near).Length).Append(double.MaxValue).Min();
        IEnumerable<PaperPoint> Ends(Note note) => note.PartIds.SelectMany(id => tips[id]);
    }

    private static List<Note> Join(IReadOnlyList<Note> notes, Surface surface)
    {
        var joined = notes.ToList();
        Shape[] bands = [.. surface.Shapes.Where(shape => shape.Look == Look.Band)];
        var tips = notes.Where(note => note.Reference.Length > 0 && note.PartIds.All(id => IsSmall(surface.ById[id])))
            .ToDictionary(note => note.Id, note => note.PartIds.SelectMany(id => Tips.Of(surface.ById[id], bands)).Select(tip => tip.At).ToArray(), StringComparer.Ordinal);
        foreach (var one in notes)
        {
            var other = joined.Contains(one) && tips.TryGetValue(one.Id, out var own) && own.Length > 0
                ? joined.Find(other => !ReferenceEquals(other, one) && tips.TryGetValue(other.Id, out var its) && its.Length > 0 && own.All(tip => its.All(far => (far - tip).Length < Options.TipsApart)))
                : null;
            if (other is not null)
            {
                joined[joined.IndexOf(one)] = one.With(other);
                joined.Remove(other);
            }
        }

        return joined;
    }

    // The ends of arrows lie on a face, which is longer than it is thick.
    private static bool IsSmall(Shape shape) => shape.Look != Look.Band && shape.Box.Width < Small && shape.Box.Height < Small;
}
