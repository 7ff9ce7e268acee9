using DetailGen.Details.Presets;
using DetailGen.Details.Rules;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Curves;
using DetailGen.Drawing.Emitters;
using DetailGen.Library.Reports;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>The curve of a sweep as a picture: Ψ and temperature factor against the size, with what is asked of them.</summary>
internal static class SweepPicture
{
    /// <summary>The ending of a file's name without its point; empty where it has none.</summary>
    internal static string FormatOf(string file) => Path.GetExtension(file).TrimStart('.').ToLowerInvariant();

    internal static byte[] Draw(SweepReport sweep, Preset preset, Worked worked, Office office, string format)
    {
        var text = Text(sweep, preset, worked, office);
        var scene = CurvePicture.Compose(text, office.Typeface, SheetSetup.Layers(office.Sheets), new(preset.Detail, "", text.Title, "", "", null, ""), SheetSetup.Has(preset, "line-group", "copy"));
        var inColour = SheetSetup.Has(preset, "plot", "colour");
        return SceneFiles.Emit(inColour ? scene : scene.InBlack(), [format])[0].Bytes;
    }

    private static CurveText Text(SweepReport sweep, Preset preset, Worked worked, Office office)
    {
        var value = worked.Solved.Values.First(one => one.Key == sweep.Key);
        var (least, most) = (sweep.Rows[0].Value, sweep.Rows[^1].Value);
        var mould = preset.FrsiFilm != "heat-flow";
        return new(
            $"Heat through the junction against {sweep.Key}",
            [preset.Title, $"{preset.Detail}: {preset.Junction.Title}, {preset.Wall.Title.ToLowerInvariant()}, {preset.Roof.Title.ToLowerInvariant()}"],
            $"{sweep.Key}{(sweep.Unit is { } unit ? $", {unit}" : "")}: {value.Meaning}",
            [.. sweep.Rows.Select(row => new CurveStation(row.Value, row.GoesOn))],
            [.. DetailSolver.Stock(worked.Preset, office.Catalogue, sweep.Key).Select(size => ReportUnits.Number(value.Value.Unit, size)).Where(size => size >= least && size <= most)],
            sweep.Drawn,
            [
                new("Ψ, inside dimensions, W/mK", [.. sweep.Rows.Select(row => row.PsiInternal)], [.. Limits(preset, worked, SimulatedFigures.Psi)]),
                new($"Temperature factor, {(mould ? "mould film" : "heat flow films")}", [.. sweep.Rows.Select(row => mould ? row.MouldFactor : row.Factor)], [.. Limits(preset, worked, SimulatedFigures.TemperatureFactor)]),
            ],
            [
                $"At each value the other sizes are solved anew, so that all rules hold; what was set stays. Every Ψ is proven to {Figures.Fixed(sweep.Rows.Max(row => row.Upper - row.Lower), 4)} W/mK.",
                $"{Messages.HeatStandard}.",
                Messages.HeatCaution,
            ]);
    }

    // Rules of one limit stand in one line.
    private static IEnumerable<CurveLimit> Limits(Preset preset, Worked worked, string key)
    {
        var targets = preset.Targets.Where(target => target.Key == key).Select(target => (Words: "target", target.Value, target.Kind.AtLeast));
        var rules = worked.Solved.Verdicts.Where(verdict => verdict.Judgement != Judgement.NotApplicable && verdict.Rule.Simulate is { } limit && limit.Key == key)
            .Select(verdict => (Words: verdict.Rule.Id, Value: verdict.Rule.Simulate!.Limit, verdict.Rule.Simulate.AtLeast));
        return targets.Concat(rules).GroupBy(limit => (limit.Value, limit.AtLeast))
            .Select(group => new CurveLimit($"{string.Join(", ", group.Select(limit => limit.Words))}: {(group.Key.AtLeast ? "at least" : "at most")} {Figures.Short(group.Key.Value)}", (double)group.Key.Value));
    }
}
