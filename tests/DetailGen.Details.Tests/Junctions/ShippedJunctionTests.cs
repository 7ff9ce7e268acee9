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
    [InlineData("parapet")]
    [InlineData("abutment")]
    public void What_clads_a_wall_is_built_from_the_leaf_outwards_on_its_profile(string junction)
    {
        var order = Shipped.Build(junction, "solid-masonry-insulated", "warm-concrete-deck").Parts.Select(part => part.Id).ToList();
        Assert.InRange(order.IndexOf("wall.insulation"), 1, order.IndexOf("wall.render") - 1);
        Assert.InRange(order.IndexOf("wall.base-profile"), -1, order.IndexOf("wall.insulation") - 1);
    }

    [Theory]
    [InlineData("parapet", "copper", "Copper wall ties")]
    [InlineData("abutment", "stainless", "Stainless steel wall ties")]
    public void The_note_of_the_ties_names_what_they_are_made_of(string junction, string material, string words)
    {
        var preset = Shipped.Preset(junction, "cavity-masonry", "warm-concrete-deck");
        var made = Details.Parameters.MaterialLibrary.Load().Find(material)!;
        preset = preset with { Slots = [.. preset.Slots.Select(filled => filled.Slot.Key == "tie" ? filled with { Filling = made } : filled)] };
        Assert.Contains(Shipped.Build(preset).Parts, part => part.Words.Note.StartsWith(words, StringComparison.Ordinal));
        Assert.DoesNotContain(Shipped.Build(preset).Parts, part => part.Id.StartsWith("tie.", StringComparison.Ordinal) && part.Words.Note.Length > 0 && !part.Words.Note.StartsWith(words, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Pairings))]
    public void A_stack_note_names_the_material_of_every_solid_layer(string junction, string wall, string roof)
    {
        var section = Shipped.Build(junction, wall, roof, "roof.finish=ballast", "roof.finish-thickness=60 mm");
        Assert.Equal("Ballast", section["roof.finish"].Name);
        foreach (var layer in section.Buildups.SelectMany(buildup => buildup.Layers).Where(layer => layer.Material.Id != "air"))
        {
            var note = section[layer.PartId].Words.Note;
            var told = note.Length > 0 ? note : layer.Told;
            // as notes call it: up to the first comma or bracket
            var name = layer.Material.Name.Split(',', '(')[0].Trim();
            Assert.True(told.Contains(name, StringComparison.OrdinalIgnoreCase) || told.StartsWith("Joists", StringComparison.Ordinal), $"{layer.PartId}: {told} has no {name}");
        }
    }

    // The span that passed is that of a strength class: whoever buys the timber reads it on the drawing.
    [Theory]
    [InlineData("c16", "along", "C16 joists 47 mm × 195 mm at 400 mm centres")]
    [InlineData("c24", "across", "C24 joists 47 mm × 195 mm at 400 mm, bearing 90 mm")]
    public void The_note_of_the_joists_tells_their_strength_class(string grade, string joists, string note) =>
        Assert.Equal(note, Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "roof.joist-grade=" + grade, "roof.joists=" + joists)["roof.joist.1"].Words.Note);

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
