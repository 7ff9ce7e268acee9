namespace DetailGen.Drawing.Annotation.Notes;

/// <summary>
/// Parts so small and so near each other that the ends of two leaders could not be told apart share one: its note tells of both, each under its own reference.
/// </summary>
internal static class SharedMarks
{
    /// <summary>Larger parts always have a place apart, mm.</summary>
    private const double Small = 3 * Options.TipsApart;

    internal static IReadOnlyList<Note> Join(IReadOnlyList<Note> notes, Surface surface)
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
