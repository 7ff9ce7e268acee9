using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules.Language;
using DetailGen.Details.Solving;

namespace DetailGen.Details.Tests.Solving;

/// <summary>Small components made up for trials: enough keys for every shipped rule, no builder behind them.</summary>
internal static class Trial
{
    private const string Wall = """
        wall.outer-leaf|length|50 mm|300 mm|0.5 mm|102.5 mm|leaf-thickness|
        wall.cavity|length|25 mm|350 mm|5 mm|150 mm|cavity-width|
        wall.cavity-insulation|length|25 mm|200 mm|5 mm|100 mm||wall.fill = partial
        wall.inner-leaf|length|50 mm|300 mm|0.5 mm|100 mm|block-thickness|
        wall.dab|length|5 mm|40 mm|1 mm|15 mm||wall.lining != wet-plaster
        wall.lining-insulation|length|20 mm|100 mm|5 mm|30 mm||wall.lining = insulated-board-on-dabs
        wall.lining-board|length|5 mm|30 mm|0.5 mm|12.5 mm|plasterboard|wall.lining != wet-plaster
        wall.plaster|length|5 mm|30 mm|0.5 mm|13 mm||wall.lining = wet-plaster
        tie.horizontal-spacing|length|225 mm|1200 mm|75 mm|900 mm||
        tie.vertical-spacing|length|75 mm|900 mm|75 mm|450 mm||
        tie.length|length|100 mm|500 mm|25 mm||wall-tie-length|
        """;

    private const string Solid = """
        wall.plaster|length|5 mm|30 mm|0.5 mm|13 mm||
        wall.block|length|100 mm|300 mm|0.5 mm|215 mm|block-thickness|
        wall.insulation|length|20 mm|300 mm|5 mm|120 mm||
        wall.render|length|5 mm|30 mm|0.5 mm|10 mm||
        """;

    private const string Roof = """
        roof.ceiling-board|length|9 mm|30 mm|0.5 mm|12.5 mm|plasterboard|
        roof.joist-depth|length|90 mm|300 mm|5 mm|195 mm|joist-depth|
        roof.joist-centres|length|300 mm|900 mm|1 mm|400 mm|joist-centres|
        roof.joist-span|length|1000 mm|7000 mm|100 mm|3600 mm||
        roof.joist-bearing|length|40 mm|300 mm|5 mm|90 mm||roof.joists = across
        roof.joist-wall-gap|length|0 mm|150 mm|5 mm|50 mm||roof.joists = along
        roof.firring|length|5 mm|400 mm|0.5 mm|||
        roof.deck|length|9 mm|30 mm|0.5 mm|18 mm|plywood-deck|
        roof.deck-gap|length|0 mm|30 mm|1 mm|10 mm||
        """;

    private const string Slab = """
        roof.slab|length|100 mm|300 mm|5 mm|150 mm||
        roof.slab-bearing|length|40 mm|300 mm|5 mm|100 mm||
        roof.screed|length|10 mm|300 mm|1 mm|||
        """;

    private const string Above = """
        roof.vcl|length|0.1 mm|5 mm|0.005 mm|0.3 mm||
        roof.insulation|length|50 mm|400 mm|5 mm|||
        roof.insulation-layers|count|1|2|1|2||
        roof.board-stagger|length|0 mm|600 mm|50 mm|300 mm||
        roof.membrane|length|1 mm|30 mm|0.1 mm|1.5 mm||
        roof.finish-thickness|length|0 mm|150 mm|5 mm|||
        roof.fall|ratio|1:20|1:120|1|1:40||
        roof.fall-run|length|500 mm|20000 mm|100 mm|3000 mm||
        vcl.lap|length|50 mm|300 mm|25 mm|150 mm||
        """;

    private const string Junction = """
        upstand.height|length|50 mm|1000 mm|1 mm|||
        upstand.insulation|length|0 mm|150 mm|5 mm|30 mm||
        upstand.fillet|length|0 mm|100 mm|5 mm|0 mm||
        upstand.backing|length|0 mm|30 mm|1 mm|12 mm||
        vcl.turn-up|length|0 mm|500 mm|5 mm|||
        vcl.return|length|0 mm|300 mm|25 mm|75 mm||
        membrane.lap|length|25 mm|300 mm|5 mm|100 mm||
        flashing.lap|length|25 mm|300 mm|5 mm|75 mm||
        flashing.chase|length|10 mm|60 mm|5 mm|25 mm||
        flashing.end-lap|length|50 mm|300 mm|25 mm|100 mm||
        flashing.thickness|length|0.4 mm|4 mm|0.01 mm|1.8 mm||
        tray.step|length|50 mm|300 mm|1 mm|150 mm||has(wall.cavity)
        tray.lap|length|50 mm|300 mm|25 mm|100 mm||has(wall.cavity)
        tray.stop-end|length|25 mm|150 mm|25 mm|75 mm||has(wall.cavity)
        weep.spacing|length|225 mm|1500 mm|1 mm|900 mm||has(wall.cavity)
        weep.height|length|25 mm|150 mm|5 mm|75 mm||has(wall.cavity)
        strap.spacing|length|600 mm|3000 mm|100 mm|2000 mm||
        """;

    private const string Coping = """
        parapet.height|length|200 mm|1500 mm|1 mm|450 mm||
        coping.thickness|length|1 mm|150 mm|1 mm|75 mm||
        coping.overhang|length|0 mm|150 mm|1 mm|70 mm||
        coping.overhang-inside|length|0 mm|150 mm|1 mm|70 mm||
        coping.drip-clearance|length|10 mm|100 mm|1 mm|40 mm||
        coping.drip-width|length|3 mm|30 mm|1 mm|10 mm||
        coping.drip-depth|length|3 mm|30 mm|1 mm|10 mm||
        coping.fall|ratio|1:5|1:60|1|1:11||
        coping.dpc-projection|length|0 mm|30 mm|1 mm|5 mm||
        coping.plate|length|1 mm|25 mm|0.5 mm|6 mm||has(wall.cavity)
        coping.plate-bearing|length|0 mm|100 mm|5 mm|25 mm||has(wall.cavity)
        coping.leg|length|20 mm|200 mm|5 mm|75 mm||coping.kind = metal
        coping.sheet|length|0.5 mm|6 mm|0.1 mm|2 mm||coping.kind = metal
        dpc.lap|length|50 mm|300 mm|25 mm|100 mm||
        tie.top-distance|length|75 mm|600 mm|75 mm|150 mm||has(wall.cavity)
        """;

    public static readonly MaterialLibrary Materials = MaterialLibrary.Load();

    public static readonly Component CavityWall = Component("cavity", "wall", Wall, """
        - { key: wall.fill, unit: choice, options: [full, partial], meaning: How the cavity is filled. }
        - { key: wall.lining, unit: choice, options: [insulated-board-on-dabs, board-on-dabs, wet-plaster], meaning: What lines the wall. }
        """, """
        - { key: wall.thickness, as: wall.outer-leaf + wall.cavity + wall.inner-leaf, meaning: Masonry over all. }
        - { key: wall.clear-cavity, as: wall.cavity - wall.cavity-insulation, meaning: Beside the board. }
        """, """
        - { id: board-fits-cavity, require: wall.cavity-insulation <= wall.cavity, reason: The board cannot be thicker than the cavity. }
        """, """
        - { slot: wall.outer-leaf, default: brick-outer, kinds: [masonry], name: Outer leaf }
        - { slot: wall.cavity, default: mw-batt, kinds: [insulation], name: Cavity fill, when: wall.fill = full }
        - { slot: wall.cavity-insulation, default: pir-foil, kinds: [insulation], name: Cavity board, when: wall.fill = partial }
        - { slot: wall.inner-leaf, default: block-aircrete-light, kinds: [masonry], name: Inner leaf }
        - { slot: wall.lining-board, default: plasterboard, kinds: [board], name: Lining, when: wall.lining != wet-plaster }
        - { slot: wall.lining-insulation, default: pir-foil, kinds: [insulation], name: Lining insulation, when: wall.lining = insulated-board-on-dabs }
        - { slot: wall.plaster, default: plaster-light, kinds: [finish], name: Plaster, when: wall.lining = wet-plaster }
        - { slot: tie, default: stainless, kinds: [metal], name: Wall tie }
        """, """
        - { slot: wall.outer-leaf, as: leaf, name: wall.outer-leaf }
        - { slot: wall.cavity, as: cavity-fill, name: wall.cavity, when: wall.fill = full }
        - { slot: wall.residual, as: cavity, name: wall.residual, thickness: wall.clear-cavity, kind: air, when: wall.fill = partial }
        - { slot: wall.cavity-insulation, as: cavity-fill, name: wall.cavity-insulation, when: wall.fill = partial }
        - { slot: wall.inner-leaf, as: leaf, name: wall.inner-leaf }
        - { slot: wall.dab, as: lining, name: wall.dab, kind: air, when: wall.lining != wet-plaster }
        - { slot: wall.lining-insulation, as: lining, name: wall.lining-insulation, when: wall.lining = insulated-board-on-dabs }
        - { slot: wall.lining-board, as: lining, name: wall.lining-board, when: wall.lining != wet-plaster }
        - { slot: wall.plaster, as: lining, name: wall.plaster, when: wall.lining = wet-plaster }
        """);

    public static readonly Component SolidWall = Component("solid", "wall", Solid, "", """
        - { key: wall.thickness, as: wall.plaster + wall.block + wall.insulation + wall.render, meaning: Wall over all. }
        """, "", """
        - { slot: wall.block, default: block-medium, kinds: [masonry], name: Block }
        - { slot: wall.insulation, default: eps-graphite, kinds: [insulation], name: External insulation }
        - { slot: wall.render, default: render-cement, kinds: [finish], name: Render }
        - { slot: wall.plaster, default: plaster-light, kinds: [finish], name: Plaster }
        """, """
        - { slot: wall.render, as: cladding, name: wall.render }
        - { slot: wall.insulation, as: cladding, name: wall.insulation }
        - { slot: wall.block, as: leaf, name: wall.block }
        - { slot: wall.plaster, as: lining, name: wall.plaster }
        """);

    private const string RoofSlots = """
        - { slot: roof.membrane, default: tpo-membrane, kinds: [membrane], name: Membrane }
        - { slot: roof.insulation, default: pir-roof, kinds: [insulation], name: Insulation }
        - { slot: roof.vcl, default: foil-vcl, kinds: [membrane], name: Vapour control layer }
        - { slot: roof.finish, default: gravel, kinds: [fill], name: Finish, when: roof.finish = ballast }
        """;

    private const string RoofChoices = """
        - { key: roof.finish, unit: choice, options: [bare, ballast, paving], meaning: What lies on the membrane. }
        - { key: roof.fall-towards, unit: choice, options: [away, wall], meaning: Which way the roof falls. }
        - { key: roof.tied-to-wall, unit: choice, options: ["yes", "no"], meaning: Whether the roof is tied to the wall. }
        - { key: membrane.fixing, unit: choice, options: [adhered, mechanical, loose], meaning: How the membrane is held. }
        """;

    private const string NoFinish = "- { id: bare-roof-has-no-finish, when: roof.finish = bare, require: roof.finish-thickness = 0 mm, reason: A bare roof has no finish. }";

    public static readonly Component TimberRoof = Component("timber", "roof", Roof + "\n" + Above, RoofChoices + "\n" + """
        - { key: roof.joists, unit: choice, options: [along, across], meaning: Which way the joists run. }
        - { key: roof.joist-grade, unit: choice, options: [c24, c16], meaning: Strength class. }
        """, "", NoFinish, RoofSlots + "\n" + """
        - { slot: roof.deck, default: plywood, kinds: [board, timber], name: Deck }
        - { slot: roof.ceiling-board, default: plasterboard, kinds: [board], name: Ceiling }
        """, """
        - { slot: roof.insulation, as: insulation, name: roof.insulation }
        - { slot: roof.deck, as: deck, name: roof.deck }
        - { slot: roof.void, as: joists, name: roof.void, thickness: roof.joist-depth, kind: bridged }
        - { slot: roof.ceiling-board, as: ceiling, name: roof.ceiling-board }
        """);

    public static readonly Component SlabRoof = Component("slab", "roof", Slab + "\n" + Above, RoofChoices + "\n" + """
        - { key: roof.screed-bond, unit: choice, options: [bonded, unbonded], meaning: Whether the screed is bonded. }
        """, "", NoFinish, RoofSlots + "\n" + """
        - { slot: roof.slab, default: concrete-rc1, kinds: [masonry], name: Slab }
        - { slot: roof.screed, default: screed, kinds: [masonry], name: Screed }
        """, """
        - { slot: roof.insulation, as: insulation, name: roof.insulation }
        - { slot: roof.slab, as: slab, name: roof.slab }
        """);

    private const string JunctionSlots = """
        - { slot: flashing, default: lead, kinds: [metal], name: Flashing }
        - { slot: tray, default: polymer-dpc, kinds: [membrane], name: Tray, when: has(wall.cavity) }
        - { slot: upstand.insulation, default: pir-roof, kinds: [insulation], name: Upstand insulation }
        - { slot: strap, default: stainless, kinds: [metal], name: Strap }
        """;

    private const string JunctionDerived = """
        - { key: tray.outlet, cases: [ { when: has(wall.cavity), as: upstand.height } ], meaning: Lowest outlet edge of the tray. }
        """;

    public static readonly Component Parapet = Component("parapet", "junction", Junction + "\n" + Coping, """
        - { key: coping.kind, unit: choice, options: [stone, concrete, metal], meaning: What the coping is made of. }
        - { key: coping.fall-to, unit: choice, options: [roof, both, outside], meaning: Which way the coping falls. }
        - { key: tray.discharge, unit: choice, options: [roof, outside], when: has(wall.cavity), meaning: Which way the tray drains. }
        """, JunctionDerived + "\n" + """
        - { key: parapet.width, as: wall.thickness, meaning: Width of the head. }
        - { key: coping.width, as: wall.thickness + coping.overhang + coping.overhang-inside, meaning: Width of the coping. }
        - { key: coping.rise, as: coping.width / coping.fall, meaning: Rise of the coping across its width. }
        - { key: coping.drip-from-edge, as: coping.overhang - coping.drip-clearance - coping.drip-width, meaning: Groove to edge. }
        - { key: parapet.wall-head, as: parapet.height - coping.thickness - coping.rise, meaning: Top of the masonry. }
        """, """
        - { id: upstand-under-head, require: upstand.height + 75 mm <= parapet.wall-head, reason: The upstand ends below the wall head. }
        """, JunctionSlots + "\n" + """
        - { slot: coping, default: cast-stone, kinds: [masonry, metal], name: Coping }
        - { slot: coping.dpc, default: bitumen-dpc, kinds: [membrane, metal], name: Coping damp-proof course }
        - { slot: coping.plate, default: fibre-cement, kinds: [board, metal, masonry], name: Support plate, when: has(wall.cavity) }
        """, "");

    public static readonly Component Abutment = Component("abutment", "junction", Junction + "\n" + """
        wall.insulation-base|length|50 mm|500 mm|5 mm|150 mm||has(wall.render)
        """, "", JunctionDerived, "", JunctionSlots, "");

    public static readonly IReadOnlyList<Component> All = [CavityWall, SolidWall, TimberRoof, SlabRoof, Parapet, Abutment];

    /// <summary>With the shipped rules.</summary>
    public static readonly Catalogue Shipped = Told(Catalogue.Of([.. All, .. Components.Load().All], StockLibrary.Load().All, Materials.Ids, [PackOf("uk")]));

    /// <summary>Without any rules.</summary>
    public static readonly Catalogue Bare = With("[]");

    private static Catalogue Told(Outcome<Catalogue> read) =>
        read.IsGood ? read.Value : throw new InvalidOperationException(string.Join("\n", read.Faults.Select(fault => $"{fault.At}: {fault.Reason} {fault.Hint}")));

    public static PackText PackOf(string name) =>
        new(name, [.. Shelf.Shipped.Under($"presets/rules/{name}/").Select(file => file.Read().ToOutcome().Value)]);

    /// <summary>With rules of one's own.</summary>
    public static Catalogue With(string rules) =>
        Catalogue.Of(All, StockLibrary.Load().All, Materials.Ids, [new PackText("own", [Tree(rules, "own.yaml")])]).Value;

    public static Node Tree(string yaml, string name) => NodeReader.Text(yaml, name, ReadingLimits.Usual).ToOutcome().Value;

    /// <summary>A preset of these three; the texts are key=value.</summary>
    public static Preset Preset(Component junction, Component wall, Component roof, params IReadOnlyList<string> set) =>
        new("trial", "Trial", "trial.yaml", junction, wall, roof,
            [.. Vocabulary.Circumstances.Skip(1).Select(key => new Condition(key.Name, key.Options[0], null))],
            [.. set.Select(text => Given(text, junction, wall, roof))], [], [],
            [.. new[] { wall, roof, junction }.SelectMany(component => component.Slots).Select(slot => new FilledSlot(slot, Materials.Find(slot.Default)!, null))],
            [new NamedPack("uk", At)], [], [], new SheetWishes(null, null, [], []), new TitleBlock([]), [], "mould", false, []);

    /// <summary>Held to rules of one's own instead of the shipped ones.</summary>
    public static Preset Own(this Preset preset) => preset with { Rules = [new NamedPack("own", At)] };

    public static Preset Waiving(this Preset preset, string rule) =>
        preset with { Waivers = [.. preset.Waivers, new Waiver(rule, "agreed", "the architect", null, At)] };

    public static Preset Where(this Preset preset, string key, string word) => preset with
    {
        Conditions = [.. preset.Conditions.Select(condition => condition.Key == key ? condition with { Word = word } : condition)],
    };

    public static Preset Of(this Preset preset, string slot, string material) => preset with
    {
        Slots = [.. preset.Slots.Select(one => one.Slot.Key == slot ? one with { Filling = Materials.Find(material)!, At = At } : one)],
    };

    public static Preset To(this Preset preset, string key, decimal target) => preset with { Targets = [.. preset.Targets, new Target(key, target, At)] };

    public static Preset Wishing(this Preset preset, string text) =>
        preset with { Prefer = [.. preset.Prefer, Given(text, preset.Junction, preset.Wall, preset.Roof)] };

    public static Solution.Solved Solve(this Preset preset, Catalogue? catalogue = null) => DetailSolver.Solve(preset, catalogue ?? Fitting(preset)) switch
    {
        Solution.Solved solved => solved,
        Solution.Contradiction contradiction => throw new InvalidOperationException(string.Join("; ", contradiction.Members.Select(member => member.Text))),
        _ => throw new InvalidOperationException("Not proven."),
    };

    public static Solution.Contradiction Fail(this Preset preset, Catalogue? catalogue = null) =>
        (Solution.Contradiction)DetailSolver.Solve(preset, catalogue ?? Fitting(preset));

    public static Verdict Verdict(this Solution.Solved solved, string rule) => solved.Verdicts.First(verdict => verdict.Rule.Id == rule);

    private static Catalogue Fitting(Preset preset) => preset.Rules.Any(pack => pack.Name == "uk") ? Shipped : Bare;

    public static Mark At => new("trial.yaml", 1, 1);

    private static Given Given(string text, params Component[] components)
    {
        var (key, value) = (text.Split('=')[0], text.Split('=')[1]);
        var parameter = components.SelectMany(component => component.Parameters).First(one => one.Key == key);
        return new Given(key, SettingReader.Read(value, At, key, parameter.Unit, parameter.Options).Value, value, At, false);
    }

    private static Component Component(string id, string kind, string table, string choices, string derived, string claims, string slots, string layers)
    {
        const string source = "source: { document: made up, confidence: memory }";
        var yaml = new System.Text.StringBuilder($"id: {id}\nkind: {kind}\ntitle: {id}\nparameters:\n");
        foreach (var line in table.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var cells = line.Trim().Split('|');
            yaml.Append("- { key: ").Append(cells[0]).Append(", unit: ").Append(cells[1]).Append(", from: ").Append(cells[2]).Append(", to: ").Append(cells[3]);
            yaml.Append(", step: ").Append(cells[4]).Append(", meaning: The size ").Append(cells[0]).Append(" of the trial., ").Append(source);
            yaml.Append(cells[5].Length > 0 ? ", default: " + cells[5] : "").Append(cells[6].Length > 0 ? ", stock: " + cells[6] : "");
            yaml.Append(cells[7].Length > 0 ? ", when: " + cells[7] : "").Append(" }\n");
        }

        yaml.Append(choices.Replace(", meaning:", $", {source}, meaning:", StringComparison.Ordinal)).Append('\n');
        foreach (var (name, lines) in new[] { ("derived", derived), ("claims", claims), ("materials", slots), ("layers", layers) })
        {
            yaml.Append(lines.Length > 0 ? name + ":\n" + lines + "\n" : "");
        }

        return ComponentReader.Read(NodeReader.Text(yaml.ToString(), id + ".yaml", ReadingLimits.Usual)).Value;
    }
}
