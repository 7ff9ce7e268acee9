using DetailGen.Analysis.Heat;
using DetailGen.Sections;

namespace DetailGen.Analysis.Tests.Heat;

public class BuildupResistanceTests
{
    private static readonly Material Board = Of("board", 0.2);
    private static readonly Material Foam = Of("foam", 0.025);
    private static readonly Material Sheet = Of("sheet", 0.3);
    private static readonly Material Air = Of("air", null);

    [Fact]
    public void Sheets_count_for_thickness_but_not_for_resistance()
    {
        var with = BuildupResistance.Of(Roof(Row(Sheet, 1.5, LayerKind.Sheet), Row(Foam, 100)));
        Assert.Equal(101.5, with.Thickness, 1e-9);
        Assert.Null(with.Layers[0].Resistance);
        Assert.Equal(0.14 + 4, with.Total, 1e-9);
    }

    [Fact]
    public void An_air_layer_takes_the_direction_of_the_heat_into_account()
    {
        Assert.Equal(0.16, BuildupResistance.Of(Roof(Row(Air, 50, LayerKind.Air))).Layers[0].Resistance!.Value, 1e-9);
        Assert.Equal(0.18, BuildupResistance.Of(Roof(Row(Air, 50, LayerKind.Air)) with { Flow = HeatFlow.Horizontal }).Layers[0].Resistance!.Value, 1e-9);
    }

    // The gap between adhesive dabs is air, whatever the dabs are made of.
    [Fact]
    public void An_air_layer_named_after_what_crosses_it_counts_as_air() =>
        Assert.Equal(0.17, BuildupResistance.Of(Roof(Row(Board, 15, LayerKind.Air)) with { Flow = HeatFlow.Horizontal }).Layers[0].Resistance!.Value, 1e-9);

    [Fact]
    public void A_bridged_layer_counts_what_lies_between_its_members()
    {
        Assert.Equal(0.16, BuildupResistance.Of(Roof(Row(Air, 170, LayerKind.Bridged))).Layers[0].Resistance!.Value, 1e-9);
        Assert.Equal(0.5, BuildupResistance.Of(Roof(Row(Board, 100, LayerKind.Bridged))).Layers[0].Resistance!.Value, 1e-9);
    }

    private static Material Of(string id, double? conductivity) => new(id, id, "board", id, "BD", conductivity, 500, "assumed");

    private static Layer Row(Material material, double thickness, LayerKind kind = LayerKind.Solid) =>
        new("R1", "roof." + material.Id, "roof." + material.Id, material.Name, material, thickness, kind, "");

    private static Buildup Roof(params Layer[] layers) => new("roof", "Roof", HeatFlow.Upwards, layers, (new(0, 0), new(0, -1)));
}
