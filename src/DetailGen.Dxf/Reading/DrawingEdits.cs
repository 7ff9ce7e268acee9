using DetailGen.Dxf.Writing;

namespace DetailGen.Dxf.Reading;

/// <summary>What became of an entity since issue.</summary>
public enum EditKind
{
    /// <summary>Its values differ from those that were issued.</summary>
    Changed,

    /// <summary>The whole part lies elsewhere; nothing else of it changed.</summary>
    Moved,

    /// <summary>It stands twice or more.</summary>
    Doubled,

    /// <summary>Some of what was issued is gone.</summary>
    Missing,

    /// <summary>Others drew it.</summary>
    Added,

    /// <summary>It is there, but its layer was switched off or frozen.</summary>
    Hidden,
}

/// <summary>An edit since issue.</summary>
/// <param name="Part">Id of the part, or <c>layer:</c> and a name for what belongs to none.</param>
/// <param name="Count">How many entities.</param>
/// <param name="Entities">Those that are there: none of the missing.</param>
/// <param name="By">Of what was moved, how far.</param>
public sealed record Edit(EditKind Kind, string Part, int Count, IReadOnlyList<ReadEntity> Entities, DxfPoint By);

/// <summary>Compares a drawing with what it says was issued. The digests show edits; they are no protection against forgery.</summary>
public static class DrawingEdits
{
    /// <summary>By part in ordinal order, then by kind; none where nothing was edited.</summary>
    /// <exception cref="InvalidOperationException">The drawing does not say what was issued.</exception>
    public static IReadOnlyList<Edit> Of(DxfDrawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var issued = drawing.Issued ?? throw new InvalidOperationException("The drawing does not say what was issued.");
        var sink = new CanonSink();
        var now = new Dictionary<string, List<ReadEntity>>(StringComparer.Ordinal);
        var edits = new List<Edit>();
        var added = new Dictionary<string, List<ReadEntity>>(StringComparer.Ordinal);
        foreach (var entity in drawing.Entities)
        {
            Under(entity.IssuedDigest is null ? added : now, entity).Add(entity);
        }

        foreach (var part in issued.Parts)
        {
            edits.AddRange(Of(part, now.Remove(part.Id, out var entities) ? entities : [], sink));
        }

        edits.AddRange(now.Select(rest => new Edit(EditKind.Changed, rest.Key, rest.Value.Count, rest.Value, default)));
        edits.AddRange(added.Select(rest => new Edit(EditKind.Added, rest.Key, rest.Value.Count, rest.Value, default)));
        edits.AddRange(
            from layer in drawing.HiddenLayers.Distinct(StringComparer.OrdinalIgnoreCase)
            let under = drawing.Entities.Where(entity => entity.IssuedDigest is not null && entity.Layer.Equals(layer, StringComparison.OrdinalIgnoreCase)).ToList()
            where under.Count > 0
            select new Edit(EditKind.Hidden, ContentDigest.OwnerOf(null, layer), under.Count, under, default));
        return [.. edits.OrderBy(edit => edit.Part, StringComparer.Ordinal).ThenBy(edit => edit.Kind)];
    }

    private static List<ReadEntity> Under(Dictionary<string, List<ReadEntity>> groups, ReadEntity entity)
    {
        var id = ContentDigest.OwnerOf(entity.Part, entity.Layer);
        return groups.TryGetValue(id, out var list) ? list : groups[id] = [];
    }

    private static IEnumerable<Edit> Of(IssuedPart part, List<ReadEntity> now, CanonSink sink)
    {
        var excess = now.Count - part.Count;
        var seen = new HashSet<(string, string)>();
        var doubled = excess <= 0 ? [] : now.Where(entity => !seen.Add((entity.IssuedDigest!, entity.Space))).Take(excess).ToList();
        var twice = doubled.ToHashSet<object>(ReferenceEqualityComparer.Instance);
        var changed = now.Where(entity => !twice.Contains(entity) && Digest(entity, default, sink) != entity.IssuedDigest).ToList();
        if (doubled.Count > 0)
        {
            yield return new(EditKind.Doubled, part.Id, doubled.Count, doubled, default);
        }

        if (changed.Count > 0 && changed.Count == now.Count && Moved(part, changed, sink) is { } by)
        {
            yield return new(EditKind.Moved, part.Id, changed.Count, changed, by);
        }
        else if (changed.Count > 0)
        {
            yield return new(EditKind.Changed, part.Id, changed.Count, changed, default);
        }

        if (excess < 0)
        {
            yield return new(EditKind.Missing, part.Id, -excess, [], default);
        }
    }

    // Moved back by as far as its corner went, each entity must be what was issued.
    private static DxfPoint? Moved(IssuedPart part, List<ReadEntity> now, CanonSink sink)
    {
        var corner = new CornerSink();
        foreach (var entity in now)
        {
            if (entity.Entity is null)
            {
                return null;
            }

            entity.Entity.Walk(corner);
        }

        var by = corner.Corner - part.Corner;
        return now.TrueForAll(entity => Digest(entity, by, sink) == entity.IssuedDigest) ? by : null;
    }

    private static string Digest(ReadEntity read, DxfPoint moved, CanonSink sink)
    {
        if (read.Entity is not { } entity)
        {
            return "";
        }

        try
        {
            sink.Moved = moved;
            Span<char> text = stackalloc char[Writing.Digest.ShortLetters];
            ContentDigest.Of(entity, read.Space, sink).Short(text);
            return text.ToString();
        }
        catch (ArgumentException)
        {
            return ""; // values that no issued entity has
        }
        finally
        {
            sink.Moved = default;
        }
    }
}
