using System.Globalization;
using DetailGen.Sections;

namespace DetailGen.Drawing.Annotation;

/// <summary>One line of a stack note, with the place where the stem meets its layer.</summary>
/// <param name="Near">Where the stem enters the layer, seen from outside or from the top.</param>
internal sealed record StackLine(string PartId, string Reference, string Words, double Near, double Far)
{
    internal double Middle => (Near + Far) / 2;

    internal double Thickness => Math.Abs(Far - Near);
}

/// <summary>How much of a layer's note a line of the stack says: all of it, what stands before its first semicolon, thickness and name, nothing.</summary>
internal enum Brevity
{
    All,
    First,
    Name,
    Reference,
}

/// <summary>The layers that a stem meets, with what a line says of each.</summary>
internal sealed class StackLines(Surface surface, AnnotationRequest request)
{
    // The same are asked for at hundreds of places.
    private readonly Dictionary<string, Shape[]> _pieces = new(StringComparer.Ordinal);
    private readonly Dictionary<(string, double), List<(Layer Layer, double Near, double Far)>> _crossed = [];

    /// <summary>The layers as the stem meets them.</summary>
    internal List<StackLine> Crossed(Buildup buildup, double station, bool level, Brevity brevity) =>
        Crossed(buildup, station, level).ConvertAll(one => new StackLine(one.Layer.PartId, one.Layer.Reference, Words(one.Layer, brevity), one.Near, one.Far));

    /// <summary>From the left or from the top; a part that several layers name counts once.</summary>
    private List<(Layer Layer, double Near, double Far)> Crossed(Buildup buildup, double station, bool level)
    {
        if (_crossed.TryGetValue((buildup.Id, station), out var known))
        {
            return known;
        }

        var found = new List<(Layer Layer, double Near, double Far)>();
        foreach (var layer in buildup.Layers)
        {
            if (!surface.ById.ContainsKey(layer.PartId) || found.Exists(one => one.Layer.PartId == layer.PartId))
            {
                continue;
            }

            // A layer is laid in boards, and what stands in a void parts it: the stem goes through the one that is there.
            var spans = PiecesOf(layer.PartId).SelectMany(shape => shape.Spans(station + 0.0137, level)).ToArray();
            if (spans.Length == 0)
            {
                continue;
            }

            var span = spans.MaxBy(one => one.To - one.From);
            var (near, far) = level ? span : (span.To, span.From);
            found.Add((layer, near, far));
        }

        known = level ? [.. found.OrderBy(one => (one.Near + one.Far) / 2)] : [.. found.OrderByDescending(one => (one.Near + one.Far) / 2)];
        _crossed.Add((buildup.Id, station), known);
        return known;
    }

    /// <summary>A part and its further pieces, which are numbered after it.</summary>
    internal Shape[] PiecesOf(string partId)
    {
        if (!_pieces.TryGetValue(partId, out var pieces))
        {
            pieces = [.. surface.Shapes.Where(shape => shape.Id == partId || (shape.Id.StartsWith(partId + ".", StringComparison.Ordinal) && shape.Id.AsSpan(partId.Length + 1).IndexOfAnyExceptInRange('0', '9') < 0))];
            _pieces.Add(partId, pieces);
        }

        return pieces;
    }

    internal string Words(Layer layer, Brevity brevity)
    {
        if (brevity == Brevity.Reference)
        {
            return "";
        }

        if (brevity == Brevity.Name && layer.Shortest.Length > 0)
        {
            return layer.Shortest;
        }

        var part = request.Section.Parts.FirstOrDefault(part => part.Id == layer.PartId);
        if (brevity == Brevity.Name || part is not { Words.Note.Length: > 0 })
        {
            var told = brevity == Brevity.Name || layer.Told.Length == 0 ? Small(layer.Element) : layer.Told;
            return layer.Thickness >= Dimensions.Rounding.Thin
                ? $"{Dimensions.Rounding.Nearest(layer.Thickness).ToString("0.#", CultureInfo.InvariantCulture)} mm {told}"
                : brevity == Brevity.All ? $"{Great(told)}, {layer.Thickness.ToString("0.##", CultureInfo.InvariantCulture)} mm" : Great(told);
        }

        var words = part.Words.Note;
        return brevity == Brevity.First || surface.Sizes.Typeface.Width(words, surface.Sizes.Notes) > request.View.NoteWidth ? words.Split(';')[0] : words;
    }

    private static string Great(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Small(string words) => char.ToLowerInvariant(words[0]) + words[1..];
}
