namespace DetailGen.Details.Rules.Language;

/// <summary>What sort of thing an expression stands for; things of different kinds are never compared or added.</summary>
public enum Kind
{
    Truth,

    /// <summary>Micrometres.</summary>
    Length,

    /// <summary>The n of 1:n. The steeper is the greater: 1:40 &gt; 1:80.</summary>
    Slope,

    /// <summary>Degrees; compared with a slope as the slope it makes.</summary>
    Angle,

    /// <summary>W/(m²·K).</summary>
    UValue,

    /// <summary>m²·K/W.</summary>
    RValue,

    /// <summary>W/(m·K).</summary>
    Conductivity,

    /// <summary>kg/m³.</summary>
    Density,

    /// <summary>kg/m²: a length times a density.</summary>
    AreaMass,

    /// <summary>A bare number or a count.</summary>
    Number,

    /// <summary>A choice, a material's id or kind.</summary>
    Text,
}

/// <summary>Kinds as people call them.</summary>
public static class Kinds
{
    /// <summary>With its article: "a length".</summary>
    public static string Name(this Kind kind) => kind switch
    {
        Kind.Truth => "a yes or no",
        Kind.Length => "a length",
        Kind.Slope => "a slope",
        Kind.Angle => "an angle",
        Kind.UValue => "a U-value",
        Kind.RValue => "a thermal resistance",
        Kind.Conductivity => "a conductivity",
        Kind.Density => "a density",
        Kind.AreaMass => "a mass per area",
        Kind.Number => "a number",
        _ => "a word",
    };

    /// <summary>How a quantity of that kind is written, for hints.</summary>
    public static string Example(this Kind kind) => kind switch
    {
        Kind.Length => "150 mm",
        Kind.Slope => "1:40",
        Kind.Angle => "5°",
        Kind.UValue => "0.16 W/m²K",
        Kind.RValue => "2.5 m²K/W",
        Kind.Conductivity => "0.022 W/mK",
        Kind.Density => "1700 kg/m³",
        Kind.AreaMass => "80 kg/m²",
        Kind.Number => "2",
        Kind.Text => "stone",
        _ => "wall.fill = partial",
    };

    /// <summary>The unit of reported figures; null where there is none. A slope is reported as its n.</summary>
    public static string? Unit(this Kind kind) => kind switch
    {
        Kind.Length => "mm",
        Kind.Slope => "1:n",
        Kind.Angle => "°",
        Kind.UValue => "W/m²K",
        Kind.RValue => "m²K/W",
        Kind.Conductivity => "W/mK",
        Kind.Density => "kg/m³",
        Kind.AreaMass => "kg/m²",
        _ => null,
    };
}
