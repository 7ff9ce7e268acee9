namespace DetailGen.Details.Rules.Language;

/// <summary>The units that may stand behind a figure.</summary>
internal static class Units
{
    /// <summary>The kind and the factor to its own unit; null for an unknown unit.</summary>
    public static (Kind Kind, decimal Factor)? Find(string unit) => unit switch
    {
        "" => (Kind.Number, 1),
        "mm" => (Kind.Length, 1000),
        "m" => (Kind.Length, 1_000_000),
        "µm" or "um" => (Kind.Length, 1),
        "°" or "deg" => (Kind.Angle, 1),
        "W/m²K" or "W/m2K" => (Kind.UValue, 1),
        "m²K/W" or "m2K/W" => (Kind.RValue, 1),
        "W/mK" => (Kind.Conductivity, 1),
        "kg/m³" or "kg/m3" => (Kind.Density, 1),
        "kg/m²" or "kg/m2" => (Kind.AreaMass, 1),
        _ => null,
    };

    public static readonly IReadOnlyList<string> Names = ["mm", "m", "µm", "°", "W/m²K", "m²K/W", "W/mK", "kg/m³", "kg/m²"];
}
