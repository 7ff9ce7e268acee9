using DetailGen.Analysis.Moisture;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Physics.Cases;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Reports;

/// <summary>Turns condensation and mould into the records that are printed.</summary>
internal static class MoistureReporting
{
    internal static MoistureReport Report(MoistureWork work) => new(
        MoistureSentences.Standard,
        new(
            work.Outside.Id, work.Outside.Title, work.Named, work.Outside.Origin, work.Outside.Source.Document, work.Outside.Source.Confidence, work.Climate.ExternalTemperature,
            [.. work.Outside.Months.Select((month, i) => month.Humidity ?? work.Climate.ExternalPressure[i] / Saturation.Pressure(month.Temperature))]),
        new(
            work.Inside.Temperature, work.Inside.TemperatureSource, work.Inside.Class.Number, work.Inside.ClassSource, work.Inside.Class.Excess,
            [.. work.Climate.InternalTemperature.Zip(work.Climate.InternalPressure, (temperature, pressure) => pressure / Saturation.Pressure(temperature))]),
        new(SurfaceCriterion.AgainstMould, SurfaceCriterion.Film, work.Surface.Factor, work.Surface.CriticalMonth is { } critical ? Month.Names[critical] : null),
        [.. work.Buildups.Select(built => Element(built, work))],
        MoistureSentences.Steps(work.Buildups, work.BetweenRooms),
        MoistureSentences.Caution);

    /// <summary>Two checks for each build-up: on condensation within it, and on mould on its inside face.</summary>
    internal static IEnumerable<CheckReport> Checks(MoistureWork work) => work.Buildups.SelectMany(built => new CheckReport[]
    {
        new(
            $"condensation-{built.Model.Buildup.Id}", "vapour", built.Year.Verdict switch { MoistureVerdict.Dry => VerdictWords.Pass, MoistureVerdict.Dries => VerdictWords.ToConfirm, _ => VerdictWords.Fail },
            MoistureSentences.Outcome(built), [.. WetParts(built)], null, null),
        new(
            $"mould-{built.Model.Buildup.Id}", "heat", work.Surface.Factor is { } needed && built.TemperatureFactor < needed ? VerdictWords.Fail : VerdictWords.Pass,
            MoistureSentences.Mould(built, work.Surface), [built.Model.Layers[0].Layer.PartId], null, null),
    });

    internal static IEnumerable<string> Warnings(MoistureWork work)
    {
        if (work.Outside.Origin == "invented")
        {
            yield return MoistureSentences.InventedClimate(work.Outside.Id);
        }

        foreach (var built in work.Buildups)
        {
            foreach (var warning in MoistureAnswer.Warnings(work.Climate, built.Asked, built.Year))
            {
                yield return $"{MoistureSentences.Name(built)}: {warning}";
            }
        }
    }

    private static MoistureElementReport Element(BuildupMoisture built, MoistureWork work)
    {
        var model = built.Model;
        return new(
            model.Buildup.Id, model.Buildup.Title, model.Rsi, model.Rse, built.TemperatureFactor, MoistureSentences.Outcome(built), MoistureSentences.Mould(built, work.Surface),
            [
                .. model.Layers.Select((layer, i) => new MoistureLayerReport(
                    layer.Layer.Reference, layer.Layer.PartId, layer.Layer.Element, layer.Layer.IsAir ? "air" : layer.Layer.Material.Id, layer.Layer.Thickness, layer.Resistance, built.Sd(i),
                    layer.LeastSd == layer.MostSd ? "only" : i < built.Turn ? "lesser" : "greater", layer.Confidence, layer.Layer.Material.Origin)),
            ],
            [.. model.LeftOut.Select(layer => layer.Reference)],
            MoistureAnswer.Of(work.Climate, work.Surface, built.Year));
    }

    private static IEnumerable<string> WetParts(BuildupMoisture built)
    {
        var layers = built.Model.Layers;
        return built.Year.Interfaces.SelectMany(wet => wet.AfterLayer is { } after
                ? [layers[after - 1].Layer.PartId, layers[Math.Min(after, layers.Count - 1)].Layer.PartId]
                : layers.Where(layer => layer.Layer.Element == wet.Inside).Select(layer => layer.Layer.PartId))
            .Distinct(StringComparer.Ordinal);
    }
}
