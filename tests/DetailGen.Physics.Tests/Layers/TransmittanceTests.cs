using CsCheck;
using DetailGen.Physics.Layers;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Layers;

public class TransmittanceTests
{
    // Closed formula of ISO 6946 for homogeneous layers (from memory), worked out by hand to seven places.
    [Fact]
    public void A_plastered_block_wall_with_a_filled_cavity_has_the_resistance_worked_out_by_hand()
    {
        (double Thickness, double Conductivity)[] layers = [(0.013, 0.4), (0.1, 0.51), (0.15, 0.034), (0.103, 0.77)];
        var total = SurfaceResistance.Inside(Flow.Horizontal) + SurfaceResistance.Outside + layers.Sum(layer => Transmittance.Resistance(layer.Thickness, layer.Conductivity));
        Assert.Equal(4.9441094, total, 2e-7);
        Assert.Equal(0.2022609, Transmittance.Of(total), 2e-7);
    }

    // EN ISO 6946, conventional surface resistances, as restated in BR 443 (2019), 4.2 (secondary text).
    [Fact]
    public void Surface_resistances_are_the_conventional_ones()
    {
        Assert.Equal((0.13, 0.10, 0.04), (SurfaceResistance.Inside(Flow.Horizontal), SurfaceResistance.Inside(Flow.Upwards), SurfaceResistance.Outside));
    }

    // EN ISO 6946:2007, table 2 (secondary text).
    [Theory]
    [InlineData(5, 0.11, 0.11)]
    [InlineData(10, 0.15, 0.15)]
    [InlineData(25, 0.16, 0.18)]
    [InlineData(50, 0.16, 0.18)]
    [InlineData(300, 0.16, 0.18)]
    public void Air_layers_have_the_resistance_of_the_table(double thickness, double upwards, double horizontal)
    {
        Assert.Equal(upwards, AirLayer.Resistance(thickness, Flow.Upwards), 1e-12);
        Assert.Equal(horizontal, AirLayer.Resistance(thickness, Flow.Horizontal), 1e-12);
    }

    [Fact]
    public void A_thicker_air_layer_never_resists_less() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[0, 400], Gen.Enum<Flow>()).Always((a, b, flow) =>
            AirLayer.Resistance(Math.Min(a, b), flow) <= AirLayer.Resistance(Math.Max(a, b), flow));

    [Fact]
    public void Sizes_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Transmittance.Resistance(-0.1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Transmittance.Resistance(0.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Transmittance.Resistance(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Transmittance.Of(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AirLayer.Resistance(-1, Flow.Upwards));
    }
}
