using DetailGen.Details.Presets;
using DetailGen.Physics.Moisture;

namespace DetailGen.Library.Working;

/// <summary>The air inside, by what the building serves.</summary>
/// <param name="Temperature">°C, all the year.</param>
/// <param name="TemperatureSource">Where that comes from.</param>
/// <param name="ClassSource">Where the class comes from.</param>
internal sealed record InsideAir(double Temperature, string TemperatureSource, HumidityClass Class, string ClassSource)
{
    private const double Rooms = 20;
    private const double PoolHall = 28;

    internal static InsideAir Of(Preset preset)
    {
        var use = preset.Condition(PresetShape.Use).Word;
        var (temperature, told) = preset.AirTemperature is { } given
            ? (given, "as the preset says")
            : (use == "pool" ? PoolHall : Rooms, "common practice, no source");
        var (number, source) = preset.HumidityClass is { } asked ? (asked, "as the preset says") : ClassOf(use);
        return new(temperature, told, HumidityClass.All.First(one => one.Number == number), source);
    }

    // A use that the list of classes does not name counts as unknown, which is the wetter side.
    private static (int Number, string Source) ClassOf(string use) => use switch
    {
        "dwelling" or "office" => (2, "ISO 13788, annex on humidity classes, from memory"),
        "sports" => (4, "ISO 13788, annex on humidity classes, from memory"),
        "pool" => (5, "ISO 13788, annex on humidity classes, from memory"),
        _ => (3, $"ISO 13788, annex on humidity classes, from memory; {use} is not in it and counts as unknown occupancy"),
    };
}
