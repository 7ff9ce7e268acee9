using System.Globalization;
using DetailGen.Physics.Layers;

namespace DetailGen.Physics;

/// <summary>Every sentence that this project says to people about an element or a field. What is said about the form of a case file is in Messages.Cases.cs.</summary>
internal static partial class Messages
{
    internal static ElementFault NoResistance() => new(null, "The element resists no heat: films and layers sum to 0.", "Give a film or a layer.");

    internal static ElementFault LimitsTooFarApart(double upper, double lower) => new(null,
        $"The limits of the resistance, {Number(upper)} and {Number(lower)} m²K/W, are more than {Number(CombinedMethod.FarthestLimits)} times apart; the combined method of ISO 6946 does not cover this.",
        "Calculate the element in two dimensions (kind heat2d).");

    internal static ElementFault AirLayerTooThick(int index, string name, double thickness) => new(index,
        $"Air layer {name} is {Number(thickness * 1000)} mm thick; ISO 6946 covers air layers of up to {Number(AirSpace.Thickest * 1000)} mm.", "Treat it as a space of its own, or give r_m2k_w.");

    internal static ElementFault SecondVentilatedLayer(int index, string name) => new(index,
        $"{name} is a second slightly ventilated air layer; ISO 6946 says how to treat one.", "Give the openings of one of them as 0 or as well ventilated.");

    internal static ElementFault SecondTaperedLayer(int index, string name) => new(index, $"{name} is a second tapered layer; there can be one.", "Put both into one, with the sum of their thicknesses.");

    internal static ElementFault TaperedBesideVentilated(int index, string name) => new(index,
        $"{name} is tapered and an air layer beside it is slightly ventilated; no closed form covers both.", "Give the openings of the air layer as 0 or as well ventilated.");

    internal static ElementFault TaperedBesideBridged(int index, string name) => new(index,
        $"{name} is tapered and another layer is bridged; no closed form covers both.", "Give the bridged layer's resistance as r_m2k_w.");

    internal static ElementFault MetalBridge(int index, string name, double conductivity) => new(index,
        $"{name} is bridged by metal ({Number(conductivity)} W/mK); the combined method of ISO 6946 does not cover this.", "Calculate it in two dimensions (kind heat2d), or as fasteners.");

    internal static ElementFault GroupDiffers(int index, string name, string first, string group) => new(index,
        $"{name} is in group {group} with {first}, but their fractions differ.", "Layers of one group need the same fractions in the same order.");

    internal static ElementFault TooManyPaths() => new(null, $"The bridged layers make more than {CombinedMethod.MostPaths} paths.", "Put layers that are bridged in line into one group.");

    internal static ElementFault NoSuchLayer(string name, IEnumerable<string> names) => new(null, $"A correction names the layer {name}, which there is not.", $"The layers are {string.Join(", ", names)}.");

    internal static ElementFault CorrectedLayerLeftOut(int index, string name) => new(index,
        $"A correction names {name}, which lies beyond a well ventilated air layer and is left out.", "Name a layer inside of it.");

    internal static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
