using System.Collections.Immutable;
using DetailGen.Analysis.Moisture;
using DetailGen.Details.Climates;
using DetailGen.Details.Presets;
using DetailGen.Physics.Moisture;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>Condensation and mould of a detail's plain build-ups.</summary>
/// <param name="Outside">The climate that it stands in.</param>
/// <param name="Named">Whether the preset names it; else it is the usual one of the nation.</param>
/// <param name="Climate">Air outside and inside, month by month.</param>
/// <param name="BetweenRooms">The wall stands between two rooms below the roof, where nothing is calculated.</param>
internal sealed record MoistureWork(DesignClimate Outside, bool Named, InsideAir Inside, Climate Climate, SurfaceCriterion Surface, IReadOnlyList<BuildupMoisture> Buildups, bool BetweenRooms)
{
    internal static MoistureWork Of(Preset preset, Section section, DesignClimate outside)
    {
        var inside = InsideAir.Of(preset);
        ImmutableArray<double> temperatures = [.. outside.Months.Select(month => month.Temperature)];
        ImmutableArray<double> pressures = [.. outside.Months.Select(month => month.VapourPressure ?? month.Humidity!.Value * Saturation.Pressure(month.Temperature))];
        var climate = new Climate(
            temperatures, pressures, [.. Enumerable.Repeat(inside.Temperature, 12)],
            [.. temperatures.Zip(pressures, (temperature, pressure) => pressure + VapourExcess.At(temperature, inside.Class.Excess))]);
        return new(
            outside, preset.Climate is not null, inside, climate, SurfaceCriterion.Of(climate, SurfaceCriterion.AgainstMould),
            [.. section.Buildups.Select(buildup => BuildupMoisture.Of(MoistureModel.Of(buildup, section), climate))],
            section.Spaces.Any(space => space.Name == "higher-room"));
    }

    /// <summary>The climate of a preset; null where it names none and its nation has no usual one.</summary>
    internal static DesignClimate? ClimateOf(Preset preset, ClimateLibrary climates) =>
        preset.Climate is { } named ? climates.Find(named.Name) : climates.UsualFor(preset.Condition(PresetShape.Nation).Word);
}
