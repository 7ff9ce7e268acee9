namespace DetailGen.Details.Rules;

/// <summary>Figures that no equation of sizes gives, only a simulation of the section; rules and targets may ask for them.</summary>
public static class SimulatedFigures
{
    /// <summary>Least temperature factor on the inside surfaces, without a unit.</summary>
    public const string TemperatureFactor = "junction.frsi";

    /// <summary>Linear thermal transmittance Ψ with inside dimensions, W/(m·K).</summary>
    public const string Psi = "junction.psi";

    public static IReadOnlyList<string> Keys { get; } = [TemperatureFactor, Psi];

    /// <summary>Null for what has none.</summary>
    internal static string? Unit(string key) => key == Psi ? "W/mK" : null;
}
