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

    /// <summary>
    /// What the author gave stands first; where it cannot hold the view the next larger sheet is tried, then the next smaller scale.
    /// Nothing given: the largest scale on A3, since that is what a detail is usually issued on.
    /// </summary>
    internal static IEnumerable<Candidate> For(SheetRequest request, IReadOnlyList<SheetFormat> formats)
    {
        var papers = Papers.SkipWhile(paper => paper != (request.Paper ?? "A3")).Select(paper => formats.First(format => format.Paper == paper)).ToList();
        if (request.Scale is { } given)
        {
            foreach (var scale in Scales.Where(scale => scale > given).Prepend(given))
            {
                foreach (var format in papers)
                {
                    yield return new(format, scale);
                }
            }

            yield break;
        }

        foreach (var format in papers)
        {
            foreach (var scale in Scales)
            {
                yield return new(format, scale);
            }
        }
    }
}
