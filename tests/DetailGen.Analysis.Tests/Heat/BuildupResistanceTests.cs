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

    // EN ISO 6946, combined method by hand: dabs take a fifth, 0.015/0.43 = 0.034884; between them 0.17 (15 mm of air, sideways).
    // Side by side 1/(0.2/0.034884 + 0.8/0.17) = 0.095793; lower 0.17 + 4 + 0.095793; upper 1/(0.2/4.204884 + 0.8/4.34) = 4.312286.
    [Fact]
    public void Dabs_count_by_their_share_in_the_mean_of_both_limits()
    {
        var wall = BuildupResistance.Of(Wall(Row(Foam, 100), Row(Board, 15, LayerKind.Air) with { Bridging = new(Of("dab", 0.43), 60, 300) }));
        Assert.Equal(0.17, wall.Layers[1].Resistance!.Value, 1e-9);
        Assert.Equal(0.095793, wall.Layers[1].Bridged!.Value, 1e-6);
        Assert.Equal(4.265793, wall.Lower, 1e-6);
        Assert.Equal(4.312286, wall.Upper!.Value, 2e-6);
        Assert.Equal(1 / 4.289040, wall.UValue, 1e-6);
    }

    // Joists 47 at 400, 0.195/0.13 = 1.5; between them 0.16 (air, upwards): 1/(0.1175/1.5 + 0.8825/0.16) = 0.178764.
    [Fact]
    public void Joists_conduct_less_than_the_air_between_them()
    {
        var joists = Row(Air, 195, LayerKind.Bridged) with { Bridging = new(Of("softwood", 0.13), 47, 400) };
        var roof = BuildupResistance.Of(Roof(Row(Foam, 100), joists));
        Assert.Equal(0.14 + 4 + 0.178764, roof.Lower, 1e-6);
        Assert.InRange(roof.UValue, 0, BuildupResistance.Of(Roof(Row(Foam, 100), Row(Air, 195, LayerKind.Bridged))).UValue);
    }

    // EN ISO 6946, correction for fasteners, by hand: 0.8 · 380 · π/4 · 0.004² · 2.5 / 0.1 · (4/4.17)² = 0.087877, and U = 1/4.17.
    [Fact]
    public void Ties_that_count_are_added_to_the_transmittance()
    {
        var wall = BuildupResistance.Of(Wall(Tied(380)));
        Assert.True(wall.Corrected);
        Assert.Equal(0.087877, wall.Corrections.Single().Amount, 1e-6);
        Assert.Equal(1 / 4.17 + 0.087877, wall.UValue, 1e-6);
    }

    // The same of stainless steel: 0.8 · 17 · π/4 · 0.004² · 2.5 / 0.1 · (4/4.17)² = 0.003931, 1.6 % of 1/4.17.
    [Fact]
    public void Ties_that_add_less_than_three_hundredths_are_told_but_not_added()
    {
        var wall = BuildupResistance.Of(Wall(Tied(17)));
        Assert.False(wall.Corrected);
        Assert.Equal(0.003931, wall.Corrections.Single().Amount, 1e-6);
        Assert.Equal(1 / 4.17, wall.UValue, 1e-9);
    }

    [Fact]
    public void Ties_of_plastic_need_no_correction() => Assert.Equal(0, BuildupResistance.Of(Wall(Tied(0.7))).Corrections.Single().Amount);

    // Two rows of boards are one insulation to a fixing that goes through both.
    [Fact]
    public void A_fixing_through_two_rows_of_boards_goes_through_their_sum()
    {
        var pins = new Fixings("Membrane fixings", Of("steel", 50), 4, 4.8);
        var two = BuildupResistance.Of(Roof(Row(Foam, 60) with { Fixings = pins }, Row(Foam, 40) with { Fixings = pins }));
        Assert.Equal(BuildupResistance.Of(Roof(Row(Foam, 100) with { Fixings = pins })).UValue, two.UValue, 1e-12);
        Assert.Single(two.Corrections);
    }

    private static Layer Tied(double conductivity) => Row(Foam, 100) with { Fixings = new("Wall ties", Of("tie", conductivity), 2.5, 4) };

    private static Buildup Wall(params Layer[] layers) => Roof(layers) with { Id = "wall", Flow = HeatFlow.Horizontal };

    private static Material Of(string id, double? conductivity) => new(id, id, "board", id, "BD", conductivity, 500, "assumed");

    private static Layer Row(Material material, double thickness, LayerKind kind = LayerKind.Solid) =>
        new("R1", "roof." + material.Id, "roof." + material.Id, material.Name, material, thickness, kind, "");

    private static Buildup Roof(params Layer[] layers) => new("roof", "Roof", HeatFlow.Upwards, layers, (new(0, 0), new(0, -1)));
}
