namespace DetailGen.Physics.Fields;

/// <summary>The temperatures of a solved field, to be drawn. Figures are taken from <see cref="FieldAnswer"/>; this only shows where they lie.</summary>
public sealed class Isotherms
{
    private readonly Contours _contours;

    internal Isotherms(TemperatureField field, double origin, double step) => _contours = new(field.Mesh, field.ValuesOf, origin, step);

    /// <summary>Least and greatest temperature, °C.</summary>
    public (double Least, double Most) Range => _contours.Range;

    /// <summary>The lines of one temperature (°C), chained as far as they go, warmer on the left; a closed one ends where it begins.</summary>
    /// <returns>mm; open lines first, each kind in the order of the mesh.</returns>
    public IReadOnlyList<IReadOnlyList<FieldPlace>> Of(double temperature) => _contours.Of(temperature);
}
