using System.Globalization;
using CsCheck;
using DetailGen.Library.Reports;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Laws;

/// <summary>What range says of any preset, against what becomes of the preset with that value.</summary>
public class RangeLawTests
{
    private static int QuestionsPerPreset => Soak.IsAsked ? 60 : 20;

    private enum Told
    {
        Allowed,
        Forbidden,
    }

    [Fact]
    public void Whatever_range_allows_checks_and_draws_and_whatever_it_forbids_is_refused() => AnyPreset.Solvable.Always(
        preset => preset.AsFile(path =>
        {
            var report = DetailLibrary.Range(new(path, [], []));
            Assert.Equal(0, report.Status);
            var random = new Random(report.Ranges.Count);
            var questions = report.Ranges.Where(range => range.Value.Proven).SelectMany(range => Questions(range.Key, range.Value)).ToArray();
            random.Shuffle(questions);
            foreach (var (text, told) in questions.Take(QuestionsPerPreset))
            {
                var checkedReport = DetailLibrary.Check(new([path], [text]));
                Assert.True(told == Told.Allowed ? checkedReport.Status == 0 : checkedReport.Status is 1 or 2, $"{text} is {told}: {checkedReport.Status} {Why(checkedReport.Details[0])}");
                Assert.True(told == Told.Allowed || checkedReport.Details[0].Conflict is { Members.Count: > 0 } || checkedReport.Details[0].Errors is { Count: > 0 }, $"{text} is refused without a reason.");
            }

            var drawn = questions.First(question => question.Told == Told.Allowed).Text;
            Scratch.Folder(folder => Assert.Equal(0, DetailLibrary.Draw(new([path], [drawn], folder, ["svg"])).Status));
        }), cases: 8);

    /// <summary>Both ends, a step inside and a step beyond each, and the places in every gap next to it and midway; every word.</summary>
    private static IEnumerable<(string Text, Told Told)> Questions(string key, ValueRangeReport range)
    {
        foreach (var word in range.Options ?? [])
        {
            yield return ($"{key}={word}", Told.Allowed);
        }

        foreach (var word in range.Excluded?.Keys ?? Enumerable.Empty<string>())
        {
            yield return ($"{key}={word}", Told.Forbidden);
        }

        var pieces = range.Values ?? [];
        var step = (decimal)(range.Step ?? 0);
        for (var i = 0; i < pieces.Count; i++)
        {
            var (low, high) = ((decimal)pieces[i][0], (decimal)pieces[i][1]);
            foreach (var value in new[] { low, high, low + step, high - step, low + (Math.Floor((high - low) / 2 / (step == 0 ? 1 : step)) * step) }.Where(value => value >= low && value <= high).Distinct())
            {
                yield return (Written(key, range, value), Told.Allowed);
            }

            var before = i == 0 ? low - (2 * (step == 0 ? 1 : step)) : (decimal)pieces[i - 1][1];
            var gap = low - before;
            foreach (var value in (step == 0 ? [before + Math.Floor(gap / 2)] : new[] { low - step, before + step, before + (Math.Floor(gap / 2 / step) * step) }).Where(value => value > before && value < low && value > 0).Distinct())
            {
                yield return (Written(key, range, value), Told.Forbidden);
            }
        }

        if (step > 0)
        {
            yield return (Written(key, range, (decimal)pieces[^1][1] + step), Told.Forbidden);
        }
    }

    private static string Written(string key, ValueRangeReport range, decimal value)
    {
        var text = value.ToString("0.###", CultureInfo.InvariantCulture);
        return $"{key}={range.Unit switch { "mm" => $"{text} mm", "1:n" => $"1:{text}", _ => text }}";
    }

    private static string Why(DetailReport report) => string.Join("; ",
        (report.Errors ?? []).Select(error => error.Reason)
            .Concat(report.Conflict?.Members.Select(member => member.Text) ?? [])
            .Concat((report.Checks ?? []).Where(check => check.Verdict == "fail").Select(check => check.Text))
            .Concat((report.Rules ?? []).Where(rule => rule.Verdict == "fail").Select(rule => rule.Id))
            .Concat(report.Warnings));
}
