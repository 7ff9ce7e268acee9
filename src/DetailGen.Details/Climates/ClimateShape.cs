using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Climates;

/// <summary>The keys of a file of climates: a list of climates.</summary>
public static class ClimateShape
{
    /// <summary>January first.</summary>
    public static IReadOnlyList<string> Months { get; } = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    public static MapShape Climate { get; } = new(
        new Field("id", ComponentShape.Id, "Name by which presets pick it.", Required: true),
        new Field("title", new TextShape(80), "In words.", Required: true),
        new Field("usual-for", new ListShape(new WordShape(PresetShape.Nations)), "Nations whose details are calculated in it where the preset names none."),
        new Field("months", new MapShape([.. Months.Select(month => new Field(month, Month, "Means of the month.", Required: true))]), "Mean air outside, month by month.", Required: true),
        new Field("origin", new WordShape("measured", "tabulated", "assumed", "invented"), "How the figures came about.", Required: true),
        new Field("source", SourceShape.Shape, "Where the figures come from.", Required: true),
        new Field("note", new TextShape(), "What else there is to say."));

    public static ListShape Shape { get; } = new(Climate);

    private static MapShape Month => new(
        new Field("temperature", new NumberShape(-60, 60), "°C.", Required: true),
        new Field("humidity", new NumberShape(0.01m, 1), "Relative humidity as a part of 1; or else vapour-pressure."),
        new Field("vapour-pressure", new NumberShape(1, 10_000), "Pa; or else humidity."));
}
