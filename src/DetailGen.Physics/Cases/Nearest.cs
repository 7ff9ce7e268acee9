namespace DetailGen.Physics.Cases;

/// <summary>The name that was meant: the one of which some beginning takes the fewest strokes to make from what was written.</summary>
internal static class Nearest
{
    /// <summary>Null where there is nothing to choose from; the first of equals.</summary>
    internal static string? Of(string written, IEnumerable<string> names) => names.Select(name => (name, Distance: Distance(written, name))).MinBy(pair => pair.Distance).name;

    private static double Distance(string written, string name)
    {
        var row = Enumerable.Range(0, name.Length + 1).ToArray();
        for (var i = 1; i <= written.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= name.Length; j++)
            {
                var change = diagonal + (char.ToLowerInvariant(written[i - 1]) == char.ToLowerInvariant(name[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        // What is left over of the name counts little: people shorten.
        return row.Select((strokes, length) => strokes + 0.1 * (name.Length - length)).Min();
    }
}
