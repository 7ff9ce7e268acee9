using System.Collections.Immutable;

namespace DetailGen.Physics.Moisture;

/// <summary>Twelve months of air outside and inside, January first.</summary>
/// <param name="ExternalTemperature">°C.</param>
/// <param name="ExternalPressure">Vapour pressure outside in Pa.</param>
/// <param name="InternalTemperature">°C.</param>
/// <param name="InternalPressure">Vapour pressure inside in Pa.</param>
public sealed record Climate(
    ImmutableArray<double> ExternalTemperature, ImmutableArray<double> ExternalPressure, ImmutableArray<double> InternalTemperature, ImmutableArray<double> InternalPressure);

/// <summary>Vapour that people and their work add to the air of a building, as a pressure in Pa over that outside.</summary>
/// <remarks>ISO 13788:2012, internal humidity classes: constant up to 0 °C outside, falling in a straight line to 0 at 20 °C (clause still to be read; from the notes of the check cases).</remarks>
public static class VapourExcess
{
    /// <param name="external">Temperature outside in °C.</param>
    /// <param name="atZero">Excess in Pa at 0 °C outside and below.</param>
    public static double At(double external, double atZero) => atZero * Math.Clamp((20 - external) / 20, 0, 1);
}

/// <summary>How a building is used, by its upper limit of excess vapour pressure at 0 °C outside.</summary>
/// <param name="Excess">Pa at 0 °C outside and below.</param>
/// <remarks>ISO 13788, internal humidity classes; limits and uses from memory, to be confirmed against the standard.</remarks>
public sealed record HumidityClass(int Number, string Use, double Excess)
{
    public static ImmutableArray<HumidityClass> All { get; } =
    [
        new(1, "Storage and the like", 270),
        new(2, "Offices, dwellings with usual occupancy and ventilation", 540),
        new(3, "Buildings with unknown occupancy", 810),
        new(4, "Sports halls, kitchens, canteens", 1080),
        new(5, "Laundries, breweries, swimming pools", 1360),
    ];
}

/// <summary>Months as they are written and how long they last.</summary>
public static class Month
{
    /// <summary>jan to dec.</summary>
    public static ImmutableArray<string> Names { get; } = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>Seconds; February has 28 days.</summary>
    internal static double Seconds(int month) => month switch
    {
        1 => 28,
        3 or 5 or 8 or 10 => 30,
        _ => 31,
    } * 86_400.0;
}
