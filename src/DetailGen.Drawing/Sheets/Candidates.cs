namespace DetailGen.Drawing.Sheets;

/// <summary>A sheet to try.</summary>
internal sealed record Candidate(SheetFormat Format, double Scale);

/// <summary>Which paper and scale to try, best first.</summary>
internal static class Candidates
{
    /// <summary>Standard reductions for details, largest first.</summary>
    /// <remarks>ISO 5455:1979 (series from memory).</remarks>
    internal static IReadOnlyList<double> Scales { get; } = [5, 10, 20, 50];

    private static readonly string[] Papers = ["A4", "A3", "A2", "A1"];

    /// <summary>Smaller ones are for the position of a junction; nobody reads a lap at them, so they are for what fits at no other.</summary>
    private const double SmallestLegible = 20;

    /// <summary>
    /// Sets of sheets in the order of preference: the first set of which any holds the geometry is the one to choose from.
    /// A given paper stays and the scale is chosen on it; a given scale stays as long as any paper holds it. Nothing given: A3, since that is what a detail is usually issued on.
    /// </summary>
    internal static IEnumerable<IReadOnlyList<Candidate>> For(SheetRequest request, IReadOnlyList<SheetFormat> formats)
    {
        var papers = Papers.SkipWhile(paper => paper != (request.Paper ?? "A3")).Select(paper => formats.First(format => format.Paper == paper)).ToList();
        if (request.Scale is { } given)
        {
            foreach (var scale in Scales.Where(scale => scale > given).Prepend(given))
            {
                foreach (var format in papers)
                {
                    yield return [new(format, scale)];
                }
            }

            yield break;
        }

        foreach (var legible in (bool[])[true, false])
        {
            foreach (var format in papers)
            {
                yield return [.. Scales.Where(scale => scale <= SmallestLegible == legible).Select(scale => new Candidate(format, scale))];
            }
        }
    }
}
