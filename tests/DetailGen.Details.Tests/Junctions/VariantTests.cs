using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

public class VariantTests
{
    [Theory]
    [InlineData("metal", "parapet", "cavity-masonry", "warm-timber-deck", "coping.kind=metal", "wall.fill=partial", "roof.joists=across")]
    [InlineData("to-coping", "parapet", "cavity-masonry", "warm-timber-deck", "upstand.top=coping", "tray.discharge=outside", "roof.fall-towards=wall")]
    [InlineData("outside", "parapet", "cavity-masonry", "warm-concrete-deck", "tray.discharge=outside", "coping.fall-to=both", "roof.finish=ballast", "wall.lining=wet-plaster")]
    [InlineData("metal-solid", "parapet", "solid-masonry-insulated", "warm-concrete-deck", "coping.kind=metal", "coping.fall-to=both", "roof.finish=paving")]
    [InlineData("flashed-solid", "parapet", "solid-masonry-insulated", "warm-timber-deck", "upstand.top=flashing", "roof.joists=across")]
    [InlineData("kerb", "abutment", "cavity-masonry", "warm-timber-deck", "roof.tied-to-wall=no", "wall.fill=partial")]
    [InlineData("kerb-solid", "abutment", "solid-masonry-insulated", "warm-timber-deck", "roof.tied-to-wall=no", "roof.finish=ballast")]
    [InlineData("across", "abutment", "cavity-masonry", "warm-timber-deck", "roof.joists=across", "roof.finish=paving", "upstand.fillet=0 mm")]
    [InlineData("flashing-behind-render", "abutment", "solid-masonry-insulated", "warm-timber-deck", "upstand.insulation=10 mm", "upstand.backing=12 mm", "wall.insulation=120 mm", "flashing.thickness=1.8 mm", "flashing.clearance=10 mm", "roof.membrane=1 mm", "roof.vcl=3.49 mm", "upstand.fillet=10 mm", "upstand.head-fall=1:51")]
    public void A_variant_tiles(string name, string junction, string wall, string roof, params string[] set)
    {
        var section = Shipped.Build(junction, wall, roof, set);
        if (Environment.GetEnvironmentVariable("SECTION_PICTURES") is { } folder)
        {
            Picture.Write(section, Path.Combine(folder, $"v-{name}.json"));
        }

        Laws.Hold(section);
    }

    [Theory]
    [InlineData("coping.kind=metal", "coping.fall-to=roof")]
    [InlineData("coping.kind=metal", "coping.fall-to=both")]
    public void The_heights_go_up_the_edge_of_a_metal_coping_and_on_to_its_top(params string[] set)
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", set);
        var chain = section.Measures.Where(measure => measure.Chain == Chains.Heights && measure.Id.StartsWith("coping.", StringComparison.Ordinal)).ToArray();
        var edge = Assert.Single(chain, measure => measure.Id == "coping.thickness");
        Assert.Equal(edge.To, Assert.Single(chain, measure => measure.Id == "coping.rise").From);
        Assert.Equal(section.Levels.Single(level => level.Name == "coping-top").Y, chain[^1].To.Y, 1e-6);
    }

    // Joists along the wall are cut, and the line of a stack ends in the void beside them; joists across are drawn along, and it ends in one of them.
    [Theory]
    [InlineData("along", "Void between joists", "unventilated air space", "void at the upstand")]
    [InlineData("across", "Joists and firrings", "structure, air between", "")]
    public void The_row_of_the_joists_names_what_its_line_ends_in(string joists, string element, string function, string told)
    {
        var section = Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", $"roof.joists={joists}");
        var layer = Assert.Single(section.Buildups[1].Layers, layer => layer.Slot == "roof.joist");
        Assert.Equal((element, function, told), (layer.Element, layer.Function, layer.Told));
        Assert.Equal(joists == "across", section[layer.PartId].Roles.HasFlag(Roles.Structure));
    }

    [Fact]
    public void The_sheet_tells_that_the_vapour_control_layer_is_sealed_also_where_there_is_room_for_the_first_words_only()
    {
        Assert.All(Shipped.Pairings, of => Assert.EndsWith("sealed", Shipped.Build(of.Junction, of.Wall, of.Roof)["roof.vcl"].Words.Note.Split(';')[0], StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("roof.fall-towards=away", "roof.screed-bond=bonded")]
    [InlineData("roof.fall-towards=wall", "roof.screed-bond=unbonded")]
    public void What_tapers_is_told_with_the_place_where_it_is_so_thick(params string[] set)
    {
        var screed = Shipped.Build("parapet", "cavity-masonry", "warm-concrete-deck", set).Buildups[1].Layers.Single(layer => layer.Slot == "roof.screed");
        Assert.Contains("at the upstand", screed.Told, StringComparison.Ordinal);
        Assert.Contains("at upstand", screed.Remark, StringComparison.Ordinal);
        Assert.True(screed.Tapers);
        Assert.Equal(set[1].EndsWith("unbonded", StringComparison.Ordinal), screed.Remark.Contains("unbonded", StringComparison.Ordinal));
        Assert.EndsWith("at the upstand", Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", set[0])["roof.firring.1"].Words.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("parapet", "warm-timber-deck")]
    [InlineData("abutment", "warm-concrete-deck")]
    public void What_of_a_paved_finish_is_slab_is_told_beside_the_thickness_of_slab_and_supports(string junction, string roof)
    {
        var layer = Shipped.Build(junction, "cavity-masonry", roof, "roof.finish=paving", "roof.paving=40mm").Buildups[1].Layers[0];
        Assert.True(layer.Thickness > 40);
        Assert.Equal("slabs 40", layer.Remark);
    }

    [Fact]
    public void A_strap_on_the_side_of_a_joist_is_as_deep_out_of_the_plane_as_it_is_thick()
    {
        Assert.Equal(5, Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "roof.joists=across")["strap"].Repeat!.Width);
        Assert.Equal(30, Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck")["strap"].Repeat!.Width);
    }

    [Theory]
    [InlineData("parapet", "warm-timber-deck", "tray.discharge=roof", "flashing.bed")]
    [InlineData("parapet", "warm-concrete-deck", "tray.discharge=outside", "tray.outlet")]
    [InlineData("parapet", "warm-timber-deck", "upstand.top=coping", "tray.outlet")]
    [InlineData("abutment", "warm-concrete-deck", "wall.fill=partial", "flashing.bed")]
    public void Step_and_outlet_of_a_tray_are_dimensioned_and_its_weep_has_a_level(string junction, string roof, string set, string outlet)
    {
        var section = Shipped.Build(junction, "cavity-masonry", roof, set);
        var tray = section.Levels.Single(level => level.Name == "tray-outlet");
        Assert.True(tray.Shown);
        Assert.Contains(section["weep"].Region.Grow(6).Pieces, piece => Region.Polygon([.. piece.Outline]).Contains(tray.At));
        Assert.Contains(section.Measures, measure => measure.Id == "tray.step" && measure.Chain.Length > 0);
        Assert.Equal(tray.Y, section.Measures.Single(measure => measure.Id == outlet && measure.Chain.Length > 0).Value, 1e-6);
    }

    [Theory]
    [InlineData("stone", "cavity-masonry")]
    [InlineData("metal", "cavity-masonry")]
    [InlineData("metal", "solid-masonry-insulated")]
    public void Both_drips_of_a_coping_are_dimensioned(string kind, string wall)
    {
        var section = Shipped.Build("parapet", wall, "warm-timber-deck", $"coping.kind={kind}");
        Assert.All(["coping.drip-clearance", "coping.drip-clearance-inside"], id => Assert.Contains(section.Measures, measure => measure.Id == id && measure.Chain.Length > 0));
    }

    [Theory]
    [InlineData("parapet", "cavity-masonry", "along")]
    [InlineData("parapet", "solid-masonry-insulated", "across")]
    [InlineData("abutment", "cavity-masonry", "across")]
    public void A_strap_is_solid_in_the_wall_and_a_bed_is_made_up_where_no_course_brings_one(string junction, string wall, string joists)
    {
        foreach (var depth in new[] { 145, 170, 195, 220 })
        {
            var section = Shipped.Build(junction, wall, "warm-timber-deck", $"roof.joists={joists}", $"roof.joist-depth={depth} mm", "roof.joist-span=2000 mm");
            BuildingLaws.Hold(section);
            var ties = section.Parts.Where(part => part.Slot == "tie").Select(tie => tie.Region.Bounds.Top - 7);
            Assert.All(ties, bed => Assert.All(section.Parts.Where(part => part.Coursing is not null), leaf => Assert.False(leaf.Coursing!.LeavesOut(bed), $"{leaf.Id} has no bed at {bed}.")));
        }
    }

    [Theory]
    [InlineData("cavity-masonry", "roof.deck-gap=30 mm")]
    [InlineData("solid-masonry-insulated", "roof.finish=ballast")]
    public void The_air_seal_at_a_free_roof_goes_from_the_wall_over_the_gap_and_laps_under_the_vapour_control_layer(string wall, string set)
    {
        var section = Shipped.Build("abutment", wall, "warm-timber-deck", "roof.tied-to-wall=no", set);
        var (seal, vcl, kerb) = (section["upstand.air-seal"], section["roof.vcl"], section["upstand.kerb"]);
        var leaf = section.Parts.First(part => part.Coursing is not null && part.Region.Distance(seal.Region) < 0.01);
        Assert.True(leaf.Region.Grow(0.1).Intersect(seal.Region).Bounds.Height >= 79, "It is not bonded up the wall.");
        Assert.True(seal.Region.Bounds.Right >= kerb.Region.Bounds.Right + 99 && vcl.Region.Distance(seal.Region) < 0.01, "It does not lap under the vapour control layer.");
        Assert.True(seal.BuildOrder < kerb.BuildOrder && seal.BuildOrder < vcl.BuildOrder);
        Assert.True(seal.Roles.HasFlag(Roles.AirBarrier));
        Assert.NotEmpty(seal.Words.Note);
    }

    [Fact]
    public void The_note_of_joists_across_the_wall_tells_their_bearing()
    {
        Assert.Contains("bearing 100 mm", Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", "roof.joists=across", "roof.joist-bearing=100 mm")["roof.joist.1"].Words.Note, StringComparison.Ordinal);
        Assert.DoesNotContain("bear", Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck")["roof.joist.1"].Words.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("roof.finish=ballast", true)]
    [InlineData("roof.finish=bare", false)]
    public void An_overall_size_that_leaves_out_sheets_within_it_says_so(string set, bool told)
    {
        var section = Shipped.Build("abutment", "cavity-masonry", "warm-concrete-deck", set);
        var chain = section.Measures.Where(measure => measure.Chain == Chains.RoofEnd).ToArray();
        var overall = Assert.Single(chain, measure => measure.Id == "roof.overall");
        Assert.Equal(told, overall.Value - chain.Where(measure => measure != overall).Sum(measure => measure.Value) > 1);
        Assert.Equal(told ? "+ sheets" : "", overall.Text);
    }

    [Theory]
    [InlineData("parapet", "cavity-masonry", "roof.fall-towards=away")]
    [InlineData("abutment", "solid-masonry-insulated", "roof.fall-towards=wall")]
    public void A_screed_that_is_not_bonded_lies_on_a_sheet_between_it_and_slab_and_wall(string junction, string wall, string set)
    {
        var section = Shipped.Build(junction, wall, "warm-concrete-deck", "roof.screed-bond=unbonded", set);
        Assert.Contains("unbonded", section.Buildups[1].Layers.Single(layer => layer.Slot == "roof.screed").Told, StringComparison.Ordinal);
        var (sheet, screed) = (section["roof.screed-sheet"], section["roof.screed"]);
        Assert.True(screed.Region.Distance(section["roof.slab"].Region) > 0.2 && screed.Region.Distance(sheet.Region) < 0.01, "The screed lies on the slab.");
        Assert.All(section.Parts.Where(part => part.Coursing is not null), leaf => Assert.True(screed.Region.Distance(leaf.Region) > 0.2, leaf.Id));
        Laws.Hold(section);
        Assert.DoesNotContain(Shipped.Build(junction, wall, "warm-concrete-deck", set).Parts, part => part.Id == "roof.screed-sheet");
    }
}
