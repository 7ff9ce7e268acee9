using System.Globalization;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Sections;

namespace DetailGen.Details.Tests.Junctions;

/// <summary>What another material in a slot changes beside its name.</summary>
public class MaterialTests
{
    private static readonly PresetContext Context = PresetContext.Load();

    private static Section Build(string junction, string wall, string roof, string materials, string set = "") =>
        Shipped.Build(Read(junction, wall, roof, materials, set) with { Rules = [] });

    private static Preset Read(string junction, string wall, string roof, string materials, string set)
    {
        var read = PresetReader.ReadText(
            $"detail: d\njunction: {junction}\nwall: {wall}\nroof: {roof}\nmaterials: {{ {materials} }}\nset: {{ {set} }}\n", "material.yaml", [], Context);
        Assert.Empty(read.Faults.Select(fault => fault.Reason));
        return read.Value;
    }

    // Nothing that an author names is dropped in silence, however the choices fall.
    [Theory]
    [InlineData("granite", "metal", "stone")]
    [InlineData("zinc", "stone", "metal")]
    public void A_material_that_the_choices_leave_no_place_for_is_told_where_it_goes(string material, string kind, string other)
    {
        IReadOnlyList<Diagnostic> Faults(string chosen) =>
            DetailSolver.Check(Read("parapet", "cavity-masonry", "warm-timber-deck", $"coping: {material}", $"coping.kind: {chosen}") with { Rules = [] }, Shipped.Catalogue).Faults;
        var fault = Assert.Single(Faults(kind));
        Assert.Equal("wrong-material", fault.Code);
        Assert.Contains($"coping.kind = {other}", fault.Hint, StringComparison.Ordinal);
        Assert.Empty(Faults(other));
    }

    [Theory]
    [InlineData("lead", 1.8)]
    [InlineData("zinc", 0.8)]
    [InlineData("copper", 0.6)]
    [InlineData("aluminium", 0.7)]
    public void A_flashing_is_as_thick_as_its_metal_is_sold(string metal, double thickness)
    {
        Assert.Equal(thickness, Build("abutment", "cavity-masonry", "warm-timber-deck", $"flashing: {metal}")["flashing"].Sheet!.Thickness, 1e-6);
        Assert.Equal(thickness, Build("parapet", "cavity-masonry", "warm-concrete-deck", $"flashing: {metal}")["flashing"].Sheet!.Thickness, 1e-6);
    }

    [Theory]
    [InlineData("bitumen-sheet", 7, "reinforced bitumen membrane, 2 layers")]
    [InlineData("asphalt", 20, "")]
    [InlineData("pmma-liquid", 2, "")]
    [InlineData("epdm-membrane", 1.5, "")]
    public void A_membrane_is_as_thick_as_its_kind_is_laid_and_its_layers_are_told(string material, double thickness, string told)
    {
        var section = Build("parapet", "solid-masonry-insulated", "warm-timber-deck", $"roof.membrane: {material}");
        Assert.Equal(thickness, section["roof.membrane"].Sheet!.Thickness, 1e-6);
        Assert.Contains(told, section.Buildups[1].Layers.Single(layer => layer.Slot == "roof.membrane").Told, StringComparison.OrdinalIgnoreCase);
    }

    // What is poured has no sheet to lap, nor is it a sheet that could be bonded.
    [Theory]
    [InlineData("parapet", "cavity-masonry", "asphalt")]
    [InlineData("parapet", "solid-masonry-insulated", "asphalt")]
    [InlineData("abutment", "cavity-masonry", "pmma-liquid")]
    [InlineData("abutment", "solid-masonry-insulated", "pu-liquid")]
    public void A_poured_upstand_is_told_in_coats(string junction, string wall, string material)
    {
        var note = Build(junction, wall, "warm-concrete-deck", $"roof.membrane: {material}")["upstand.membrane"].Words.Note;
        Assert.Contains("in coats", note, StringComparison.Ordinal);
        Assert.DoesNotContain("sheet", note, StringComparison.Ordinal);
        Assert.Contains("bonded", Build(junction, wall, "warm-concrete-deck", $"roof.membrane: {material}, upstand.membrane: tpo-membrane")["upstand.membrane"].Words.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("abutment", "upstand.height: 250 mm")]
    [InlineData("parapet", "upstand.top: flashing, parapet.height: 800 mm")]
    public void A_wall_that_is_cast_has_no_joint_for_a_flashing_but_a_chase(string junction, string set)
    {
        var cast = MaterialLibrary.Load().All.Where(material => material.Material.IsCast).Select(material => material.Id).ToList();
        Assert.True(cast.Count >= 4);
        Assert.All(cast, material => Assert.Contains(" into a chase;", Note(material), StringComparison.Ordinal));
        Assert.Contains(" into the joint;", Note("block-medium"), StringComparison.Ordinal);

        string Note(string material) => Build(junction, "solid-masonry-insulated", "warm-concrete-deck", "wall.block: " + material, set)["flashing"].Words.Note;
    }

    // Two thicknesses of asphalt one over the other would dam the water of a roof that falls to the wall.
    [Theory]
    [InlineData("parapet", "cavity-masonry", "away", 50)]
    [InlineData("parapet", "solid-masonry-insulated", "wall", 50)]
    [InlineData("abutment", "cavity-masonry", "wall", 0)]
    [InlineData("abutment", "solid-masonry-insulated", "away", 75)]
    public void Coats_of_asphalt_pass_into_each_other_and_sheets_lap(string junction, string wall, string towards, int fillet)
    {
        var poured = Build(junction, wall, "warm-concrete-deck", "roof.membrane: asphalt", $"roof.fall-towards: {towards}, upstand.fillet: {fillet} mm");
        Assert.Equal(poured["roof.membrane"].Region.Bounds.Left, poured["upstand.membrane"].Region.Bounds.Right, 1e-3);
        Laws.Hold(poured);

        var welded = Build(junction, wall, "warm-concrete-deck", "roof.membrane: bitumen-sheet", $"roof.fall-towards: {towards}, upstand.fillet: {fillet} mm");
        Assert.True(welded["roof.membrane"].Region.Bounds.Left < welded["upstand.membrane"].Region.Bounds.Right - 100);
    }

    // What lies on the membrane ends at the face of what is poured up the fillet, not inside of it.
    [Theory]
    [InlineData("parapet", "cavity-masonry", "asphalt", "ballast", 50)]
    [InlineData("abutment", "solid-masonry-insulated", "asphalt", "paving", 30)]
    [InlineData("abutment", "cavity-masonry", "asphalt", "ballast", 0)]
    public void A_fleece_ends_where_the_face_of_the_upstand_begins(string junction, string wall, string material, string finish, int fillet)
    {
        var section = Build(junction, wall, "warm-concrete-deck", $"roof.membrane: {material}", $"roof.finish: {finish}, upstand.fillet: {fillet} mm");
        var (start, upstand) = (section["roof.fleece"].Sheet!.Face[0], section["upstand.membrane"].Region);
        Assert.True(!upstand.Contains(start) || upstand.DistanceToEdge(start) < 0.5, $"{start} is {upstand.DistanceToEdge(start)} mm inside");
        Assert.True(upstand.Distance(start) < 1, $"{start} is {upstand.Distance(start)} mm short");
        Laws.Hold(section);
    }

    // Roof and wall move in the gap behind the kerb; what fills it ties them to each other.
    [Theory]
    [InlineData("asphalt", 20, 20, false)]
    [InlineData("asphalt", 20, 30, false)]
    [InlineData("bitumen-sheet", 7, 15, true)]
    [InlineData("bitumen-sheet", 8, 15, false)]
    [InlineData("tpo-membrane", 1.5, 15, true)]
    public void A_membrane_leaves_half_of_the_gap_behind_the_kerb(string material, double thickness, int gap, bool turned)
    {
        var set = string.Create(CultureInfo.InvariantCulture, $"roof.tied-to-wall: no, roof.membrane: {thickness} mm, roof.deck-gap: {gap} mm");
        var section = Build("abutment", "solid-masonry-insulated", "warm-timber-deck", $"roof.membrane: {material}", set);
        var (membrane, kerb) = (section["upstand.membrane"].Region.Bounds, section["upstand.kerb"].Region.Bounds);
        Assert.Equal(turned, membrane.Left < kerb.Left - 0.5);
        Assert.True(kerb.Left - membrane.Left <= gap / 2.0 + 1e-3);
        Laws.Hold(section);
    }

    [Theory]
    [InlineData("warm-timber-deck", "asphalt", "mechanical", "poured-membrane-has-no-laps-to-fix")]
    [InlineData("warm-concrete-deck", "asphalt", "mechanical", "poured-membrane-has-no-laps-to-fix")]
    [InlineData("warm-timber-deck", "pmma-liquid", "loose", "liquid-membrane-adheres")]
    [InlineData("warm-concrete-deck", "pu-liquid", "mechanical", "liquid-membrane-adheres")]
    public void A_poured_membrane_is_held_by_no_fixings(string roof, string material, string fixing, string claim)
    {
        var read = PresetReader.ReadText(
            $"detail: d\njunction: abutment\nwall: cavity-masonry\nroof: {roof}\nmaterials: {{ roof.membrane: {material} }}\nset: {{ membrane.fixing: {fixing} }}\n", "material.yaml", [], Context);
        var contradiction = Assert.IsType<Solution.Contradiction>(Shipped.Solve(read.Value with { Rules = [] }));
        Assert.Equal([claim, "given.membrane.fixing"], contradiction.Members.Select(member => member.Id));
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Key: "membrane.fixing", Value: "adhered" }]);
    }

    [Theory]
    [InlineData("warm-concrete-deck", "adhered")]
    [InlineData("warm-timber-deck", "loose")]
    public void Asphalt_is_not_said_to_be_bonded_where_the_check_list_asks_for_a_layer_that_parts_it_from_the_boards(string roof, string fixing)
    {
        var layer = Build("parapet", "solid-masonry-insulated", roof, "roof.membrane: asphalt", "membrane.fixing: " + fixing).Buildups[1].Layers.Single(layer => layer.Slot == "roof.membrane");
        Assert.Equal("on a separating layer", layer.Remark);
        Assert.EndsWith(", on a separating layer", layer.Told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("adhered", "bonded")]
    [InlineData("mechanical", "mechanically fixed")]
    [InlineData("loose", "loose-laid")]
    public void How_a_membrane_is_held_is_told(string fixing, string told)
    {
        var layer = Shipped.Build("abutment", "cavity-masonry", "warm-concrete-deck", $"membrane.fixing={fixing}").Buildups[1].Layers.Single(layer => layer.Slot == "roof.membrane");
        Assert.Equal(told, layer.Remark);
        Assert.EndsWith(told, layer.Told, StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_welded_to_the_roof_membrane_are_of_its_material_unless_they_are_given_their_own()
    {
        var section = Build("parapet", "solid-masonry-insulated", "warm-concrete-deck", "roof.membrane: epdm-membrane");
        Assert.All(["roof.membrane", "upstand.membrane", "wall.head-membrane"], id => Assert.Equal("epdm-membrane", section[id].Material.Id));
        var own = Build("parapet", "solid-masonry-insulated", "warm-concrete-deck", "roof.membrane: epdm-membrane, upstand.membrane: pvc-membrane");
        Assert.Equal("pvc-membrane", own["upstand.membrane"].Material.Id);
        Assert.Equal("epdm-membrane", own["wall.head-membrane"].Material.Id);
        Assert.Equal("tpo-membrane", Build("abutment", "cavity-masonry", "warm-timber-deck", "flashing: zinc")["upstand.membrane"].Material.Id);
    }

    [Fact]
    public void Over_insulation_and_render_an_asphalt_roof_has_a_sheet_and_no_asphalt()
    {
        foreach (var top in (string[])["coping", "flashing"])
        {
            var section = Build("parapet", "solid-masonry-insulated", "warm-concrete-deck", "roof.membrane: asphalt", $"upstand.top: {top}");
            Assert.Equal(("bitumen-sheet", 4, 20), (section["wall.head-membrane"].Material.Id, section["wall.head-membrane"].Sheet!.Thickness, section["upstand.membrane"].Sheet!.Thickness));
        }
    }

    [Theory]
    [InlineData("parapet")]
    [InlineData("abutment")]
    public void A_bar_holds_the_edge_of_a_sheet_and_is_not_screwed_through_what_is_poured(string junction)
    {
        Assert.Contains(Build(junction, "cavity-masonry", "warm-timber-deck", "roof.membrane: bitumen-sheet").Parts, part => part.Id == "upstand.termination");
        Assert.All(["asphalt", "pmma-liquid", "pu-liquid"], poured =>
            Assert.DoesNotContain(Build(junction, "cavity-masonry", "warm-timber-deck", $"roof.membrane: {poured}").Parts, part => part.Id == "upstand.termination"));
    }

    [Fact]
    public void Notes_of_packings_and_fillets_name_the_material_that_they_are_of()
    {
        var section = Build("abutment", "cavity-masonry", "warm-timber-deck", "roof.edge-packing: woodfibre, upstand.fillet: softwood", "roof.tied-to-wall: no");
        Assert.Contains("wood fibre", section["upstand.gap-packing"].Words.Note, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("wood fibre", section["roof.edge-packing"].Words.Note, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("softwood", section["upstand.fillet"].Words.Note, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("200 mm")]
    [InlineData("250 mm")]
    public void The_note_of_the_termination_bar_tells_the_centres_that_it_has(string centres) =>
        Assert.Contains($"at {centres} centres", Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", $"upstand.bar-centres={centres}")["upstand.termination"].Words.Note, StringComparison.Ordinal);

    [Theory]
    [InlineData("abutment", "cavity-masonry", "wall.outer-leaf", "coping")]
    [InlineData("abutment", "cavity-masonry", "wall.inner-leaf", "the roof")]
    [InlineData("abutment", "solid-masonry-insulated", "wall.block", "coping")]
    [InlineData("parapet", "cavity-masonry", "wall.inner-leaf", "Carries the roof", "roof.joists=along")]
    [InlineData("parapet", "solid-masonry-insulated", "wall.block", "roof,", "roof.joists=along")]
    public void What_a_wall_is_for_is_told_as_it_stands_there(string junction, string wall, string part, string untrue, params string[] set) =>
        Assert.DoesNotContain(untrue, Shipped.Build(junction, wall, "warm-timber-deck", set)[part].Words.Purpose, StringComparison.OrdinalIgnoreCase);

    [Theory]
    [InlineData("block-dense", true)]
    [InlineData("concrete-rc1", false)]
    public void A_wall_of_concrete_is_drawn_and_dimensioned_without_courses(string material, bool coursed)
    {
        var section = Build("parapet", "solid-masonry-insulated", "warm-concrete-deck", $"wall.block: {material}");
        Assert.Equal(coursed, section.Measures.Any(measure => measure.Id == "courses"));
        var view = DetailGen.Drawing.Views.SectionView.Draw(section, new(5, new(-1e4, -1e4, 1e4, 1e4), false));
        Assert.Equal(coursed, view.Items.Any(item => item.PartId == "wall.block/bed"));
    }

    [Theory]
    [InlineData("along", "full depth")]
    [InlineData("across", "between firring and wall")]
    public void The_note_of_the_packing_at_the_wall_tells_where_it_lies(string joists, string note) =>
        Assert.Contains(note, Shipped.Build("parapet", "cavity-masonry", "warm-timber-deck", $"roof.joists={joists}")["roof.edge-packing"].Words.Note, StringComparison.Ordinal);

    [Fact]
    public void A_lining_without_foil_is_not_said_to_have_one()
    {
        Assert.Contains("foil", Build("parapet", "cavity-masonry", "warm-timber-deck", "tie: stainless")["wall.lining-insulation"].Words.Purpose, StringComparison.Ordinal);
        Assert.DoesNotContain("foil", Build("parapet", "cavity-masonry", "warm-timber-deck", "wall.lining-insulation: eps")["wall.lining-insulation"].Words.Purpose, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("aluminium", 2)]
    [InlineData("zinc", 0.8)]
    [InlineData("copper", 0.8)]
    public void A_metal_coping_is_held_by_clips_of_its_own_metal_and_is_as_thick_as_that_is_folded(string metal, double thickness)
    {
        var section = Build("parapet", "cavity-masonry", "warm-concrete-deck", $"coping: {metal}", "coping.kind: metal");
        Assert.Equal(metal, section["coping.clip"].Material.Id);
        Assert.Equal(thickness, section["coping"].Sheet!.Thickness, 1e-6);
        Assert.StartsWith($"Pressed {metal}", section["coping"].Words.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tpo-membrane", true)]
    [InlineData("bitumen-sheet", false)]
    [InlineData("pmma-liquid", false)]
    public void Only_sheets_of_one_layer_have_a_restraint_bar_at_the_foot_of_the_upstand(string membrane, bool bar)
    {
        Assert.All(["parapet", "abutment"], junction =>
        {
            var section = Build(junction, "cavity-masonry", "warm-timber-deck", $"roof.membrane: {membrane}");
            Assert.Equal(bar, section.Parts.Any(part => part.Slot == "upstand.restraint"));
            Laws.Hold(section);
        });
    }

    [Theory]
    [InlineData("abutment", "wall.outer-leaf", "brick-outer", 102.5)]
    [InlineData("abutment", "wall.outer-leaf", "block-medium", 100)]
    [InlineData("parapet", "wall.outer-leaf", "block-aircrete-light", 100)]
    [InlineData("abutment", "wall.inner-leaf", "block-dense", 100)]
    [InlineData("parapet", "wall.inner-leaf", "brick-inner", 102.5)]
    public void A_leaf_is_as_thick_as_its_units_are_sold(string junction, string slot, string material, double thickness) =>
        Assert.Equal(thickness, Build(junction, "cavity-masonry", "warm-concrete-deck", $"{slot}: {material}").Buildups[0].Layers.Single(layer => layer.Slot == slot).Thickness, 1e-6);

    [Theory]
    [InlineData("wall.outer-leaf", "block-dense")]
    [InlineData("wall.inner-leaf", "block-lightweight")]
    public void No_block_is_sold_in_the_width_of_a_brick(string slot, string material)
    {
        var read = PresetReader.ReadText(
            $"detail: d\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nmaterials: {{ {slot}: {material} }}\nset: {{ {slot}: 102.5 mm }}\n", "leaf.yaml", [], Context);
        var contradiction = Assert.IsType<Solution.Contradiction>(Shipped.Solve(read.Value with { Rules = [] }));
        Assert.Contains($"stock.{slot}", contradiction.Members.Select(member => member.Id));
        Assert.Contains(contradiction.Repairs, repair => repair.Set is [{ Value: "100 mm" }]);
    }

    [Fact]
    public void Blocks_in_courses_of_bricks_are_told_as_coursing_units()
    {
        string Told(string materials) => Build("abutment", "cavity-masonry", "warm-concrete-deck", materials).Buildups[0].Layers.Single(layer => layer.Slot == "wall.outer-leaf").Told;
        Assert.EndsWith("coursing units", Told("wall.outer-leaf: block-dense"), StringComparison.Ordinal);
        Assert.EndsWith("outer leaf", Told("wall.outer-leaf: calcium-silicate"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("parapet", "solid-masonry-insulated", "wall.block: calcium-silicate", "wall.block", 75)]
    [InlineData("abutment", "cavity-masonry", "wall.inner-leaf: brick-inner", "wall.inner-leaf", 75)]
    [InlineData("abutment", "cavity-masonry", "wall.inner-leaf: block-dense", "wall.inner-leaf", 225)]
    public void A_leaf_of_bricks_is_laid_in_courses_of_bricks(string junction, string wall, string materials, string leaf, double course)
    {
        var section = Build(junction, wall, "warm-concrete-deck", materials);
        Assert.Equal(course, section[leaf].Coursing!.Height);
        Laws.Hold(section);
        Assert.All(section.Measures.Where(measure => measure.Id == "courses"), measure => Assert.Equal(FormattableString.Invariant($"= {measure.Value / course:0} courses"), measure.Text));
    }
}
