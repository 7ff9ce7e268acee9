using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Drawing.Tests.Annotation;

/// <summary>The sample parapet with words, sizes and levels, ready to be annotated.</summary>
internal static class AnnotationSamples
{
    private static readonly (string Part, string Reference, string Note)[] Notes =
    [
        ("coping", "P17", "Natural stone coping, 482.5 × 120 to 72 mm; throated both edges, falls to the roof"),
        ("coping.dpc", "P16", "DPC, high-bond polymer, on the plate; full width, joints sealed"),
        ("tie.-40", "P1", "Stainless steel wall ties, 275 mm; at 450 mm centres"),
        ("tie.410", "P1", "Stainless steel wall ties, 275 mm; at 450 mm centres"),
        ("wall.cavity", "", "Clear cavity above the tray, so that it drains"),
        ("tray", "P6", "Preformed cavity tray, self-supporting; 150 mm step, drains to weep holes over the flashing"),
        ("weep", "P7", "Weep holes, open perpends at 900 mm centres max., with stop ends"),
        ("flashing", "P14", "Lead flashing, code 4; laps 80 mm over the insulated upstand"),
        ("upstand.membrane", "P12", "Single-ply upstand, 1.5 mm, bonded; 160 mm above finished roof level"),
        ("upstand.fillet", "P10", "45° fillet, 50 mm, treated softwood"),
        ("upstand.insulation", "P9", "50 mm PIR upstand insulation; joins the wall's insulation"),
        ("upstand.backing", "P8", "12 mm plywood backing"),
        ("roof.packing", "P5", "Mineral wool packing, full depth; joins the lining to the roof insulation"),
        ("roof.joist.1", "P2", "Joists, 47 × 170 mm C24 at 400 mm centres"),
        ("roof.firring.1", "P4", "Firrings, 47 mm wide, 66 to 20 mm"),
        ("strap", "P3", "Restraint strap, 30 × 5 mm stainless steel, over three joists; at 2000 mm centres max."),
        ("wall.outer-leaf", "W1", "102.5 mm facing brick, outer leaf"),
        ("wall.cavity-insulation", "W2", "150 mm mineral wool batts, full fill"),
        ("wall.inner-leaf", "W3", "100 mm dense concrete block"),
        ("wall.dab", "W4", "15 mm adhesive dabs"),
        ("wall.lining-insulation", "W5", "40 mm PIR, bonded to the board"),
        ("wall.lining-board", "W6", "12.5 mm plasterboard"),
        ("roof.membrane", "R1", "Single-ply membrane, 1.5 mm"),
        ("roof.insulation.2", "R2", "80 mm PIR, joints staggered"),
        ("roof.insulation.1b", "R3", "80 mm PIR"),
        ("roof.vcl", "R4", "VCL, sealed at laps and edges"),
        ("roof.deck", "R5", "18 mm plywood deck"),
        ("roof.ceiling-board", "R7", "12.5 mm plasterboard ceiling"),
    ];

    internal static IReadOnlyDictionary<string, string> References { get; } =
        Notes.Where(note => note.Reference.Length > 0).ToDictionary(note => note.Part, note => note.Reference, StringComparer.Ordinal);

    internal static Section Parapet()
    {
        var bare = SampleParapet.Section();
        var words = Notes.ToDictionary(note => note.Part, note => note.Note, StringComparer.Ordinal);
        return bare with
        {
            Parts = [.. bare.Parts.Where(part => part.Id is not ("ballast" or "nogging")).Append(Void(bare)).Select(part => part with { Words = new(words.GetValueOrDefault(part.Id, ""), "", "") })],
            Levels =
            [
                new("coping-top", "top of coping", new(-65, 630), true), new("wall-head", "underside of coping", new(417, 510), false), new("tray-outlet", "tray outlet, weep", new(357, 200), false),
                new("upstand-top", "top of upstand", new(353, 160), true), new("finished-roof", "finished roof level", new(420, 0), true),
                new("deck-top", "deck at the break", new(700, -170), false), new("ceiling", "ceiling", new(700, -450), true),
            ],
            Buildups =
            [
                new("wall", "Wall", HeatFlow.Horizontal, [.. Layers("wall.outer-leaf", "wall.cavity-insulation", "wall.inner-leaf", "wall.dab", "wall.lining-insulation", "wall.lining-board")], (new(0, -600), new(420, -600))),
                new("roof", "Roof", HeatFlow.Upwards, [.. Layers("roof.membrane", "roof.insulation.2", "roof.insulation.1b", "roof.vcl", "roof.deck", "roof.ceiling-board")], (new(1000, 0), new(1000, -450))),
            ],
            Measures =
            [
                Across("wall.outer-leaf", 0, 102.5, -600), Across("wall.cavity", 102.5, 252.5, -600), Across("wall.inner-leaf", 252.5, 352.5, -600), Across("wall.dab", 352.5, 367.5, -600),
                Across("wall.lining-insulation", 367.5, 407.5, -600), Across("wall.lining-board", 407.5, 420, -600), Across("wall.thickness", 0, 420, -600, 1),
                Across("coping.overhang", -65, 0, 510, 0, Chains.Head), Across("wall.head", 0, 352.5, 510, 0, Chains.Head), Across("coping.overhang-inside", 352.5, 417.5, 510, 0, Chains.Head),
                Across("coping.width", -65, 417.5, 510, 1, Chains.Head), Across("coping.drip-clearance", -40, 0, 510, 0, Chains.Close),
                Up("roof.insulation.2", 700, -80, 0), Up("roof.insulation.1", 700, -160, -80), Up("roof.deck", 700, -178.4, -160.4), Up("roof.joist", 700, -437.5, -178.4), Up("roof.ceiling-board", 700, -450, -437.5),
                Up("roof.thickness", 700, -450, 0, 1), Up("upstand.height", 420, 0, 160, 0, Chains.Heights), Up("tray.outlet", 420, 160, 200, 0, Chains.Heights), Up("parapet.clear", 420, 200, 510, 0, Chains.Heights),
                Up("coping.height", 420, 510, 630, 0, Chains.Heights), Up("parapet.height", 420, 0, 630, 1, Chains.Heights), Up("flashing.lap", 423, 75, 155, 0, Chains.Close) with { Told = new("flashing", "laps the upstand", "") },
                Up("courses", 0, -265, -40, 0, Chains.WeatherSide), Up("tray.step", 102.5, 185, 335, 0, Chains.Close) with { Told = new("tray", "", "step") },
            ],
            Spaces = [new("outside", "Outside", new(-250, -300)), new("roof", "Roof", new(600, 120)), new("room", "Inside", new(600, -600))],
            Falls = [new("roof.fall", new(600, -5), 40, 1), new("coping.fall", new(176, 606), 10, 1)],
        };

        IEnumerable<Layer> Layers(params string[] ids) => ids.Select(id => new Layer(References[id], id, id, id, bare[id].Material, 10, LayerKind.Solid, ""));
    }

    internal static AnnotationRequest Request(double scale = 5, bool mirror = false, Section? section = null, PaperBox? zone = null, double width = 62)
    {
        section ??= Parapet();
        var view = SectionView.Draw(section, new(scale, new(-200, -690, 760, 700), mirror));
        var place = zone ?? (scale == 5 ? new(-140, -165, 260, 150) : new(-110, -95, 180, 90));
        return new(section, AnnotatedView.Of(view, mirror ? new(-place.Right, place.Bottom, -place.Left, place.Top) : place, scale == 5 ? 90 : 60, width), References, 48.3, []);
    }

    private static Part Void(Section bare) => bare["wall.cavity"] with
    {
        Id = "roof.void",
        BuildOrder = 999,
        Region = Region.Polygon(new(449, -437), new(802, -437), new(802, -305), new(802, -195), new(449, -186)).Minus(Region.Box(300, -306, 1000, -299)),
    };

    private static Measure Across(string id, double from, double to, double y, int tier = 0, string chain = Chains.WallFoot) => new(id, new(from, y), new(to, y), Axis.Horizontal, chain, tier);

    private static Measure Up(string id, double x, double from, double to, int tier = 0, string chain = Chains.RoofEnd) => new(id, new(x, from), new(x, to), Axis.Vertical, chain, tier);
}
