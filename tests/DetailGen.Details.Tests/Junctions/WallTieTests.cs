using System.Globalization;
using DetailGen.Details.Presets;
using DetailGen.Details.Solving;
using DetailGen.Details.Tests.Rules;
using DetailGen.Sections;

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
    [InlineData("parapet", "wall.fill=partial", "wall.cavity=150mm", "wall.cavity-insulation=90mm")]
    [InlineData("parapet", "wall.fill=partial", "wall.cavity=100mm", "wall.cavity-insulation=50mm")]
    [InlineData("parapet", "wall.fill=full", "wall.cavity=150mm")]
    [InlineData("abutment", "wall.fill=partial", "wall.cavity=100mm", "wall.cavity-insulation=50mm")]
    [InlineData("abutment", "wall.fill=partial", "wall.cavity=200mm", "wall.cavity-insulation=140mm")]
    [InlineData("abutment", "wall.fill=full", "wall.cavity=300mm")]
    public void A_tie_drips_in_the_middle_of_what_is_clear_of_the_cavity(string junction, params string[] set)
    {
        var section = Shipped.Build(junction, "cavity-masonry", "warm-concrete-deck", set);
        var ties = section.Parts.Where(part => part.Id.StartsWith("tie.", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(ties);
        foreach (var tie in ties.Select(part => part.Region))
        {
            var box = tie.Bounds;
            var drip = tie.Intersect(Region.Box(box.Left, box.Bottom, box.Right, box.Bottom + 2)).Bounds.Middle.X;
            var level = box.Top - 2;
            Part[] solid = [.. section.Parts.Where(part => part is { IsAir: false, Presence: Presence.Cut, Element: Element.Wall } && part.Region.Bounds.Bottom < level && part.Region.Bounds.Top > level)];
            var filled = solid.Any(part => part.Slot == "wall.cavity-insulation" && part.Region.Contains(new(drip, level)));
            Assert.Equal(set[0] == "wall.fill=full" && section.Parts.Any(part => part.Slot == "wall.cavity-insulation" && part.Region.Contains(new(box.Middle.X, level))), filled);
            var left = solid.Where(part => part.Region.Bounds.Right <= drip).Max(part => part.Region.Bounds.Right);
            var right = solid.Where(part => part.Region.Bounds.Left >= drip).Min(part => part.Region.Bounds.Left);
            Assert.Equal((left + right) / 2, drip, 0.01);
        }
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
