using System.Globalization;
using DetailGen.Analysis.Moisture;
using DetailGen.Physics.Moisture;
using DetailGen.Sections;

namespace DetailGen.Library.Wording;

/// <summary>Condensation and mould in sentences.</summary>
internal static class MoistureSentences
{
    internal const string Standard =
        "ISO 13788:2012, monthly interstitial condensation and critical surface humidity (method from memory, clauses still to be read); resistances ISO 6946, homogeneous layers";

    internal const string Caution =
        "Vapour by diffusion only: air that leaks through gaps carries far more, and rain, water built in, heat and water stored in materials are left out. "
        + "Plain build-ups away from the junction: corners are colder. A competent person judges, with the local regulations and the manufacturers' figures.";

    internal static string InventedClimate(string id) =>
        $"The climate {id} is invented for demonstration. Name a measured one of the place under site: {{ climate: … }} before anything is decided by these figures.";

    internal static string Outcome(BuildupMoisture built)
    {
        var year = built.Year;
        var place = string.Join("; ", year.Interfaces.Select(Place));
        var peak = $"at most {Grams(year.Peak)} in {MonthName(year.PeakMonth ?? 0)}";
        return year.Verdict switch
        {
            MoistureVerdict.Dry => $"{Name(built)}: no condensation in any month.",
            MoistureVerdict.Dries => $"{Name(built)}: condensation {place} from {MonthName(year.StartMonth!.Value)}, {peak}; gone {Months(year.DryAfter!.Value)} after its start. "
                + "To be confirmed: that the materials there stand that much water.",
            _ => $"{Name(built)}: condensation {place} from {MonthName(year.StartMonth!.Value)}, {peak}; {Grams(year.Residual)} are left after a year, so water gathers year after year.",
        };
    }

    internal static string Mould(BuildupMoisture built, SurfaceCriterion surface) => surface.Factor is { } needed
        ? $"{Name(built)}: temperature factor of the plain inside face {Factor(built.TemperatureFactor)}, needed against mould {Factor(needed)} ({MonthName(surface.CriticalMonth!.Value)}); corners are colder."
        : $"{Name(built)}: no month is colder outside than inside, so mould asks nothing of the inside face.";

    /// <summary>How the layers were taken from the section.</summary>
    /// <param name="betweenRooms">The wall stands between two rooms below the roof.</param>
    internal static IReadOnlyList<string> Steps(IReadOnlyList<BuildupMoisture> buildups, bool betweenRooms)
    {
        var steps = new List<string>
        {
            "Wall and roof are taken away from the junction, as plain layers from the room outwards, each with its thickness in the section.",
            $"Air, however thick, counts as {Figures.Short(MoistureModel.SdOfAir)} m of still air to vapour, and as unventilated to heat; a cavity that drains through weeps too.",
            "Sheets have no thermal resistance; a sheet counts with the sd of its kind, other layers with vapour factor times thickness.",
            "Of the two vapour factors of a material (dry, wet) the lesser counts on the room's side and the greater beyond, changing where that leaves the most water.",
        };
        foreach (var built in buildups)
        {
            var name = Name(built).ToLowerInvariant();
            steps.AddRange(built.Model.Layers.Select(layer => layer.Layer).Where(layer => layer.Kind == LayerKind.Bridged || (layer.Kind == LayerKind.Air && layer.Remark.Length > 0))
                .Select(layer => $"Across the {name} stand members in {layer.Reference} ({layer.Element.ToLowerInvariant()}, {layer.Remark}): the layer between them is calculated, the members are not."));
            steps.AddRange(built.Model.Layers.Select(layer => layer.Layer).Where(layer => layer.Tapers)
                .Select(layer => $"In the {name} {layer.Reference} ({layer.Element.ToLowerInvariant()}) takes up the fall: it counts as thick as it is at the upstand."));
            if (built.Model.LeftOut.Count > 0)
            {
                steps.Add($"Over the water barrier of the {name}, left out as open to rain and air: {string.Join(", ", built.Model.LeftOut.Select(layer => $"{layer.Reference} {layer.Element.ToLowerInvariant()}"))}.");
            }
        }

        if (betweenRooms)
        {
            steps.Add("The wall is that above the roof; below it, it stands between two rooms and is not calculated.");
        }

        return steps;
    }

    internal static string Name(BuildupMoisture built) => built.Model.Buildup.Id == "wall" ? "Wall" : "Roof";

    private static string Place(WetInterface wet) => wet.Inside == wet.Outside ? $"inside {Small(wet.Inside)}" : $"between {Small(wet.Inside)} and {Small(wet.Outside)}";

    private static string Small(string element) => element.ToLowerInvariant();

    /// <param name="month">0 for January.</param>
    private static string MonthName(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month + 1);

    internal static string Grams(double mass) => mass < 0.05 ? "less than 0.1 g/m²" : mass.ToString("0.0", CultureInfo.InvariantCulture) + " g/m²";

    private static string Months(int count) => count == 1 ? "a month" : $"{Figures.Count(count)} months";

    private static string Factor(double factor) => Figures.Fixed(factor, 3);
}
