namespace DetailGen.Physics.Layers;

/// <summary>Direction of the heat flow through an element.</summary>
public enum Flow
{
    Horizontal,
    Upwards,
}

/// <summary>Surface resistances in m²·K/W.</summary>
/// <remarks>EN ISO 6946, conventional values, as restated in BR 443 (2019), 4.2 (read in a secondary text).</remarks>
public static class SurfaceResistance
{
    public const double Outside = 0.04;

    public static double Inside(Flow flow) => flow == Flow.Upwards ? 0.10 : 0.13;
}
