using CsCheck;
using DetailGen.Analysis.Moisture;
using DetailGen.Physics.Moisture;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Analysis.Tests.Moisture;

public class BuildupMoistureTests
{
    // A membrane, insulation, a vapour control layer and a deck, in a year that is never warmer outside than inside: in one that is, vapour comes from outside, and what is
    // tight on the room's side shuts it in.
    private static readonly Gen<(Layer[] Roof, Climate Climate)> Roofs = Gen.Select(
        Gen.Double[10, 40], Gen.Double[40, 400], Gen.Double[1, 300], Gen.Double[4, 12], Gen.Double[3, 12], Gen.OneOf(Gen.Const(270.0), Gen.Const(540.0), Gen.Const(810.0), Gen.Const(1080.0), Gen.Const(1360.0))).Select(
        (deck, insulation, membrane, mean, swing, excess) => (
            new[]
            {
                Builds.Row("deck", deck, 0.13, 200, 50), Builds.Row("vcl", 0.5, 0.2, 1, sd: 1, kind: LayerKind.Sheet), Builds.Row("insulation", insulation, 0.025, 60, 40),
                Builds.Row("membrane", 1.5, 0.2, 1, sd: membrane, kind: LayerKind.Sheet),
            },
            Builds.Outside([.. Enumerable.Range(0, 12).Select(month => mean - Math.Min(swing, 19 - mean) * Math.Cos(month * Math.PI / 6))], [.. Enumerable.Repeat(0.8, 12)], excess)));

    // ISO 13788:2012; cases computed two independent ways, climates and builds invented.
    [Fact]
    public void A_warm_roof_set_out_by_hand_gives_the_figures_of_its_case()
    {
        var year = Year(Builds.Maritime(), HeatFlow.Upwards, Builds.Row("concrete", 150, 2.0, 100), Builds.Row("control layer", 1, 0.17, 1, sd: 20), Builds.Row("pir", 120, 0.023, 60), Builds.Row("membrane", 5, 0.17, 1, sd: 100));
        Assert.Equal((MoistureVerdict.Dries, 10, 2), (year.Verdict, year.StartMonth!.Value, year.PeakMonth!.Value));
        Assert.Equal(15.161, year.Peak, 0.0006);
        Assert.Equal(0, year.Residual);
        var wet = Assert.Single(year.Interfaces);
        Assert.Equal((3, "pir", "membrane"), (wet.AfterLayer!.Value, wet.Inside, wet.Outside));
        Assert.Equal(42.2, wet.AirEquivalent, 1e-9);
        double[] expected = [4.072, 3.22, 1.501, -1.029, -4.007, -6.205, -3.921, 0, 0, 0, 2.482, 3.886];
        Assert.All(expected.Zip(wet.Change), pair => Assert.Equal(pair.First, pair.Second, 0.0006));
    }

    [Fact]
    public void A_cold_roof_set_out_by_hand_gives_the_figures_of_its_case()
    {
        var year = Year(
            Builds.Maritime(), HeatFlow.Upwards,
            Builds.Row("plasterboard", 12.5, 0.21, 10), Builds.Row("wool", 150, 0.037, 1), Builds.Air(50), Builds.Row("plywood", 18, 0.13, 50), Builds.Row("felt", 8, 0.17, 1, sd: 40));
        Assert.Equal((MoistureVerdict.Stays, 9, 2), (year.Verdict, year.StartMonth!.Value, year.PeakMonth!.Value));
        Assert.Equal(2504.997, year.Peak, 0.0006);
        Assert.Equal(50.122, year.Residual, 0.0006);
    }

    [Fact]
    public void A_lined_wall_set_out_by_hand_gives_the_figures_of_its_case()
    {
        var year = Year(Builds.Inland(), HeatFlow.Horizontal, Builds.Row("plasterboard", 12.5, 0.21, 10), Builds.Row("wool", 80, 0.036, 1), Builds.Row("brick", 328, 0.77, 16));
        Assert.Equal((MoistureVerdict.Dries, 10, 2), (year.Verdict, year.StartMonth!.Value, year.PeakMonth!.Value));
        Assert.Equal(2920.496, year.Peak, 0.0006);
    }

    [Fact]
    public void Constant_air_gives_the_rate_by_hand()
    {
        var year = Year(Builds.Constant(0, 0.8, 0.5), HeatFlow.Horizontal, Builds.Row("inner", 100, 0.04, 1, sd: 2), Builds.Row("outer", 10, 0.2, 1, sd: 50));
        Assert.Equal(MoistureVerdict.Stays, year.Verdict);
        Assert.Equal(1645.724, year.Residual, 0.0006);
    }

    [Fact]
    public void Insulation_outside_that_breathes_stays_dry()
    {
        var year = Year(Builds.Inland(), HeatFlow.Horizontal, Builds.Row("plaster", 13, 0.57, 10), Builds.Row("block", 215, 0.51, 10), Builds.Row("wool", 140, 0.036, 1), Builds.Row("render", 8, 0.7, 15));
        Assert.Equal(MoistureVerdict.Dry, year.Verdict);
    }

    [Fact]
    public void A_tighter_control_layer_never_raises_the_peak() => Gen.Select(Roofs, Gen.Double[0.01, 100], Gen.Double[1, 20]).Always((roof, sd, more) =>
    {
        var (open, tight) = (Peak(roof.Roof, sd, roof.Climate), Peak(roof.Roof, sd * more, roof.Climate));
        Assert.True(tight <= open * (1 + 1e-9) + 1e-9, $"{open} and {tight} g/m²");
    });

    [Fact]
    public void Two_vapour_factors_leave_no_less_water_than_either_alone() => Roofs.Always((roof, climate) =>
    {
        double Residual(Func<Vapour, double> factor) => Of(climate, HeatFlow.Upwards, [.. roof.Select(layer => layer.Material.Vapour! is { } vapour
            ? layer with { Material = layer.Material with { Vapour = vapour with { MuDry = factor(vapour), MuWet = factor(vapour) } } } : layer)]).Year.Residual;
        var both = Of(climate, HeatFlow.Upwards, roof).Year.Residual;
        Assert.True(both >= Residual(vapour => vapour.MuDry) - 1e-9 && both >= Residual(vapour => vapour.MuWet) - 1e-9);
    });

    [Fact]
    public void More_insulation_warms_the_inside_face() => Roofs.Always((roof, climate) =>
    {
        var thicker = roof.Select(layer => layer.Element == "insulation" ? layer with { Thickness = layer.Thickness + 10 } : layer);
        Assert.True(Of(climate, HeatFlow.Upwards, [.. thicker]).TemperatureFactor > Of(climate, HeatFlow.Upwards, roof).TemperatureFactor);
    });

    [Fact]
    public void The_temperature_factor_has_the_film_of_the_mould_criterion()
    {
        var built = Of(Builds.Maritime(), HeatFlow.Upwards, Builds.Row("board", 100, 0.1, 10));
        Assert.Equal((1 + 0.04) / (0.25 + 1 + 0.04), built.TemperatureFactor, 1e-12);
    }

    private static double Peak(Layer[] roof, double sd, Climate climate) => Of(
        climate, HeatFlow.Upwards, [.. roof.Select(layer => layer.Element == "vcl" ? Builds.Row("vcl", 0.5, 0.2, 1, sd: sd, kind: LayerKind.Sheet) : layer)]).Year.Peak;

    private static CondensationYear Year(Climate climate, HeatFlow flow, params Layer[] fromInside) => Of(climate, flow, fromInside).Year;

    private static BuildupMoisture Of(Climate climate, HeatFlow flow, params Layer[] fromInside)
    {
        var section = Builds.Section(flow, null, fromInside);
        return BuildupMoisture.Of(MoistureModel.Of(section.Buildups[0], section), climate);
    }
}
