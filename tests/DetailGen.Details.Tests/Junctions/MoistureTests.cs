using System.Collections.Immutable;
using DetailGen.Analysis.Moisture;
using DetailGen.Details.Solving;
using DetailGen.Physics.Moisture;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Junctions;

public class MoistureTests
{
    private static readonly Climate Frosty = Outside([-3, -1.5, 3, 8.5, 13.5, 16.5, 18.5, 18, 13.5, 8.5, 3, -1], 0.8, 1080);

    [Fact]
    public void Wall_and_roof_of_any_sizes_are_answered_in_numbers() => AnyDetail.Presets.Always(
        preset =>
        {
            if (Shipped.Solve(preset) is not Solution.Solved solved)
            {
                return;
            }

            var section = SectionBuilder.Build(solved);
            Assert.Equal(["wall", "roof"], section.Buildups.Select(buildup => buildup.Id));
            foreach (var built in section.Buildups.Select(buildup => BuildupMoisture.Of(MoistureModel.Of(buildup, section), Frosty)))
            {
                Assert.True(built.TemperatureFactor is > 0 and < 1);
                Assert.True(double.IsFinite(built.Year.Peak) && double.IsFinite(built.Year.Residual) && built.Year.Residual >= 0 && built.Year.Residual <= built.Year.Peak);
                Assert.All(built.Year.Interfaces, wet => Assert.All(wet.Accumulated, mass => Assert.True(double.IsFinite(mass) && mass >= 0)));
                Assert.All(built.Model.Layers, layer => Assert.True(layer.LeastSd > 0 && layer.LeastSd <= layer.MostSd && layer.Resistance >= 0));
            }
        },
        cases: Soak.Cases(60), print: AnyDetail.Told);

    [Fact]
    public void A_roof_counts_down_to_its_membrane_and_every_layer_but_the_finish()
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "roof.finish=ballast");
        var roof = MoistureModel.Of(section.Buildups[1], section);
        Assert.Equal("roof.membrane", roof.Layers[^1].Layer.Slot);
        Assert.All(roof.LeftOut, layer => Assert.Contains(layer.Slot, new[] { "roof.finish", "roof.fleece" }));
        Assert.NotEmpty(roof.LeftOut);
    }

    private static Climate Outside(double[] temperature, double humidity, double excess)
    {
        ImmutableArray<double> pressure = [.. temperature.Select(t => humidity * Saturation.Pressure(t))];
        return new([.. temperature], pressure, [.. Enumerable.Repeat(20.0, 12)], [.. temperature.Zip(pressure, (t, p) => p + VapourExcess.At(t, excess))]);
    }
}
