using DetailGen.Details.Solving;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>What each value can be while the rest stands, and what stops it. A key that is set is answered as if it alone were not.</summary>
internal static class Ranging
{
    internal static RangeReport Run(RangeRequest request, Office office)
    {
        var read = PresetFiles.Read(request.Preset, request.Overrides, office);
        if (!read.IsGood)
        {
            return Empty(request, PresetFiles.Detail(request.Preset, request.Overrides)) with { Errors = SolvedReporting.Errors(read.Faults), Status = ExitStatus.WrongInput };
        }

        var preset = read.Value;
        IReadOnlyList<string> all = [.. DetailSolver.Keys(preset, office.Catalogue)];
        List<ErrorReport> unknown = [.. request.Keys.Where(key => !all.Contains(key, StringComparer.Ordinal)).Select(key => KeyFaults.Unknown(request.Preset, preset, key, all))];
        if (unknown.Count > 0)
        {
            return Empty(request, preset.Detail) with { Errors = unknown, Status = ExitStatus.WrongInput };
        }

        List<string> free = [.. (request.Keys.Count > 0 ? request.Keys : all).Where(key => preset.Set.All(given => given.Key != key))];
        if (DetailSolver.Ranges(preset, office.Catalogue, free) is not { } sizes)
        {
            var (_, refused) = DetailWork.Do(preset, office, Simulation.Never);
            return Empty(request, preset.Detail) with { Conflict = refused.Conflict, Warnings = refused.Warnings, Status = ExitStatus.Fails };
        }

        var ranges = new SortedDictionary<string, ValueRangeReport>(StringComparer.Ordinal);
        Add(ranges, sizes, DetailSolver.Options(preset, office.Catalogue, free), null);
        foreach (var given in preset.Set.Where(given => request.Keys.Contains(given.Key, StringComparer.Ordinal)))
        {
            var without = preset with { Set = [.. preset.Set.Where(other => other.Key != given.Key)] };
            Add(ranges, DetailSolver.Ranges(without, office.Catalogue, [given.Key], given.Key) ?? [], DetailSolver.Options(without, office.Catalogue, [given.Key]), given.Value.ToString());
        }

        return Empty(request, preset.Detail) with
        {
            Ranges = ranges,
            Warnings =
            [
                .. Simulated.TargetsOf(preset).Select(target => Messages.TargetNotInRanges(target.Key)),
                .. ranges.Where(range => !range.Value.Proven).Select(range => range.Value.Options is null ? Messages.RangeNotProven(range.Key) : Messages.WordsNotProven(range.Key)),
            ],
        };
    }

    private static void Add(SortedDictionary<string, ValueRangeReport> ranges, IReadOnlyList<SizeRange> sizes, IReadOnlyList<ChoiceRange> choices, string? given)
    {
        foreach (var size in sizes)
        {
            ranges[size.Key] = Told(size) with { Given = given };
        }

        foreach (var choice in choices)
        {
            ranges[choice.Key] = new(null)
            {
                Options = choice.Words,
                Against = choice.Excluded.Count == 0 ? null : new(choice.Excluded.ToDictionary(word => word.Word, word => SolvedReporting.Members(word.Stops)), StringComparer.Ordinal),
                Given = given,
                Proven = choice.Proven,
            };
        }
    }

    private static ValueRangeReport Told(SizeRange size) => new(ReportUnits.Of(size.Unit))
    {
        Step = size.Step is { } step ? ReportUnits.Number(size.Unit, step) : null,
        Values = [.. size.Values.Select(piece => (IReadOnlyList<double>)[ReportUnits.Number(size.Unit, piece.Low), ReportUnits.Number(size.Unit, piece.High)])],
        Min = new(ReportUnits.Number(size.Unit, size.Values[0].Low), SolvedReporting.Members(size.LowStops)),
        Max = new(ReportUnits.Number(size.Unit, size.Values[^1].High), SolvedReporting.Members(size.HighStops)),
        Proven = size.Proven,
    };

    /// <summary>The report that says nothing yet.</summary>
    internal static RangeReport Empty(RangeRequest request, string detail) => new(DetailLibrary.Tool, detail, request.Preset, new(StringComparer.Ordinal));
}
