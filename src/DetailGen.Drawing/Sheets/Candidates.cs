namespace DetailGen.Drawing.Sheets;

/// <summary>A sheet to try.</summary>
internal sealed record Candidate(SheetFormat Format, double Scale)
{
    /// <summary>1 at a scale at which laps are not read: that weighs as much as a missing mark.</summary>
    internal int Illegible => Scale > Candidates.Detailed ? 1 : 0;
}

/// <summary>Which paper and scale to try, best first; papers that do not hold the tables are not among them.</summary>
internal static class Candidates
{
    /// <summary>Standard reductions for details, largest first.</summary>
    /// <remarks>ISO 5455:1979 (series from memory).</remarks>
    internal static IReadOnlyList<double> Scales { get; } = [5, 10, 20, 50];

    /// <summary>Each from the smallest; a detail stays in the series that its author asked for.</summary>
    private static readonly string[][] Series = [["A4", "A3", "A2", "A1"], ["ANSI-A", "ANSI-B", "ANSI-C", "ANSI-D"]];

    /// <summary>The smallest at which a lap of sheets is read; what follows shows where a junction is, and is for what fits at no larger one.</summary>
    internal const double Detailed = 10;

    /// <summary>Smaller ones are for the position of a junction only.</summary>
    private const double SmallestLegible = 20;

    /// <summary>
    /// Sets of sheets in the order of preference: the first set of which any holds the geometry is the one to choose from.
    /// A given paper stays and the scale is chosen on it; a given scale stays as long as any paper holds it. Nothing given: A3, on which a detail is usually issued, or A2 where A3 leaves no room for the words.
    /// </summary>
    /// <param name="holds">Asked of a format only when its turn comes.</param>
    internal static IEnumerable<IReadOnlyList<Candidate>> For(SheetRequest request, IReadOnlyList<SheetFormat> formats, Func<SheetFormat, bool> holds)
    {
        var asked = request.Paper ?? "A3";
        var papers = Series.First(series => series.Contains(asked)).SkipWhile(paper => paper != asked).SelectMany(paper => formats.Where(format => format.Paper == paper)).Where(holds);
        return request.Scale is { } given ? AtScale(given, papers) : request.Paper is null ? Free(papers) : OnPaper(papers);
    }

    private static IEnumerable<IReadOnlyList<Candidate>> AtScale(double given, IEnumerable<SheetFormat> papers) =>
        from scale in Scales.Where(scale => scale > given).Prepend(given)
        from format in papers
        select (IReadOnlyList<Candidate>)[new(format, scale)];

    private static IEnumerable<IReadOnlyList<Candidate>> OnPaper(IEnumerable<SheetFormat> papers) =>
        from legible in (bool[])[true, false]
        from format in papers
        select Of([format], scale => scale <= SmallestLegible == legible);

    private static IEnumerable<IReadOnlyList<Candidate>> Free(IEnumerable<SheetFormat> papers) =>
        papers.Chunk(2).Select(pair => Of(pair, scale => scale <= Detailed)).Concat(OnPaper(papers));

    private static IReadOnlyList<Candidate> Of(IReadOnlyList<SheetFormat> papers, Func<double, bool> fits) =>
        [.. from format in papers from scale in Scales where fits(scale) select new Candidate(format, scale)];
}
