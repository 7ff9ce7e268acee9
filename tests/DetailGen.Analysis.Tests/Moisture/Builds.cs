using System.Collections.Immutable;
using DetailGen.Physics.Moisture;
using DetailGen.Sections;

namespace DetailGen.Analysis.Tests.Moisture;

/// <summary>Sections and climates set out by hand. A row is told from the room outwards, as the check cases tell theirs.</summary>
internal static class Builds
{
    private static readonly double[] MaritimeTemperature = [2.5, 3.0, 5.5, 8.5, 12.0, 15.0, 17.0, 16.5, 13.5, 10.0, 6.0, 3.5];
    private static readonly double[] MaritimeHumidity = [0.87, 0.85, 0.8, 0.76, 0.74, 0.74, 0.75, 0.77, 0.81, 0.85, 0.88, 0.89];
    private static readonly double[] InlandTemperature = [-3.0, -1.5, 3.0, 8.5, 13.5, 16.5, 18.5, 18.0, 13.5, 8.5, 3.0, -1.0];
    private static readonly double[] InlandHumidity = [0.85, 0.83, 0.77, 0.71, 0.69, 0.7, 0.7, 0.72, 0.78, 0.82, 0.86, 0.87];

    internal static Climate Maritime(double excess = 540) => Outside(MaritimeTemperature, MaritimeHumidity, excess);

    internal static Climate Inland(double excess = 540) => Outside(InlandTemperature, InlandHumidity, excess);

    internal static Climate Constant(double outside, double humidity, double inside) => new(
        [.. Enumerable.Repeat(outside, 12)], [.. Enumerable.Repeat(humidity * Saturation.Pressure(outside), 12)],
        [.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(inside * Saturation.Pressure(20), 12)]);

    internal static Climate Outside(double[] temperature, double[] humidity, double excess)
    {
        ImmutableArray<double> pressure = [.. temperature.Zip(humidity, (t, share) => share * Saturation.Pressure(t))];
        return new([.. temperature], pressure, [.. Enumerable.Repeat(20.0, 12)], [.. temperature.Zip(pressure, (t, p) => p + VapourExcess.At(t, excess))]);
    }

    internal static Layer Row(string name, double thickness, double? conductivity, double muDry, double? muWet = null, double? sd = null, LayerKind kind = LayerKind.Solid) => new(
        name, "slot", name, name, new(name, name, "board", "plywood", "TB", conductivity, 500, "assumed") { Vapour = new(muDry, muWet ?? muDry, sd, "memory") }, thickness, kind, "");

    internal static Layer Air(double thickness) => new("air", "slot", "air", "air", new("air", "Air", "air", "", "", null, 0, "tabulated"), thickness, LayerKind.Air, "");

    /// <summary>A section that has this one build-up, and a part for each of its layers.</summary>
    /// <param name="fromInside">Layers from the room outwards.</param>
    /// <param name="waterBarrier">Name of the layer that keeps the rain off; null where none does.</param>
    internal static Section Section(HeatFlow flow, string? waterBarrier, params Layer[] fromInside)
    {
        var buildup = new Buildup(flow == HeatFlow.Upwards ? "roof" : "wall", "Stack", flow, [.. fromInside.Reverse()], (new(0, 0), new(0, -1)));
        return new(
            "parapet",
            [
                .. fromInside.Select((layer, i) => new Part(
                    layer.PartId, layer.Element, layer.Material, Element.Roof, Region.Box(0, i, 1, i + 1), Presence.Cut, layer.Element == waterBarrier ? Roles.WaterBarrier : Roles.None, i + 1)
                {
                    Slot = layer.Slot,
                    Words = new("", "", ""),
                }),
            ],
            [], [buildup], [], [], [], []);
    }
}
