namespace DetailGen.Physics.Layers;

/// <summary>Direction of the heat flow through an element.</summary>
public enum Flow
{
    Horizontal,
    Upwards,
    Downwards,
}

/// <summary>Surface resistances in m²·K/W.</summary>
/// <remarks>EN ISO 6946, conventional values, as restated in BR 443 (2019), 4.2 (read in a secondary text); downwards from memory.</remarks>
public static class SurfaceResistance
{
    public const double Outside = 0.04;

    public static double Inside(Flow flow) => flow switch
    {
        Flow.Upwards => 0.10,
        Flow.Downwards => 0.17,
        _ => 0.13,
    };
}
