using System.Collections.Immutable;

namespace DetailGen.Physics.Layers;

/// <summary>Thermal transmittance of plane elements: plain, bridged, tapered and air layers, with corrections.</summary>
/// <remarks>
/// ISO 6946:2017, combined method, air layers, tapered layers and corrections (clause numbers still to be read; formulas and conventions from the notes of the check cases,
/// which give them from memory). Upper limit: paths of plain heat flow side by side. Lower limit: the parts of each layer side by side.
/// </remarks>
public static class CombinedMethod
{
    /// <summary>Most paths that are followed.</summary>
    public const int MostPaths = 4096;

    /// <summary>Upper over lower limit that the method stands; ISO 6946, from memory.</summary>
    public const double FarthestLimits = 1.5;

    /// <summary>From this conductivity on a bridge counts as metal, W/(m·K); our convention, no source: mineral materials end at about 4, metals begin at about 15.</summary>
    public const double Metal = 10;

    /// <summary>Corrections whose sum is below this share of U may be left out; ISO 6946, from memory.</summary>
    public const double SmallShare = 0.03;

    /// <summary>A fastener, or a part of it, that conducts less than this needs no correction, W/(m·K); ISO 6946:2007, D.3.2, from memory.</summary>
    public const double PoorConductor = 1;

    /// <summary>U in W/(m²·K), with what it is made of; or every reason why the method does not cover the element.</summary>
    public static TransmittanceOutcome Of(Element element)
    {
        var faults = Faults(element).ToImmutableArray();
        if (faults.Length > 0)
        {
            return new TransmittanceOutcome.Refused(faults);
        }

        var (upper, lower, total) = Limits(element);
        if (!(total > 0))
        {
            return new TransmittanceOutcome.Refused([Messages.NoResistance()]);
        }

        if (upper > FarthestLimits * lower)
        {
            return new TransmittanceOutcome.Refused([Messages.LimitsTooFarApart(upper, lower)]);
        }

        var taper = Taper(element);
        var standing = Standing(element);
        ImmutableArray<double?> layers =
        [
            .. element.Layers.Select((layer, i) => i >= standing ? null : layer is ElementLayer.Tapered ? total - Rest(element) : (double?)Resistance(layer, element.Flow)),
        ];
        return new TransmittanceOutcome.Found(Corrected(element, total, new(
            total, upper, lower, taper is null ? [.. Paths(element, standing, Outer(element, standing)).OrderByDescending(path => path.Fraction)] : [], layers,
            taper is null ? [] : [.. taper.Pieces.Select(piece => PieceTransmittance(taper, piece, Rest(element)))], null, [], null, false, 1 / total)));
    }

    private static (double Upper, double Lower, double Total) Limits(Element element)
    {
        if (Taper(element) is { } taper)
        {
            var rest = Rest(element);
            var areas = taper.Pieces.Sum(piece => piece.Area);
            var total = areas / taper.Pieces.Sum(piece => piece.Area * PieceTransmittance(taper, piece, rest));
            return (total, total, total);
        }

        var standing = Standing(element);
        var closed = Limits(element, standing, Outer(element, standing));
        if (Slight(element) is not { } index || Space(element, index) is not { } space)
        {
            return (closed.Upper, closed.Lower, (closed.Upper + closed.Lower) / 2);
        }

        var open = Limits(element, index, element.RseSheltered);
        var share = (space.Openings - 500) / 1000;
        return (closed.Upper, closed.Lower, (1 - share) * (closed.Upper + closed.Lower) / 2 + share * (open.Upper + open.Lower) / 2);
    }

    private static (double Upper, double Lower) Limits(Element element, int standing, double outer) => (
        1 / Paths(element, standing, outer).Sum(path => path.Fraction / path.Resistance),
        element.Rsi + element.Layers.Take(standing).Sum(layer => Resistance(layer, element.Flow)) + outer);

    /// <summary>Every way through the layers, groups kept in line; the fraction of a way is the product of those of its parts.</summary>
    private static ImmutableArray<HeatPath> Paths(Element element, int standing, double outer)
    {
        var layers = element.Layers.Take(standing).ToList();
        var plain = element.Rsi + outer + layers.Where(layer => layer is not ElementLayer.Bridged).Sum(layer => Resistance(layer, element.Flow));
        return Bundles(layers).Aggregate(ImmutableArray.Create(new HeatPath(1, plain)), (paths, bundle) =>
        [
            .. paths.SelectMany(path => bundle[0].Parts.Select((part, i) =>
                new HeatPath(path.Fraction * part.Fraction, path.Resistance + bundle.Sum(layer => layer.Parts[i].Resistance)))),
        ]);
    }

    /// <summary>Bridged layers that are crossed in line stand together.</summary>
    private static IEnumerable<List<ElementLayer.Bridged>> Bundles(IEnumerable<ElementLayer> layers) => layers
        .OfType<ElementLayer.Bridged>()
        .Select((layer, i) => (Layer: layer, Key: layer.Group is { } group ? "group " + group : $"layer {i}"))
        .GroupBy(entry => entry.Key, StringComparer.Ordinal)
        .Select(bundle => bundle.Select(entry => entry.Layer).ToList());

    private static double Resistance(ElementLayer layer, Flow flow) => layer switch
    {
        ElementLayer.Plain plain => plain.Resistance,
        ElementLayer.Air air => air.Space.Resistance(flow),
        ElementLayer.Bridged bridged => bridged.Parallel,
        _ => 0, // tapered layers have none of their own; their pieces are dealt with apart
    };

    private static ElementLayer.Tapered? Taper(Element element) => element.Layers.Take(Standing(element)).OfType<ElementLayer.Tapered>().FirstOrDefault();

    /// <summary>R₀ of a tapered element: all that counts but the tapered layer.</summary>
    private static double Rest(Element element) =>
        element.Rsi + element.Layers.Take(Standing(element)).Sum(layer => Resistance(layer, element.Flow)) + Outer(element, Standing(element));

    private static double PieceTransmittance(ElementLayer.Tapered taper, TaperedPiece piece, double rest)
    {
        double At(int corner) => rest + piece.Thicknesses[corner] / taper.Conductivity;
        return piece.Thicknesses.Length == 2
            ? TaperedMean.Rectangle(Math.Min(At(0), At(1)), Math.Max(At(0), At(1)))
            : TaperedMean.Triangle(At(0), At(1), At(2));
    }

    /// <summary>Index of the slightly ventilated air layer among those that count.</summary>
    private static int? Slight(Element element) => First(element, Ventilation.Slight) is { } index && index < Standing(element) ? index : null;

    private static int? First(Element element, Ventilation ventilation) =>
        Enumerable.Range(0, element.Layers.Length).Select(i => (int?)i).FirstOrDefault(i => Space(element, i!.Value)?.Ventilation == ventilation);

    private static AirSpace? Space(Element element, int index) => element.Layers[index] is ElementLayer.Air air ? air.Space : null;

    /// <summary>How many layers from inside count: all, or those up to the innermost well ventilated air layer.</summary>
    private static int Standing(Element element) => First(element, Ventilation.Well) ?? element.Layers.Length;

    private static double Outer(Element element, int standing) => standing < element.Layers.Length ? element.RseSheltered : element.Rse;

    private static ElementTransmittance Corrected(Element element, double total, ElementTransmittance plain)
    {
        var corrections = element.Corrections;
        var homogeneous = Taper(element) is null ? Limits(element with { Layers = [.. element.Layers.Select(Unbridged)] }).Total : total;
        double Share(string name, double whole) => Math.Pow(OwnResistance(element, name, plain) / whole, 2);
        var gaps = corrections.AirGaps is { } gap ? new[] { 0, 0.01, 0.04 }[gap.Level] * Share(gap.Layer, homogeneous) : (double?)null;
        ImmutableArray<double> fasteners =
        [
            .. corrections.Fasteners.Select(pins => pins.Conductivity < PoorConductor
                ? 0
                : Math.Min(0.8, 0.8 * pins.Within / pins.Insulation) * pins.Conductivity * pins.Section * pins.PerArea / pins.Insulation * Share(pins.Layer, homogeneous)),
        ];
        var rain = corrections.Rain is { } wet ? wet.Rain * wet.Factor * Share(wet.Layer, total) : (double?)null;
        var sum = (gaps ?? 0) + fasteners.Sum() + (rain ?? 0);
        var applied = (gaps is not null || rain is not null || fasteners.Length > 0) && !(corrections.SmallOnesAreLeftOut && sum < SmallShare / total);
        return plain with { AirGaps = gaps, Fasteners = fasteners, Rain = rain, CorrectionsApplied = applied, Final = 1 / total + (applied ? sum : 0) };
    }

    private static ElementLayer Unbridged(ElementLayer layer) => layer is ElementLayer.Bridged bridged ? new ElementLayer.Plain(bridged.Name, bridged.Largest) : layer;

    /// <summary>R₁ of the layer that a correction names.</summary>
    private static double OwnResistance(Element element, string name, ElementTransmittance plain)
    {
        var index = IndexOf(element, name);
        return element.Layers[index] is ElementLayer.Bridged bridged ? bridged.Largest : plain.Layers[index]!.Value;
    }

    private static int IndexOf(Element element, string name)
    {
        for (var i = 0; i < element.Layers.Length; i++)
        {
            if (string.Equals(element.Layers[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }

    private static IEnumerable<ElementFault> Faults(Element element)
    {
        var standing = Standing(element);
        var (tapers, slights) = (0, 0);
        for (var i = 0; i < element.Layers.Length; i++)
        {
            switch (element.Layers[i])
            {
                case ElementLayer.Air { Space: var space, Name: var name }:
                    if (space.Thickness > AirSpace.Thickest)
                    {
                        yield return Messages.AirLayerTooThick(i, name, space.Thickness);
                    }

                    if (space.Ventilation == Ventilation.Slight && i < standing && ++slights > 1)
                    {
                        yield return Messages.SecondVentilatedLayer(i, name);
                    }

                    break;
                case ElementLayer.Tapered { Name: var name }:
                    if (++tapers > 1)
                    {
                        yield return Messages.SecondTaperedLayer(i, name);
                    }

                    if (Slight(element) is not null)
                    {
                        yield return Messages.TaperedBesideVentilated(i, name);
                    }

                    if (element.Layers.Any(layer => layer is ElementLayer.Bridged))
                    {
                        yield return Messages.TaperedBesideBridged(i, name);
                    }

                    break;
                case ElementLayer.Bridged { Name: var name, Parts: var parts, Group: var group }:
                    if (parts.FirstOrDefault(part => part.Conductivity >= Metal) is { } metal)
                    {
                        yield return Messages.MetalBridge(i, name, metal.Conductivity!.Value);
                    }

                    if (group is not null && element.Layers.OfType<ElementLayer.Bridged>().First(layer => layer.Group == group) is var first
                        && !(first.Parts.Length == parts.Length && first.Parts.Zip(parts).All(pair => Math.Abs(pair.First.Fraction - pair.Second.Fraction) <= 1e-9)))
                    {
                        yield return Messages.GroupDiffers(i, name, first.Name, group);
                    }

                    break;
            }
        }

        if (Bundles(element.Layers).Aggregate(1.0, (ways, bundle) => ways * bundle[0].Parts.Length) > MostPaths)
        {
            yield return Messages.TooManyPaths();
        }

        var corrections = element.Corrections;
        foreach (var name in corrections.Fasteners.Select(pins => pins.Layer).Append(corrections.AirGaps?.Layer).Append(corrections.Rain?.Layer).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            if (IndexOf(element, name) is var index && (index < 0 || index >= standing))
            {
                yield return index < 0 ? Messages.NoSuchLayer(name, element.Layers.Select(layer => layer.Name)) : Messages.CorrectedLayerLeftOut(index, name);
            }
        }
    }
}
