using DetailGen.Analysis.Moisture;
using DetailGen.Sections;

namespace DetailGen.Analysis.Tests.Moisture;

public class MoistureModelTests
{
    [Fact]
    public void Layers_are_told_from_the_room_outwards()
    {
        var model = Model(null, Builds.Row("inner", 10, 0.1, 5), Builds.Row("outer", 10, 0.1, 5));
        Assert.Equal(["inner", "outer"], model.Layers.Select(layer => layer.Layer.Element));
        Assert.Equal((0.10, 0.04), (model.Rsi, model.Rse));
    }

    [Fact]
    public void What_lies_over_the_water_barrier_is_left_out()
    {
        var model = Model("membrane", Builds.Row("deck", 18, 0.13, 50), Builds.Row("membrane", 1.5, 0.2, 1, sd: 50, kind: LayerKind.Sheet), Builds.Row("fleece", 2, 0.2, 1), Builds.Row("ballast", 50, 2, 1));
        Assert.Equal(["deck", "membrane"], model.Layers.Select(layer => layer.Layer.Element));
        Assert.Equal(["fleece", "ballast"], model.LeftOut.Select(layer => layer.Element));
    }

    [Fact]
    public void A_stack_without_a_water_barrier_counts_whole() => Assert.Empty(Model(null, Builds.Row("leaf", 100, 1, 10), Builds.Row("render", 10, 1, 10)).LeftOut);

    [Fact]
    public void A_sheet_has_its_own_sd_and_no_thermal_resistance()
    {
        var layer = Model(null, Builds.Row("deck", 18, 0.13, 50), Builds.Row("vcl", 0.5, 0.2, 100_000, sd: 1500, kind: LayerKind.Sheet)).Layers[1];
        Assert.Equal((0, 1500, 1500), (layer.Resistance, layer.LeastSd, layer.MostSd));
    }

    [Fact]
    public void A_layer_has_its_thickness_times_either_factor()
    {
        var layer = Model(null, Builds.Row("deck", 20, 0.1, 200, 50)).Layers[0];
        Assert.Equal(0.2, layer.Resistance, 1e-12);
        Assert.Equal((1.0, 4.0), (layer.LeastSd, layer.MostSd));
    }

    [Fact]
    public void Air_counts_alike_however_thick_and_needs_no_figure_of_a_material()
    {
        var layers = Model(null, Builds.Air(25), Builds.Air(290), Builds.Row("deck", 18, 0.13, 50)).Layers;
        Assert.All(layers.Take(2), layer => Assert.Equal((0.16, MoistureModel.SdOfAir, MoistureModel.SdOfAir, null), (layer.Resistance, layer.LeastSd, layer.MostSd, layer.Confidence)));
    }

    [Fact]
    public void A_material_without_a_vapour_figure_is_refused()
    {
        var unknown = Builds.Row("mystery", 10, 0.1, 1);
        Assert.Throws<ArgumentException>(() => Model(null, unknown with { Material = unknown.Material with { Vapour = null } }));
    }

    private static MoistureModel Model(string? waterBarrier, params Layer[] fromInside)
    {
        var section = Builds.Section(HeatFlow.Upwards, waterBarrier, fromInside);
        return MoistureModel.Of(section.Buildups[0], section);
    }
}
