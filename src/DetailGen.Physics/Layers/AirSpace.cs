namespace DetailGen.Physics.Layers;

/// <summary>An air layer between two surfaces: R = 1 / (hₐ + hᵣ), hₐ = max(still air, convection), hᵣ = 4σT³ / (1/ε₁ + 1/ε₂ − 1).</summary>
/// <param name="Thickness">m, above 0; the formulas hold up to 0.3 m.</param>
/// <param name="MeanTemperature">°C.</param>
/// <param name="Step">Difference of temperature across the layer in K, 0 or more.</param>
/// <param name="Openings">mm² to the outside per metre of length (upright layers) or per m² (flat layers).</param>
/// <remarks>ISO 6946:2017, annex on airspaces (annex and clause number still to be read; formulas from the notes of the check cases, which give them from memory).</remarks>
public sealed record AirSpace(double Thickness, double FirstEmissivity, double SecondEmissivity, double MeanTemperature, double Step, double Openings)
{
    /// <summary>Thickest layer that the method holds for, in m.</summary>
    public const double Thickest = 0.3;

    private const double StefanBoltzmann = 5.67e-8; // W/(m²·K⁴)
    private const double StillAir = 0.025; // W/(m·K)

    /// <summary>How much the layer is open to the outside. The limits are 500 and 1500 mm².</summary>
    public Ventilation Ventilation => Openings <= 500 ? Ventilation.None : Openings < 1500 ? Ventilation.Slight : Ventilation.Well;

    /// <summary>m²·K/W of the layer if it is not ventilated.</summary>
    public double Resistance(Flow flow)
    {
        var convection = Math.Max(Convection(flow), StillAir / Thickness);
        var kelvin = MeanTemperature + 273.15;
        var radiation = 4 * StefanBoltzmann * kelvin * kelvin * kelvin / (1 / FirstEmissivity + 1 / SecondEmissivity - 1);
        return 1 / (convection + radiation);
    }

    private double Convection(Flow flow) => (flow, Step > 5) switch
    {
        (Flow.Horizontal, false) => 1.25,
        (Flow.Horizontal, true) => 0.73 * Math.Cbrt(Step),
        (Flow.Upwards, false) => 1.95,
        (Flow.Upwards, true) => 1.14 * Math.Cbrt(Step),
        (_, false) => 0.12 * Math.Pow(Thickness, -0.44),
        (_, true) => 0.09 * Math.Pow(Step, 0.187) * Math.Pow(Thickness, -0.44),
    };
}

/// <summary>How much an air layer is open to the outside.</summary>
public enum Ventilation
{
    None,
    Slight,
    Well,
}
