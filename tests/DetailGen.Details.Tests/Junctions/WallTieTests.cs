using System.Globalization;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Rules;

namespace DetailGen.Details.Tests.Junctions;

public class WallTieTests
{
    [Theory]
    [InlineData("600 mm", "roof", "150 mm", "450 mm")]
    [InlineData("680 mm", "roof", "150 mm", "450 mm")]
    [InlineData("1125 mm", "roof", "150 mm", "450 mm")]
    [InlineData("1500 mm", "outside", "150 mm", "450 mm")]
    [InlineData("1500 mm", "roof", "300 mm", "300 mm")]
    [InlineData("1200 mm", "outside", "75 mm", "225 mm")]
    public void Rows_of_ties_in_a_parapet_stand_no_farther_apart_than_their_spacing_or_than_the_tray_makes_them(string height, string discharge, string step, string spacing)
    {
        var section = Shipped.Build(
            "parapet", "cavity-masonry", "warm-concrete-deck", $"parapet.height={height}", $"tray.discharge={discharge}", $"tray.step={step}", $"tie.vertical-spacing={spacing}");
        double Size(string text) => double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture);
        var rows = section.Parts.Where(part => part.Id.StartsWith("tie.", StringComparison.Ordinal)).Select(part => part.Region.Bounds.Top).OrderDescending().ToArray();
        var tray = section["tray"].Region.Bounds;
        var across = Size(step) + 300; // a course above the tray's upper edge, three below its lower
        Assert.InRange(section.Levels.Single(level => level.Name == "wall-head").Y - rows[0], 0, 450);
        for (var row = 1; row < rows.Length && rows[row - 1] > tray.Bottom; row++)
        {
            var most = rows[row] < tray.Bottom ? Math.Max(Size(spacing), across) : Size(spacing);
            Assert.InRange(rows[row - 1] - rows[row], 75 - 0.01, most + 0.01);
        }

        Assert.DoesNotContain(section.Parts, part => part.Id.StartsWith("tie.", StringComparison.Ordinal) && !part.Region.Intersect(section["tray"].Region).IsEmpty);
    }

    [Theory]
    [InlineData("warm-timber-deck", "680 mm")]
    [InlineData("warm-concrete-deck", "900 mm")]
    [InlineData("warm-concrete-deck", "1125 mm")]
    public void The_uk_pack_keeps_rows_of_ties_from_crowding_above_the_tray(string roof, string height)
    {
        var preset = PresetReader.ReadText($"detail: d\njunction: parapet\nwall: cavity-masonry\nroof: {roof}\nset: {{ parapet.height: {height} }}\n", "ties.yaml", [], PresetContext.Load()).Value;
        var solved = Assert.IsType<Solution.Solved>(DetailSolver.Solve(preset, ShippedRules.Catalogue));
        Assert.Equal(Judgement.Pass, solved.Verdicts.Single(verdict => verdict.Rule.Id == "tie-rows-parapet").Judgement);
        var section = SectionBuilder.Build(solved);
        var rows = section.Parts.Where(part => part.Id.StartsWith("tie.", StringComparison.Ordinal)).Select(part => part.Region.Bounds.Top).OrderDescending().ToArray();
        Assert.All(rows.Zip(rows.Skip(1)), pair => Assert.True(pair.First - pair.Second > 224, $"{pair}"));
    }
}
