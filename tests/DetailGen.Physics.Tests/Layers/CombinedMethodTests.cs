using System.Collections.Immutable;
using CsCheck;
using DetailGen.Physics.Layers;
using DetailGen.Testing;

namespace DetailGen.Physics.Tests.Layers;

public class CombinedMethodTests
{
    private static readonly Gen<ElementLayer> Plain = Gen.Double[0, 4].Select(resistance => (ElementLayer)new ElementLayer.Plain("plain", resistance));

    // Bridges of wood and the like; the limits of the method stay well within 1.5.
    private static readonly Gen<ElementLayer> Bridged = Gen.Select(Gen.Double[0.02, 0.2], Gen.Double[0.5, 3], Gen.Double[0.4, 1]).Select((share, resistance, ratio) =>
        (ElementLayer)new ElementLayer.Bridged("bridged", [new(1 - share, resistance), new(share, resistance * ratio)]));

    private static readonly Gen<Element> Elements = Gen.Select(Gen.OneOf(Plain, Bridged).Array[1, 5], Gen.Double[0.02, 0.2], Gen.Double[0.02, 0.2])
        .Select((layers, inside, outside) => new Element(inside, outside, inside, [.. layers]));

    private static ElementTransmittance Found(Element element) => Assert.IsType<TransmittanceOutcome.Found>(CombinedMethod.Of(element)).Result;

    private static ImmutableArray<ElementFault> Refused(params ElementLayer[] layers) =>
        Assert.IsType<TransmittanceOutcome.Refused>(CombinedMethod.Of(new(0.13, 0.04, 0.13, [.. layers]))).Faults;

    [Fact]
    public void More_insulation_never_raises_U() =>
        Gen.Select(Elements, Gen.Double[0, 5]).Always((element, more) =>
            Found(element with { Layers = element.Layers.Add(new ElementLayer.Plain("more", more)) }).Final <= Found(element).Final * (1 + 1e-12));

    [Fact]
    public void The_total_lies_between_its_limits_and_paths_fill_the_area() => Elements.Always(element =>
    {
        var found = Found(element);
        Assert.InRange(found.Total, found.Lower * (1 - 1e-12), found.Upper * (1 + 1e-12));
        Assert.Equal(1, found.Paths.Sum(path => path.Fraction), 1e-12);
        Assert.Equal(found.Paths.OrderByDescending(path => path.Fraction), found.Paths);
    });

    [Fact]
    public void Order_of_layers_does_not_matter() => Elements.Always(element =>
        Assert.Equal(Found(element).Final, Found(element with { Layers = [.. element.Layers.Reverse()] }).Final, 1e-12));

    [Fact]
    public void A_bridge_like_its_surroundings_is_no_bridge() =>
        Gen.Select(Gen.Double[0.05, 0.95], Gen.Double[0.1, 5]).Always((share, resistance) => Assert.Equal(
            1 / (0.17 + resistance),
            Found(new(0.13, 0.04, 0.13, [new ElementLayer.Bridged("bridged", [new(share, resistance), new(1 - share, resistance)])])).Final, 1e-12));

    /// <summary>Closed forms as they are printed, where corners are far apart; an oracle that shares nothing with the divided differences.</summary>
    [Fact]
    public void Tapered_pieces_agree_with_the_printed_closed_forms() =>
        Gen.Select(Gen.Double[0.1, 3], Gen.Double[0.3, 3], Gen.Double[3.5, 8]).Always((rest, first, second) =>
        {
            Assert.Equal(Math.Log(1 + first / rest) / first, Piece(rest, 0, first), 1e-12);
            Assert.Equal(2 / first * ((1 + rest / first) * Math.Log(1 + first / rest) - 1), Piece(rest, 0, 0, first), 1e-10);
            Assert.Equal(2 / first * (1 - rest / first * Math.Log(1 + first / rest)), Piece(rest, 0, first, first), 1e-10);
            var unlike = 2 * (rest * first * Math.Log(1 + second / rest) - rest * second * Math.Log(1 + first / rest) + first * second * Math.Log((rest + second) / (rest + first)))
                / (first * second * (second - first));
            Assert.Equal(unlike, Piece(rest, 0, first, second), 1e-9);
        });

    /// <summary>Also where corners come close, where the printed forms lose all digits: the midpoint rule over 120 × 120 small triangles or strips.</summary>
    [Fact]
    public void Tapered_pieces_are_the_mean_over_their_area_however_close_the_corners() =>
        Gen.Select(Gen.Double[0.3, 3], Gen.Double[-12, 0.5], Gen.Double[-12, 0.5]).Always((rest, first, second) =>
        {
            var (b, c) = (Math.Pow(10, first), Math.Pow(10, second));
            var found = Piece(rest, 0, b, c);
            Assert.Equal(1, found / MeanOverTriangle(rest, rest + b, rest + c), 1e-3);
            Assert.InRange(found, 1 / (rest + Math.Max(b, c)), 1 / rest);
            Assert.Equal(found, Piece(rest, c, 0, b), 1e-13);
        });

    private static double MeanOverTriangle(double a, double b, double c)
    {
        const int Parts = 120;
        var sum = 0.0;
        for (var i = 0; i < Parts; i++)
        {
            for (var j = 0; i + j < Parts; j++)
            {
                sum += At(i + 1 / 3.0, j + 1 / 3.0);
                sum += i + j < Parts - 1 ? At(i + 2 / 3.0, j + 2 / 3.0) : 0;
            }
        }

        return sum / (Parts * Parts);

        double At(double u, double v) => 1 / (a + (b - a) * u / Parts + (c - a) * v / Parts);
    }

    private static double Piece(double rest, params double[] thicknesses) =>
        Found(new(rest, 0, rest, [new ElementLayer.Tapered("tapered", 1, [new(1, [.. thicknesses])])])).Final;

    [Fact]
    public void A_slightly_ventilated_layer_lies_between_a_closed_and_an_open_one() =>
        Gen.Select(Gen.Double[501, 1499], Gen.Double[0.01, 0.3]).Always((openings, thickness) =>
        {
            double With(double area) => Found(new(0.13, 0.04, 0.13,
            [
                new ElementLayer.Plain("inner", 2), new ElementLayer.Air("cavity", new(thickness, 0.9, 0.9, 10, 5, area)), new ElementLayer.Plain("outer", 0.3),
            ])).Final;
            Assert.InRange(With(openings), With(0), With(2000));
        });

    [Fact]
    public void What_lies_beyond_a_well_ventilated_layer_changes_nothing_whatever_lies_within() =>
        Gen.Select(Gen.Double[0.01, 0.1], Gen.Double[501, 1499], Gen.Bool).Always((thickness, openings, tapered) =>
        {
            ElementLayer inner = tapered ? new ElementLayer.Tapered("board", 0.03, [new(1, [0.05, 0.2])]) : new ElementLayer.Air("inner air", new(thickness, 0.9, 0.9, 10, 5, openings));
            ElementLayer open = new ElementLayer.Air("open air", new(0.05, 0.9, 0.9, 10, 5, 3000));
            var within = new Element(0.13, 0.13, 0.13, [new ElementLayer.Plain("wall", 1), inner, new ElementLayer.Plain("lining", 0.2)]);
            Assert.Equal(Found(within).Final, Found(within with { Rse = 0.04, Layers = [.. within.Layers, open, new ElementLayer.Plain("cladding", 0.1)] }).Final, 1e-12);
        });

    [Fact]
    public void What_the_standard_does_not_cover_is_refused_with_its_layer()
    {
        Assert.Equal(Messages.MetalBridge(0, "frame", 50), Assert.Single(Refused(new ElementLayer.Bridged("frame", [new(0.999, 3), new(0.001, 0.003, 50)]))));
        Assert.Equal(Messages.AirLayerTooThick(0, "void", 0.4), Assert.Single(Refused(new ElementLayer.Air("void", new(0.4, 0.9, 0.9, 10, 5, 0)))));
        Assert.Contains("more than 1.5 times apart", Assert.Single(Refused(
            new ElementLayer.Bridged("a", [new(0.5, 5), new(0.5, 0.1)]), new ElementLayer.Bridged("b", [new(0.5, 0.1), new(0.5, 5)], Group: null))).Reason, StringComparison.Ordinal);
        Assert.Equal(2, Refused(new ElementLayer.Tapered("t", 0.03, [new(1, [0, 0.1])]), new ElementLayer.Bridged("b", [new(0.9, 2), new(0.1, 1)]), new ElementLayer.Tapered("u", 0.03, [new(1, [0, 0.1])]))
            .Count(fault => fault.Reason.Contains("bridged", StringComparison.Ordinal)));
        Assert.Equal(Messages.TooManyPaths(), Assert.Single(Refused([.. Enumerable.Range(0, 13).Select(i => new ElementLayer.Bridged($"{i}", [new(0.9, 2), new(0.1, 1.9)]))])));
        Assert.Equal(Messages.NoResistance(), Assert.Single(Assert.IsType<TransmittanceOutcome.Refused>(CombinedMethod.Of(new(0, 0, 0, [new ElementLayer.Plain("a", 0)]))).Faults));
    }
}
