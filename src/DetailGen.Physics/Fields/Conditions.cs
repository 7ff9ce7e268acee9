using System.Collections.Immutable;

namespace DetailGen.Physics.Fields;

/// <summary>What a field is asked for on a mesh: conductivities and, for each boundary line, a film and a temperature from 0 (at the origin) to 1 (a step from it).</summary>
/// <param name="Conductivity">W/(m·K) by region.</param>
internal sealed record Conditions(ImmutableArray<double> Conductivity, ImmutableArray<Conditions.Line?> Lines)
{
    /// <summary>What a boundary line holds its edges to, or couples them with.</summary>
    /// <param name="Film">m²·K/W; 0 holds the surface.</param>
    internal sealed record Line(double Film, double Temperature)
    {
        private const double Least = 1e-12; // m²·K/W; what resists less is lost in the last digits of the temperature. A surface held instead lets no less heat pass, so the upper bound stays one

        internal bool Holds => Film < Least;

        /// <summary>W/K over a side of this length (mm), one metre deep.</summary>
        internal double Conductance(double length) => length / 1000 / Film;
    }

    /// <param name="humidityFilm">Takes the place of every internal film when given.</param>
    internal static Conditions Of(FieldCase asked, double origin, double step, double? humidityFilm) => new(
        [.. asked.Regions.Select(r => r.Conductivity)],
        [.. asked.Boundary.Select(b => b.Environment is not { } air ? null
            : new Line(humidityFilm is { } film && air.Side == FieldSide.Internal ? film : b.Film, (air.Temperature - origin) / step))]);
}
