using DetailGen.Analysis.Heat;
using DetailGen.Details;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Library.Files;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>The heat through a junction against one size, over all that the size can be while the rest stands.</summary>
internal static class Sweeping
{
    /// <summary>More values than this are thinned out evenly; both ends and the drawn value are kept.</summary>
    private const int Most = 20;

    /// <summary>Share of the coupling that the proven error of a point should not pass: enough for a curve.</summary>
    private const double Close = 0.002;

    internal static SweepReport Run(SweepRequest request, Office office)
    {
        if (request.Picture is { } asked && !SweepRequest.PictureFormats.Contains(SweepPicture.FormatOf(asked), StringComparer.Ordinal))
        {
            return Empty(request, "") with { Errors = [ErrorReport.Of("unknown-format", asked, Messages.NoPicture(asked), Messages.PictureFormats(SweepRequest.PictureFormats))], Status = ExitStatus.WrongInput };
        }

        var read = PresetFiles.Read(request.Preset, request.Overrides, office);
        if (!read.IsGood)
        {
            return Empty(request, PresetFiles.Detail(request.Preset, request.Overrides)) with { Errors = SolvedReporting.Errors(read.Faults), Status = ExitStatus.WrongInput };
        }

        var preset = read.Value with { Set = [.. read.Value.Set.Where(given => given.Key != request.Key)], Targets = [.. read.Value.Targets.Except(Simulated.TargetsOf(read.Value))] };
        IReadOnlyList<string> keys = DetailSolver.Keys(preset, office.Catalogue);
        if (!keys.Contains(request.Key, StringComparer.Ordinal))
        {
            return Empty(request, preset.Detail) with { Errors = [KeyFaults.Unknown(request.Preset, preset, request.Key, keys)], Status = ExitStatus.WrongInput };
        }

        var (worked, refused) = DetailWork.Do(preset, office, Simulation.Never);
        if (worked is null)
        {
            return Empty(request, preset.Detail) with { Conflict = refused.Conflict, Warnings = refused.Warnings, Status = ExitStatus.Fails };
        }

        if (DetailSolver.Ranges(preset, office.Catalogue, [request.Key]) is not [var range])
        {
            return Empty(request, preset.Detail) with { Errors = [ErrorReport.Of("not-a-size", request.Preset, Messages.NotASize(request.Key), Messages.NotASizeHint, key: request.Key)], Status = ExitStatus.WrongInput };
        }

        var drawn = Drawn(read.Value, request.Key, office);
        long[] values = [.. range.Values.SelectMany(piece => Targets.Steps(piece, range.Step))];
        long[] taken = Thinned(values, drawn);
        var report = Empty(request, preset.Detail) with
        {
            Unit = ReportUnits.Of(range.Unit),
            Drawn = drawn is { } number ? ReportUnits.Number(range.Unit, number) : null,
            Values = values.Length,
            Rows = [.. Rows(preset, range, taken, office)],
            Warnings =
            [
                .. taken.Length < values.Length ? [Messages.Thinned(request.Key, taken.Length, values.Length)] : Array.Empty<string>(),
                .. range.Proven ? Array.Empty<string>() : [Messages.RangeNotProven(request.Key)],
            ],
        };
        return request.Picture is { } file && report.Rows.Count > 0 ? Pictured(report, file, read.Value, worked, office) : report;
    }

    // what the sheet shows: a target may have thickened it
    private static long? Drawn(Preset preset, string key, Office office) =>
        Targets.Meet(preset, office, Simulation.Asked).Solution is Solution.Solved solved ? solved.Find(key)?.Value.Number : null;

    private static IEnumerable<SweepRow> Rows(Preset preset, SizeRange range, long[] values, Office office)
    {
        var conditions = new HeatConditions(WantedError: Close);
        (long Low, long High)? before = null;
        foreach (var value in values)
        {
            var piece = range.Values.First(one => value >= one.Low && value <= one.High);
            var goesOn = piece == before;
            before = piece;
            var setting = Setting.Numeric(range.Unit, value);
            var with = preset with { Set = [.. preset.Set, new Given(range.Key, setting, setting.ToString(), new Mark(preset.File, 1, 1), false)] };
            if (DetailSolver.Solve(with, office.Catalogue) is Solution.Solved solved)
            {
                var heat = JunctionHeat.Of(ThermalModelling.Of(SectionBuilder.Build(solved), conditions), conditions);
                yield return new(
                    ReportUnits.Number(range.Unit, value), heat.Coupling.Value, heat.PsiInternal.Value, heat.PsiInternal.Lower, heat.PsiInternal.Upper, heat.PsiExternal.Value,
                    heat.Factor.Value, heat.MouldFactor.Value)
                {
                    GoesOn = goesOn,
                };
            }
        }
    }

    // the picture stands under its name only if it could be written
    private static SweepReport Pictured(SweepReport report, string file, Preset preset, Worked worked, Office office)
    {
        var format = SweepPicture.FormatOf(file);
        OutputFile picture = new(Path.GetFileName(file), format, SweepPicture.Draw(report, preset, worked, office, format));
        var folder = Path.GetDirectoryName(file) is { Length: > 0 } named ? named : ".";
        OutputFolder.Write(folder, [picture], out var fault);
        return fault is null
            ? report with { Picture = OutputFolder.Describe(picture) }
            : report with { Errors = [ErrorReport.Of("cannot-write", file, fault.Reason, fault.Hint)], Status = ExitStatus.NotWritten };
    }

    private static long[] Thinned(long[] values, long? drawn)
    {
        if (values.Length <= Most)
        {
            return values;
        }

        int[] places = [.. Enumerable.Range(0, Most).Select(i => (int)Math.Round(i * (values.Length - 1.0) / (Most - 1)))];
        var at = drawn is { } value ? Array.IndexOf(values, value) : -1;
        if (at >= 0 && !places.Contains(at))
        {
            places[Enumerable.Range(1, Most - 2).MinBy(i => Math.Abs(places[i] - at))] = at; // the ends stay
        }

        return [.. places.Select(place => values[place])];
    }

    /// <summary>The report that says nothing yet.</summary>
    internal static SweepReport Empty(SweepRequest request, string detail) => new(DetailLibrary.Tool, detail, request.Preset, request.Key, null, []);
}
