using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Parameters;

/// <summary>How far the sizes of a stock class bind.</summary>
public enum StockForce
{
    /// <summary>Sold so and no other way: units, boards, joists, sheets.</summary>
    Hard,

    /// <summary>A wish, given up last of all.</summary>
    Prefer,
}

/// <summary>Sizes that something is sold in.</summary>
/// <param name="Unit">Length or ratio.</param>
/// <param name="Sizes">In the order of the file; one measure each for a thickness, more for a format.</param>
public sealed record StockClass(string Id, StockForce Force, Unit Unit, IReadOnlyList<StockSize> Sizes, string Meaning, Source Source, string? Note, Mark At)
{
    /// <summary>The sizes with one measure, rising; micrometres, or n.</summary>
    public IReadOnlyList<long> Values => [.. Sizes.Where(size => size.Measures.Count == 1).Select(size => size.Measures[0]).Distinct().Order()];
}

/// <summary>One size that is sold.</summary>
/// <param name="Name">As the trade calls it, such as a code of sheet metal; null for most.</param>
/// <param name="Measures">Micrometres, or n.</param>
public sealed record StockSize(string? Name, IReadOnlyList<long> Measures);
