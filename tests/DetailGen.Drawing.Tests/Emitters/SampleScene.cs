using DetailGen.Drawing.Scenes;

namespace DetailGen.Drawing.Tests.Emitters;

/// <summary>A small scene with every kind of item, two scales and two pages.</summary>
internal static class SampleScene
{
    public const string Awkward = "Laps 75 mm min. & \"flush\" <dry> 'edge', λ 0.022 W/mK, −0.150";

    public static Hatch Brick { get; } = new("fill.BK.wall", "brick", [new(0, -20), new(10.25, -20), new(10.25, 20), new(0, 20)], [[new(3, -5), new(3, 5), new(7, 5), new(7, -5)]],
        [new(45, 3, new(0, -20), 0, []), new(45, 3, new(0.9, -20), 0, [])])
    { PartId = "wall.outer-leaf" };

    public static Hatch Stone { get; } = new("fill.BK.wall", "natural-stone", [new(30, -20), new(55, -18), new(50, 14), new(41, 3), new(32, 17)], [],
        [new(45, 4, new(30, -20), 0, []), new(45, 4, new(31, -18), 1.3, [3, -0.8, 0.2, -0.8])])
    { PartId = "coping" };

    public static Hatch Block { get; } = new("fill.BK.wall", "lightweight-block", [new(60, -20), new(80, -20), new(80, 20), new(60, 20)], [],
        [new(45, 3.5, new(60, -20), 0, []), new(135, 3.5, new(60, -20), 0.7, [2, -1.5])])
    { PartId = "wall.inner-leaf" };

    private static readonly Dimension Leaf = new("dim.chain", "dim.stroke", new(0, -20), new(10.25, -20), Vertical: false, -32, "102.5", new(5.125, -31.4), 102.5, 2.5) { MeasureId = "wall.outer-leaf" };

    private static readonly Dimension Upstand = new("dim.chain", "dim.stroke", new(80, -20), new(80, -5), Vertical: true, 92, "150 min.", new(91.4, -12.5), 150, 2.5) { MeasureId = "upstand.height" };

    private static readonly Dimension Thin = new("dim.chain", "dim.stroke", new(80, -5), new(80, -3.75), Vertical: true, 92, "12.5", new(91.4, 0), 12.5, 2.5, Terminator.Stroke, Terminator.Dot);

    private static readonly Dimension RaisedFigure = new("dim.chain", "dim.stroke", new(10.25, -20), new(13, -20), Vertical: false, -32, "27", new(11.6, -27.4), 27.4, 2.5);

    public static View Section { get; } = new("section", 10,
    [
        Brick, Stone, Block,
        new Grains("fill.BK.wall", [new(20, 0), new(21, 1), new(22, -1), new(200, 0)], 0.3) { PartId = "mortar" },
        new Stroke("cut.BK.wall", [new(0, -20), new(10.25, -20), new(10.25, 20), new(0, 20)], Closed: true) { PartId = "wall.outer-leaf" },
        new Stroke("cut.BK.wall", [new(60, -20), new(80, -20), new(80, 20), new(60, 20)], Closed: true) { PartId = "wall.inner-leaf" },
        new Stroke("sheet.VC.roof", [new(20, -15), new(40, -15), new(40, 25), new(120, 25)]) { PartId = "roof.vcl" },
        new Stroke("centre", [new(-10, 0), new(130, 0)]),
        new Solid("solid.WP.roof", [new(20, 26), new(100, 26), new(100, 26.6), new(20, 26.6)], []) { PartId = "roof.membrane" },
        new Ring("beyond.wall", new(50, 30), 6) { PartId = "weep" },
        new Group("note.leader", "note-W3",
        [
            new Stroke("note.leader", [new(40, 40), new(5, 10)]),
            new Dot("note.leader", new(5, 10), 1),
            new Paragraph("note.text", ["102.5 mm facing brick", Awkward, "{braces} \\ ^caret %%c"], new(41, 40), 2.5, 4.25),
        ]),
        new Group("dim.level", "level", [new Solid("dim.level", [new(100, 0), new(101.5, 2), new(98.5, 2)], []), new Text("dim.level", "−0.150", new(102, 1), 2.5)]),
        Leaf, Upstand, Thin, RaisedFigure,
        new Text("note.text", "Inside", new(110, -10), 3.5, Align.Centre, Bold: true),
        new Text("note.text", "Outside", new(-8, -18), 2.5, Align.Right, 90),
        new Stroke("construction", [new(-50, -50), new(150, 50)]),
    ], new(-50, -50, 150, 52));

    public static View Inset { get; } = new("inset", 2,
    [
        Stone,
        new Stroke("sheet.VC.roof", [new(30, -20), new(55, -18), new(50, 14)]) { PartId = "coping" },
    ], new(29, -21, 56, 18));

    public static Scene Scene { get; } = new(Layers(), [Section, Inset],
    [
        new(1, "A3", 420, 297, [new("section", new(120, 170), new(60, 100, 300, 240)), new("inset", new(300, 150), new(320, 110, 370, 180))],
        [
            new Stroke("frame", [new(20, 10), new(410, 10), new(410, 287), new(20, 287)], Closed: true),
            new Stroke("frame", [new(100, 60), new(200, 60)]),
            new Stroke("hidden", [new(100, 65), new(200, 65)]),
            new Form("block.label", "title-block",
                [new Stroke("table.outer", [new(230, 10), new(410, 10), new(410, 66), new(230, 66)], Closed: true), new Text("block.label", "Number", new(231, 64), 1.8)],
                [new("NUMBER", new("block.value", "TC-DET-0101", new(270, 40), 5, Align.Centre)), new("TITLE", new("block.value", "Parapet <A> & Co", new(232, 20), 3.5))]),
            new Text("schedule", "Layer schedule", new(30, 50), 3.5, Bold: true),
        ]),
        new(2, "A4", 210, 297, [],
        [
            new Form("block.label", "title-block", [new Text("block.label", "Number", new(31, 64), 1.8)], [new("NUMBER", new("block.value", "TC-DET-0101", new(32, 40), 5))]),
        ]),
    ], new("TC-DET-0101", "P01", "Parapet & <roof>", "AB", "Tern Court Workshops", new(2026, 11, 25), "{\"detail\":\"tern-court-parapet-01\"}"));

    public static IEnumerable<string> Words(Page page)
    {
        foreach (var placement in page.Placements)
        {
            foreach (var words in Scene.Views.Single(view => view.Id == placement.ViewId).Items.SelectMany(Words))
            {
                yield return words;
            }
        }

        foreach (var words in page.Items.SelectMany(Words))
        {
            yield return words;
        }
    }

    private static IEnumerable<string> Words(Item item) => item switch
    {
        Text text => [text.Words],
        Paragraph paragraph => paragraph.Lines,
        Dimension dimension => [dimension.Figure],
        Group group => group.Items.SelectMany(Words),
        Form form => [.. form.Items.SelectMany(Words), .. form.Values.Select(value => value.Text.Words)],
        _ => [],
    };

    private static LayerRow[] Layers()
    {
        var (water, vapour, dim, fill) = (new Ink(0x35, 0x0B, 0x79), new Ink(0xD0, 0x0B, 0xA4), new Ink(0, 0x57, 0x39), new Ink(0x6E, 0x6E, 0x6E));
        return
        [
            new("cut.BK.wall", "A-EF2510E1N-----2-BK", 0.5, "continuous", Ink.Black),
            new("fill.BK.wall", "A-EF2510H1N-----2-BK", 0.13, "continuous", fill),
            new("sheet.VC.roof", "A-EF3010E5N-----2-VC", 0.35, "dashed", vapour),
            new("solid.WP.roof", "A-EF3010H5N-----2-WP", 0.18, "continuous", water),
            new("beyond.wall", "A-EF2510E3N-----2", 0.18, "continuous", Ink.Black),
            new("hidden", "A-EF2510E4N-----2", 0.18, "dashed", Ink.Black),
            new("note.text", "A-------T1", 0.18, "continuous", Ink.Black),
            new("note.leader", "A-------T2", 0.18, "continuous", Ink.Black),
            new("dim.chain", "A-------D1", 0.18, "continuous", dim),
            new("dim.level", "A-------D3", 0.18, "continuous", dim),
            new("dim.stroke", "A-------D5", 0.35, "continuous", dim),
            new("centre", "A-------G1", 0.18, "chain", Ink.Black),
            new("construction", "A-------U1", 0.13, "continuous", fill, Plotted: false),
            new("frame", "A-------B1", 0.7, "continuous", Ink.Black),
            new("table.outer", "A-------B3", 0.5, "continuous", Ink.Black),
            new("block.label", "A-------V1", 0.18, "continuous", Ink.Black),
            new("block.value", "A-------V2", 0.18, "continuous", Ink.Black),
            new("schedule", "A-------I1", 0.18, "continuous", Ink.Black),
        ];
    }
}
