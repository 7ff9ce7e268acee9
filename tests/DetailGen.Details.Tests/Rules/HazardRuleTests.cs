using DetailGen.Details.Presets;
using DetailGen.Details.Solving;

namespace DetailGen.Details.Tests.Rules;

/// <summary>Build-ups that hurt somebody, or that no rule of the place was asked about, are told.</summary>
public class HazardRuleTests
{
    private static readonly PresetContext Context = PresetContext.Load();

    [Theory]
    [InlineData("cavity-masonry", "warm-concrete-deck", "", Judgement.ToConfirm)]
    [InlineData("cavity-masonry", "warm-timber-deck", "set: { roof.joists: across }", Judgement.ToConfirm)]
    [InlineData("cavity-masonry", "warm-timber-deck", "", Judgement.NotApplicable)]
    [InlineData("solid-masonry-insulated", "warm-concrete-deck", "", Judgement.NotApplicable)]
    public void A_roof_that_bears_on_an_outer_leaf_is_for_the_engineer(string wall, string roof, string wanted, Judgement judgement) =>
        Assert.Equal(judgement, Judged("outer-leaf-load", $"junction: abutment\nwall: {wall}\nroof: {roof}\n{wanted}"));

    // Joists under 80 mm of paving passed as light enough for a table that ends at 0.5 kN/m².
    [Theory]
    [InlineData("", true)]
    [InlineData("set: { roof.joist-grade: c16 }", true)]
    [InlineData("set: { roof.finish: paving }", false)]
    [InlineData("set: { roof.finish: ballast, roof.joist-grade: c16 }", false)]
    [InlineData("building: { roof-access: accessible }", false)]
    [InlineData("materials: { roof.membrane: asphalt }", false)]
    [InlineData("materials: { roof.insulation: mw-slab }", false)]
    public void A_span_table_of_light_roofs_holds_for_light_roofs_only(string wanted, bool isLight)
    {
        var preset = $"junction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\n{wanted}";
        var table = wanted.Contains("c16", StringComparison.Ordinal) ? "joist-span-c16" : "joist-span-c24";
        Assert.Equal(isLight ? Judgement.Pass : Judgement.NotApplicable, Judged(table, preset));
        Assert.Equal(isLight ? Judgement.NotApplicable : Judgement.ToConfirm, Judged("joist-load-designed", preset));
    }

    [Theory]
    [InlineData("warm-concrete-deck", Judgement.ToConfirm)]
    [InlineData("warm-timber-deck", Judgement.NotApplicable)]
    public void A_slab_is_for_the_engineer(string roof, Judgement judgement)
    {
        var preset = $"junction: abutment\nwall: solid-masonry-insulated\nroof: {roof}";
        Assert.Equal(judgement, Judged("slab-designed", preset));
        Assert.Equal(Judgement.NotApplicable, Judged("joist-load-designed", preset));
    }

    [Theory]
    [InlineData("anchored", "ewi-boards-anchored", "ewi-boards-bonded")]
    [InlineData("bonded", "ewi-boards-bonded", "ewi-boards-anchored")]
    public void What_holds_external_insulation_is_asked_about_as_it_is_drawn(string fixing, string asked, string other)
    {
        var preset = $"junction: abutment\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\nset: {{ wall.insulation-fixing: {fixing} }}";
        Assert.Equal((Judgement.ToConfirm, Judgement.NotApplicable), (Judged(asked, preset), Judged(other, preset)));
        Assert.Equal(Judgement.NotApplicable, Judged(asked, "junction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck"));
    }

    // Where the bed begins and where the weight is, by hand: 250 mm of insulation and 150 mm of oversail set the bed 410 mm in, and a coping of 738.5 mm weighs 332 to 369 mm in.
    [Theory]
    [InlineData("wall.insulation: 120 mm", Judgement.Pass)]
    [InlineData("wall.insulation: 250 mm", Judgement.Warn)]
    [InlineData("wall.insulation: 250 mm, coping.overhang: 150 mm, coping.overhang-inside: 50 mm, upstand.insulation: 50 mm", Judgement.Warn)]
    [InlineData("wall.insulation: 200 mm, wall.block: 140 mm, coping.overhang: 65 mm, coping.overhang-inside: 65 mm, upstand.insulation: 50 mm", Judgement.Warn)]
    [InlineData("wall.insulation: 20 mm, wall.block: 140 mm, coping.overhang: 50 mm, coping.overhang-inside: 150 mm, upstand.insulation: 150 mm", Judgement.Warn)] // beside the bed on the roof side
    [InlineData("wall.insulation: 250 mm, coping.kind: metal", Judgement.NotApplicable)]
    public void A_coping_whose_middle_is_beside_its_bed_is_told(string sizes, Judgement judgement) =>
        Assert.Equal(judgement, Judged("coping-centre-over-bed", $"junction: parapet\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\nset: {{ {sizes} }}"));

    // Another wall, or a coping on brackets, is a design of its own: nobody is given a thicker block, a thinner render or a wider coping for it.
    [Theory]
    [InlineData(240)]
    [InlineData(300)]
    public void A_coping_beside_its_bed_changes_no_usual_size(int insulation)
    {
        var solved = Solved($"junction: parapet\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\nset: {{ wall.insulation: {insulation} mm }}");
        Assert.All(["wall.block", "wall.render", "coping.overhang", "coping.overhang-inside"], key => Assert.Equal(WhyKind.Default, solved.Find(key)!.Why.Kind));
    }

    [Theory]
    [InlineData("roof.membrane: asphalt, roof.insulation: xps", Judgement.Warn)]
    [InlineData("roof.membrane: bitumen-sheet, upstand.insulation: eps", Judgement.Warn)]
    [InlineData("roof.membrane: pmma-liquid, roof.insulation: eps-graphite", Judgement.Warn)]
    [InlineData("roof.membrane: asphalt", Judgement.Pass)]
    [InlineData("roof.insulation: eps", Judgement.NotApplicable)]
    public void Heat_and_solvents_over_polystyrene_are_told(string materials, Judgement judgement) => Assert.Equal(judgement, Judged(
        "polystyrene-under-heat-or-solvent", $"junction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck\nmaterials: {{ {materials} }}"));

    [Theory]
    [InlineData("membrane.fixing: loose", Judgement.Warn)]
    [InlineData("membrane.fixing: loose, roof.finish: ballast", Judgement.Pass)]
    [InlineData("membrane.fixing: adhered", Judgement.NotApplicable)]
    public void A_loose_membrane_that_nothing_holds_down_is_told(string wanted, Judgement judgement) =>
        Assert.Equal(judgement, Judged("loose-laid-held-down", $"junction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck\nset: {{ {wanted} }}"));

    // Roofs of filter fleece on decks of plasterboard, with straps of lead, were once drawn without a word: the kind of a material is not its task.
    [Fact]
    public void No_slot_takes_in_silence_what_cannot_do_its_task()
    {
        string[] wanted = ["roof.membrane", "upstand.membrane", "roof.vcl", "tray", "flashing", "roof.deck", "upstand.backing", "coping.plate", "roof.insulation", "upstand.insulation", "coping", "strap"];
        string[] unfit = ["geotextile", "breather", "breather", "pe-sheet", "geotextile", "plasterboard", "plasterboard", "plywood", "mw-loose", "mw-batt", "block-dense", "lead"];
        var solved = Solved($"junction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nmaterials: {{ {string.Join(", ", wanted.Zip(unfit, (slot, material) => $"{slot}: {material}"))} }}");
        var told = solved.Verdicts.Where(verdict => verdict.Judgement == Judgement.Warn && verdict.Rule.Id.StartsWith("fit-", StringComparison.Ordinal)).Select(verdict => verdict.Left!.Text).Order(StringComparer.Ordinal);
        Assert.Equal(unfit.Order(StringComparer.Ordinal), told);
    }

    // What is usual does its task.
    [Theory]
    [InlineData("parapet", "solid-masonry-insulated", "warm-concrete-deck")]
    [InlineData("parapet", "cavity-masonry", "warm-timber-deck")]
    [InlineData("abutment", "cavity-masonry", "warm-concrete-deck")]
    public void Usual_materials_do_their_task(string junction, string wall, string roof) => Assert.All(
        Solved($"junction: {junction}\nwall: {wall}\nroof: {roof}").Verdicts.Where(verdict => verdict.Rule.Id.StartsWith("fit-", StringComparison.Ordinal)),
        verdict => Assert.True(verdict.Judgement is Judgement.Pass or Judgement.NotApplicable, verdict.Rule.Id));

    // A pack for five nations holds the limits of some of them; what it does not hold was once passed over, as if it had been looked at.
    [Theory]
    [InlineData("scotland", "new", Judgement.NotApplicable, Judgement.NotApplicable)]
    [InlineData("scotland", "extension", Judgement.NotApplicable, Judgement.ToConfirm)]
    [InlineData("wales", "new", Judgement.NotApplicable, Judgement.ToConfirm)]
    [InlineData("northern-ireland", "new", Judgement.ToConfirm, Judgement.ToConfirm)]
    [InlineData("ireland", "alteration", Judgement.ToConfirm, Judgement.ToConfirm)]
    [InlineData("england", "new", Judgement.NotApplicable, Judgement.NotApplicable)]
    [InlineData("england", "alteration", Judgement.NotApplicable, Judgement.ToConfirm)]
    public void A_limit_of_U_that_the_rules_do_not_hold_is_for_a_person(string nation, string work, Judgement roof, Judgement wall)
    {
        var preset = $"junction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck\nsite: {{ nation: {nation} }}\nbuilding: {{ work: {work} }}";
        Assert.Equal(roof, Judged("u-roof-unlisted", preset));
        Assert.Equal(wall, Judged("u-wall-unlisted", preset));
    }

    [Theory]
    [InlineData("parapet", "tray: lead", "tray.thickness", 1800)]
    [InlineData("abutment", "tray: lead", "tray.thickness", 1800)]
    [InlineData("abutment", "tray: copper", "tray.thickness", 600)]
    [InlineData("parapet", "coping.dpc: lead", "coping.dpc-thickness", 1800)]
    [InlineData("parapet", "roof.vcl: bitumen-sheet", "roof.vcl", 3000)]
    [InlineData("abutment", "roof.vcl: pe-vcl", "roof.vcl", 250)]
    [InlineData("abutment", "", "roof.vcl", 500)]
    public void A_sheet_is_as_thick_as_its_material_is_sold(string junction, string materials, string key, long micrometres) => Assert.Equal(micrometres, Solved(
        $"junction: {junction}\nwall: cavity-masonry\nroof: warm-timber-deck\nmaterials: {{ {materials} }}").Values.Single(value => value.Key == key).Value.Number);

    [Fact]
    public void Lead_lighter_than_code_4_is_no_damp_proof_course_of_a_coping()
    {
        var read = PresetReader.ReadText("detail: d\njunction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nmaterials: { coping.dpc: lead }\nset: { coping.dpc-thickness: 1.3 mm }\n", "d.yaml", [], Context);
        var conflict = Assert.IsType<Solution.Contradiction>(DetailSolver.Solve(read.Value, ShippedRules.Catalogue));
        Assert.Contains(conflict.Members, member => member.Id == "coping-dpc-material");
    }

    private static Judgement Judged(string rule, string preset) => Solved(preset).Verdicts.Single(verdict => verdict.Rule.Id == rule).Judgement;

    private static Solution.Solved Solved(string preset)
    {
        var read = PresetReader.ReadText($"detail: d\n{preset}\n", "d.yaml", [], Context);
        return Assert.IsType<Solution.Solved>(DetailSolver.Solve(read.Value, ShippedRules.Catalogue));
    }
}
