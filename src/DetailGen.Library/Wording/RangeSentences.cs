using System.Globalization;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Wording;

/// <summary>A range in sentences: what a value could be instead, and what stops it.</summary>
internal static class RangeSentences
{
    private const int MostPieces = 8;
    private const int MostToldInFull = 3;

    /// <param name="told">What one thing that stops it says; begins small, without a full stop.</param>
    internal static IEnumerable<string> Of(ValueRangeReport range, Func<MemberReport, string> told)
    {
        if (range.Options is { } options)
        {
            yield return $"While the rest stands it can be {string.Join(", ", options)}.";
            foreach (var (word, stops) in range.Against ?? [])
            {
                yield return $"Not {word}: {Stopped(stops, told)}.";
            }

            yield break;
        }

        if (!range.Proven)
        {
            yield return "What else it can be could not be proven within the budget of steps.";
            yield break;
        }

        var pieces = range.Values!.Select(piece => piece[0] == piece[1] ? Text(piece[0], range) : $"{Text(piece[0], range)} to {Text(piece[1], range)}").ToList();
        yield return pieces is [_] && range.Values![0][0] == range.Values[0][1]
            ? "While the rest stands it can be nothing else."
            : $"While the rest stands it can be {(pieces.Count <= MostPieces ? string.Join(", ", pieces) : $"{string.Join(", ", pieces.Take(MostPieces - 1))} … {pieces[^1]}")}.";
        yield return $"Not below {Text(range.Min!.Value, range)}: {Stopped(range.Min.Members, told)}.";
        yield return $"Not above {Text(range.Max!.Value, range)}: {Stopped(range.Max.Members, told)}.";
    }

    /// <summary>Few are told in full. Of many that only act together what the author can change stands first, then what he cannot, by name.</summary>
    private static string Stopped(IReadOnlyList<MemberReport> members, Func<MemberReport, string> told)
    {
        if (members.Count <= MostToldInFull)
        {
            return string.Join("; ", members.Select(member => member.Id switch
            {
                "domain" => "the tool takes nothing beyond",
                "stock" => "the next size is not sold",
                _ => told(member),
            }));
        }

        string[] groups = [Group("given", "what is fixed"), Group("target", "what is asked for"), Group("rule", "the rules"), Group("stock", "the sizes sold of"), Group("domain", "the least or most of"), Group("claim", "how the parts fit")];
        return $"these together: {string.Join("; ", groups.Where(group => group.Length > 0))}";

        string Group(string kind, string name)
        {
            var ids = members.Where(member => member.Kind == kind).Select(member => Bare(kind, member.Id)).Order(StringComparer.Ordinal).ToList();
            return ids.Count == 0 ? "" : $"{name} ({string.Join(", ", ids)})";
        }
    }

    private static string Bare(string kind, string id) => id == kind ? "the size itself" : id.StartsWith(kind + ".", StringComparison.Ordinal) ? id[(kind.Length + 1)..] : id;

    private static string Text(double value, ValueRangeReport range)
    {
        var number = value.ToString("0.###", CultureInfo.InvariantCulture);
        return range.Unit switch { ReportUnits.Millimetres => number + " mm", ReportUnits.Ratio => "1:" + number, _ => number };
    }
}
