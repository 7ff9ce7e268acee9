using System.Runtime.CompilerServices;
using DetailGen.Details.Reading;
using DetailGen.Details.Sheets;
using DetailGen.Drawing.Emitters;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Sheets;
using DetailGen.Sections;

namespace DetailGen.Library.Working;

/// <summary>
/// A sheet of a few parts that nobody asked for, drawn once in a process beside the reading of the data. Most of a first sheet's time goes into loading and
/// compiling the drawing's code, not into drawing; where there is a second processor that is over by the time a detail has been solved.
/// A tool that was compiled natively has nothing to rehearse. Nothing of it is kept, and no output depends on it.
/// </summary>
internal static class Rehearsal
{
    private static readonly Lazy<Task> Once = new(() => RuntimeFeature.IsDynamicCodeCompiled && Environment.ProcessorCount > 1 ? Task.Run(Draw) : Task.CompletedTask);

    /// <summary>Begins, if it has not begun yet, and returns at once.</summary>
    /// <returns>Fails only where the drawing does.</returns>
    internal static Task Begin() => Once.Value;

    /// <summary>The files, which nobody keeps.</summary>
    internal static IReadOnlyList<EmittedFile> Draw()
    {
        var data = SheetDataReader.Load(Shelf.Shipped).Value;
        var sheet = SheetComposer.Compose(Wall(), Words, new("A4", 20, Mirror: false, ViewOnly: false), SheetSetup.Formats(data, Typeface.Shipped, reducedPrint: false), SheetSetup.Layers(data), new("", "", "", "", "", null, "{}"));
        return [.. SceneFiles.Emit(sheet.Scene, ["dxf"]), .. SceneFiles.Emit(sheet.Scene.InBlack(), ["svg"])];
    }

    private static SheetText Words { get; } = new(
        new("", "", "", "R", "", "", "", "", "", "", "", "Rehearsal", ""), [new("P01", "", "First issue", "", "")],
        [new("wall", [new("W1", "Outer leaf", "Brick", "102.5", "0.77", "0.13", "Cladding", "")])], [new("Tray", "A tray drains the cavity.", "", "", Verdict.Pass, true)], 0,
        ["Sizes in millimetres."], "", "Section", ["DPC: damp-proof course"], null);

    // two leaves with insulation between, a roof with its membrane, one size of each direction, two levels
    private static Section Wall()
    {
        Point up = new(0, 1);
        Part Part(int order, string id, string fill, string code, Element element, Region region, Point axis, Sheet? sheet = null) =>
            new(id, id, new(id, id, "board", fill, code, 0.1, 1000, "assumed"), element, region, Presence.Cut, Roles.None, order)
            {
                Slot = id,
                Words = new($"Note on {id}", "", ""),
                Axis = axis,
                Sheet = sheet,
                Coursing = fill == "brick" ? new(0, 75, 10) : null,
            };

        Point[] face = [new(300, 0), new(1500, -30)];
        return new(
            "parapet",
            [
                Part(1, "wall.outer-leaf", "brick", "BK", Element.Wall, Region.Box(0, -800, 100, 500), up),
                Part(2, "wall.insulation", "fibrous-insulation", "IF", Element.Wall, Region.Box(100, -800, 200, 500), up),
                Part(3, "wall.inner-leaf", "dense-block", "BL", Element.Wall, Region.Box(200, -800, 300, 500), up),
                Part(4, "roof.deck", "plywood", "TB", Element.Roof, Region.Box(300, -218, 1500, -200), new(1, 0)),
                Part(5, "roof.insulation", "rigid-insulation", "IR", Element.Roof, Region.Polygon(new(300, -200), new(1500, -200), new(1500, -30), new(300, 0)), new(1, 0)),
                Part(6, "roof.membrane", "membrane", "WP", Element.Roof, Region.Polygon(new(300, 0), new(1500, -30), new(1500, -28), new(300, 2)), new(1, 0), new(face, 2, [], Seat.Face)),
            ],
            [new("head", "top of wall", new(300, 500), true), new("finished-roof", "finished roof", new(300, 0), true)],
            [],
            [
                new("wall.thickness", new(0, -700), new(300, -700), Axis.Horizontal, Chains.WallFoot),
                new("upstand.height", new(320, 0), new(320, 500), Axis.Vertical, Chains.Heights),
            ],
            [new("outside", "Outside", new(-200, 200)), new("room", "Inside", new(800, -500))],
            [new("wall", Heading.Down, -400, -800, (0, 300)), new("roof", Heading.Along, 700, 1500, (-218, 2))],
            [new("roof.fall", new(900, -15), 40, 1)]);
    }
}
