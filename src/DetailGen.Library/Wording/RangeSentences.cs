using System.Globalization;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Wording;

/// <summary>A range in sentences: what a value could be instead, and what stops it.</summary>
internal static class RangeSentences
{
    private const int MostPieces = 8;
    private const int MostToldInFull = 3;

    /// <param name="stop">What stands behind the name of a stop.</param>
    internal static IEnumerable<string> Of(ValueRangeReport range, Func<string, string> stop)
    {
        if (range.Options is { } options)
        {
            yield return $"While the rest stands it can be {string.Join(", ", options)}.";
            foreach (var (word, stops) in range.Excluded ?? [])
            {
                yield return $"Against {word}: {string.Join("; ", stops.Select(stop))}.";
            }

            yield break;
        }

        if (!range.Proven)
        {
            yield break;
        }

        var pieces = range.Values!.Select(piece => piece[0] == piece[1] ? Text(piece[0], range) : $"{Text(piece[0], range)} to {Text(piece[1], range)}").ToList();
        yield return pieces is [_] && range.Values![0][0] == range.Values[0][1]
            ? "While the rest stands it can be nothing else."
            : $"While the rest stands it can be {(pieces.Count <= MostPieces ? string.Join(", ", pieces) : $"{string.Join(", ", pieces.Take(MostPieces - 1))} … {pieces[^1]}")}.";
        yield return $"Not below {Text(range.Min!.Value, range)}: {Stops(range.Min)}.";
        yield return $"Not above {Text(range.Max!.Value, range)}: {Stops(range.Max)}.";

        // few are told in full; where many act together their names must do
        string Stops(EndReport end) => end.Stops.Count > MostToldInFull ? $"{string.Join(", ", end.Stops.Order(StringComparer.Ordinal))} together" : string.Join("; ", end.Stops.Select(Told));

        string Told(string name) => name switch
        {
            "domain" => "the tool takes nothing beyond",
            "stock" => "the next size is not sold",
            _ => stop(name),
        };
    }

    private static string Text(double value, ValueRangeReport range)
    {
        var number = value.ToString("0.###", CultureInfo.InvariantCulture);
        return range.Unit switch { "mm" => number + " mm", "1:n" => "1:" + number, _ => number };
    }
}
