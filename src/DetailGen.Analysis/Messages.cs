using System.Globalization;

namespace DetailGen.Analysis;

/// <summary>What this project says to people: how a thermal model departs from what is drawn.</summary>
internal static class Messages
{
    internal static string RoofLaidLevel => "The roof is laid level, each layer as thick as at the face of the upstand.";

    internal static string OnTheMembrane(IEnumerable<string> parts) => $"Left out, as open to wind and rain: what lies on the roof's membrane ({List(parts)}).";

    internal static string OutdoorAir(IEnumerable<string> parts) => $"Counted as outside: air that only a sheet or a strip parts from it ({List(parts)}).";

    internal static string ThinSheets(IEnumerable<string> parts, double thick) =>
        $"Sheets under {Number(thick)} mm are no solids of their own ({List(parts)}): between solids the most conducting one beside them takes their place, at a surface they are left out.";

    internal static string Repeating(string part, double width, double centres, double conductivity) =>
        $"{part}: repeated out of the plane ({Number(width)} at {Number(centres)} mm), so counted by share of the area: {conductivity.ToString("0.0##", CultureInfo.InvariantCulture)} W/mK with what lies between.";

    internal static string AirLayers => "Air in cavities and voids is unventilated and conducts as thickness over resistance, by the direction of the heat (ISO 6946, table of unventilated layers, as in the schedule); weeps are too few to count, and joists do not narrow it.";

    internal static string Fixings(IEnumerable<string> parts) => $"Left out of the field: {List(parts)}; ties and fixings through insulation are corrections of the U-value of their element.";

    internal static string CutOff(double below, double along, double? above) =>
        $"Cut off, without heat passing, {Number(below)} mm below the ceiling and {Number(along)} mm from the face of the upstand"
        + (above is { } up ? $", and {Number(up)} mm above the roof" : "") + ": at least 1 m and three thicknesses of the element (ISO 10211:2017).";

    internal static string Symmetry => "Along the roof the cut-off plane is a plane of symmetry of its joists, and the roof's U is that of half a bay in two dimensions.";

    internal static string Lengths(bool threeAirs) => threeAirs
        ? "Inside dimensions: the roof from the face of the wall in the lower room, the wall from the level of the ceiling. Outside dimensions: the roof from the weather face of the wall, the wall from the outside surface of the roof. With both rooms equally warm no heat passes between them; what passes otherwise is told pair by pair, the wall between the rooms reaching up to where the wall above begins."
        : "Inside dimensions: the wall to the ceiling, the roof from the inside face of the wall. Outside dimensions: the wall to the outside surface of the roof, the roof from the weather face of the wall.";

    internal static string Detached => "Left out: pieces outside that no solid joins to the rest.";

    internal static string Voids(int count) => $"Enclosed gaps between parts pass no heat ({count.ToString(CultureInfo.InvariantCulture)}).";

    private static string List(IEnumerable<string> parts) => string.Join(", ", parts);

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
