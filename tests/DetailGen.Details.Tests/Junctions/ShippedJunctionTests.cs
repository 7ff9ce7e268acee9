using DetailGen.Analysis.Fit;

namespace DetailGen.Details.Tests.Junctions;

public class ShippedJunctionTests
{
    public static TheoryData<string, string, string> Pairings
    {
        get
        {
            var all = new TheoryData<string, string, string>();
            foreach (var (junction, wall, roof) in Shipped.Pairings)
            {
                all.Add(junction, wall, roof);
            }

            return all;
        }
    }

    [Fact]
    public void Two_walls_two_roofs_and_two_junctions_make_eight_pairings() => Assert.Equal(8, Shipped.Pairings.Count());

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_pairing_with_nothing_set_tiles_and_speaks(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof);
        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
        {
            Picture.Write(section, Path.Combine(folder, $"{junction}-{wall}-{roof}.json"));
        }

        Laws.Hold(section);
        Assert.All(section.Parts.Where(part => !part.IsAir), part => Assert.True(part.Words.Purpose.Length > 0 && part.Words.Without.Length > 0, part.Id));
        Assert.All(section.Parts, part => Assert.InRange(part.Words.Note.Length, 0, 90));
        Assert.All(section.Parts, part => Assert.DoesNotContain('{', part.Words.Note));
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_stack_note_names_the_material_of_every_solid_layer(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof, "roof.finish=ballast", "roof.finish-thickness=60 mm");
        foreach (var layer in section.Buildups.SelectMany(buildup => buildup.Layers).Where(layer => layer.Material.Id != "air"))
        {
            var note = section[layer.PartId].Words.Note;
            var told = note.Length > 0 ? note : layer.Told;
            // as notes call it: up to the first comma or bracket
            var name = layer.Material.Name.Split(',', '(')[0].Trim();
            Assert.True(told.Contains(name, StringComparison.OrdinalIgnoreCase) || told.StartsWith("Joists", StringComparison.Ordinal), $"{layer.PartId}: {told} has no {name}");
        }
    }

    [Fact]
    public void A_tray_in_a_section_is_found_where_two_parts_claim_its_place()
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck");
        var tray = section["tray"];
        var moved = section with { Parts = [.. section.Parts.Select(part => part == tray ? part with { Region = part.Region.Shift(0, 1) } : part)] };
        Assert.Contains(Tiling.Check(moved), misfit => misfit.Overlaps && misfit.Parts.Contains("tray"));
        Assert.Contains(Tiling.Check(moved), misfit => !misfit.Overlaps && misfit.Parts.Contains("tray"));
    }
}
