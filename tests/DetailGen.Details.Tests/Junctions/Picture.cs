using System.Text.Json;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>Writes a section as plain numbers, for a look at it with other tools.</summary>
internal static class Picture
{
    public static void Write(Section section, string path) => File.WriteAllText(path, JsonSerializer.Serialize(new
    {
        parts = section.Parts.Select(part => new
        {
            part.Id,
            material = part.Material.Id,
            fill = part.Material.Fill,
            presence = part.Presence.ToString(),
            note = part.Words.Note,
            pieces = part.Region.Pieces.Select(piece => new { outline = Numbers(piece.Outline), holes = piece.Holes.Select(Numbers) }),
        }),
        levels = section.Levels.Select(level => new { level.Text, level.Y, level.At.X, level.Shown }),
        measures = section.Measures.Select(measure => new { measure.Id, measure.Value, measure.Chain, measure.Tier }),
        runs = section.Runs.Select(run => new { run.Id, run.Least, run.End }),
    }));

    private static double[][] Numbers(IReadOnlyList<Point> line) => [.. line.Select(point => new[] { point.X, point.Y })];
}
