using System.Collections.Immutable;

namespace DetailGen.Physics.Moisture;

/// <summary>The least temperature factor that keeps an inside surface from growing mould: pₛₐₜ(θsi,min) = pᵢ/φ, f = (θsi,min − θe)/(θi − θe).</summary>
/// <param name="Months">January first.</param>
/// <param name="Factor">The largest monthly value, the design temperature factor; null where no month counts.</param>
/// <param name="CriticalMonth">0 is January; null where no month counts.</param>
/// <remarks>ISO 13788:2012, critical surface humidity (clause still to be read; method from the notes of the check cases).</remarks>
public sealed record SurfaceCriterion(ImmutableArray<SurfaceMonth> Months, double? Factor, int? CriticalMonth)
{
    /// <summary>Humidity allowed at a surface where mould shall not grow.</summary>
    public const double AgainstMould = 0.8;

    /// <summary>Film on opaque inside surfaces for this criterion, m²·K/W; not that of the heat flow.</summary>
    /// <remarks>ISO 13788:2012 (clause still to be read; from the notes of the check cases, which give it from memory).</remarks>
    public const double Film = 0.25;

    /// <param name="allowed">Humidity allowed at the surface, above 0 to 1: 0.8 against mould, 1 against dew.</param>
    public static SurfaceCriterion Of(Climate climate, double allowed)
    {
        var months = Enumerable.Range(0, 12).Select(month =>
        {
            var (inside, outside) = (climate.InternalTemperature[month], climate.ExternalTemperature[month]);
            var surface = Saturation.Temperature(climate.InternalPressure[month] / allowed);
            // A month that is not colder outside than inside asks nothing of the surface.
            return new SurfaceMonth(surface, outside < inside ? (surface - outside) / (inside - outside) : null);
        }).ToImmutableArray();
        var critical = Enumerable.Range(0, 12).Where(month => months[month].Factor is not null).OrderByDescending(month => months[month].Factor).Select(month => (int?)month).FirstOrDefault();
        return new(months, critical is { } at ? months[at].Factor : null, critical);
    }
}

/// <summary>What a month asks of the inside surface.</summary>
/// <param name="LeastTemperature">θsi,min in °C; null where no temperature in the range of the formulas does.</param>
/// <param name="Factor">Null where the month does not count.</param>
public sealed record SurfaceMonth(double? LeastTemperature, double? Factor);
