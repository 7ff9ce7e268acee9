using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Writing;

namespace DetailGen.Dxf.Tests;

/// <summary>A small section drawing of Tern Court with every kind of entity, two sheets and an inserted title block.</summary>
internal static class SampleDrawing
{
    public const double Scale = 10;
    public const string Cut = "A-ROOF--E-", Fill = "A-ROOF--H-", Hidden = "A-ROOF--E2", Dimensions = "A-ROOF--D-", Notes = "A-ROOF--T-";
    public const string Frame = "A-SHEET-B-", Port = "A-SHEET-B2";

    private const double Quarter = 0.414213562373095; // tan(90° / 4), the bulge of a quarter circle
    private static readonly DimensionStyle Style = new("DIM-1-10", Scale);

    public static byte[] Bytes(DxfDocument document)
    {
        using var stream = new MemoryStream();
        DxfWriter.Write(document, stream);
        return stream.ToArray();
    }

    public static DxfDocument Document() => new()
    {
        Identity = new("Tern Court Workshops", "TC-DET-0101", new DateOnly(2026, 11, 25)),
        PlotScale = Scale,
        Layers =
        [
            new(Cut) { Weight = 50 },
            new(Fill) { Weight = 13, Color = DxfColor.FromRgb(180, 180, 180) },
            new(Hidden) { Weight = 18, Color = DxfColor.FromRgb(90, 90, 90), Linetype = "DASH-4-2" },
            new(Dimensions) { Weight = 18 },
            new(Notes) { Weight = 18 },
            new(Frame) { Weight = 35 },
            new(Port) { Weight = 9, Color = DxfColor.FromRgb(160, 160, 160), IsPlotted = false },
        ],
        Linetypes = [new("DASH-4-2", "dash 4, gap 2", [4, -2]), new("DOT-3", "dot, gap 3", [0, -3])],
        DimensionStyles = [Style, new("DIM-1-1", 1)],
        Blocks = [TitleBlock()],
        Model = [.. Model()],
        Sheets =
        [
            new("Sheet 1", "ISO A3", 420, 297)
            {
                Content =
                [
                    Box(10, 10, 400, 277, Frame),
                    new Line(new(20, 30), new(200, 30)) { Layer = Frame, Linetype = "DASH-4-2" },
                    new Insert("SHEET-TITLE", new(290, 10), [new("TITLE", "Parapet, cavity wall"), new("NUMBER", "TC-DET-0101", 2)]) { Layer = Frame },
                ],
                Viewports = [new(Port, new(150, 160), 250, 200, new(700, 300), Scale)],
            },
            new("Sheet 2", "ISO A4", 210, 297)
            {
                Content = [Box(10, 10, 190, 277, Frame), Title("SCHEDULE OF LAYERS", new(105, 270), 5, 75)],
                Viewports = [new(Port, new(105, 180), 160, 100, new(600, 200), 20) { Frozen = [Dimensions, Notes] }],
            },
        ],
        Provenance = new("""{"detail":"tern-court-parapet-01","note":"λ ≥ 0.035, Übergang","set":{"wall.cavity":"150 mm"}}""" + new string('x', 300), "detailgen 1"),
    };

    private static IEnumerable<Entity> Model()
    {
        DxfPoint[] deck = [new(0, 0), new(1200, 0), new(1200, 200), new(0, 200)];
        PartTag part = new("roof.deck");
        yield return new Hatch([.. deck.Select(point => (Vertex)point)], new("lines-2",
            [PatternLine.Of(45, 25), PatternLine.Of(45, 25, @base: new(8, 0))]))
        {
            Layer = Fill,
            Part = part,
            Group = "DECK",
            Holes = [[new(400, 100, 1), new(500, 100, 1)]],
        };
        yield return new Hatch([new(0, 200), new(1200, 200), new(1200, 330, Quarter), new(1150, 380), new(0, 380)], new("dash-3",
            [PatternLine.Of(0, 20, 30, default, 40, -20), PatternLine.Of(60, 40, 0, default, 20, -20, 0, -20)]))
        {
            Layer = Fill,
            Part = new("roof.insulation.1"),
        };
        yield return new Hatch([new(0, 650), new(40, 650), new(40, 660), new(0, 660)], null) { Layer = Fill };
        yield return new Polyline([.. deck.Select(point => (Vertex)point)]) { Layer = Cut, IsClosed = true, Part = part, Group = "DECK" };
        yield return new Polyline([new(0, 200), new(1200, 200), new(1200, 330, Quarter), new(1150, 380), new(0, 380)]) { Layer = Cut, IsClosed = true };
        yield return new Polyline([new(1200, 395), new(50, 395, -Quarter), new(5, 440), new(5, 650)]) { Layer = Cut, Width = 5, Part = new("roof.membrane") };
        yield return new Line(new(-300, -300), new(1200, -300)) { Layer = Hidden };
        yield return new Circle(new(450, 100), 50) { Layer = Cut, Group = "DECK" };
        yield return new Arc(new(1250, 0), 60, 0, 90) { Layer = Hidden, Color = DxfColor.FromRgb(200, 40, 40), Weight = 35, Linetype = "DOT-3" };
        yield return new Ellipse(new(1400, 0), new(80, 0), 0.5) { Layer = Hidden };
        yield return Measure(new(0, 0), new(1200, 0), new(0, -120), 0, "1200");
        yield return Measure(new(0, 0), new(0, 200), new(-150, 0), 90, "200 min") with { Override = "<> min" };
        yield return Measure(new(1200, 0), new(1250, 102.5), new(1500, 0), 90, "102.5");
        var (p, q) = (new DxfPoint(1150, 380), new DxfPoint(1350, 530));
        yield return Measure(p, q, new(1150, 480), 180 / Math.PI * Math.Atan2(150, 200), "250") with { Measuring = Measuring.Aligned };
        yield return new Polyline([new(300, 300), new(640, 900), new(690, 900)]) { Layer = Notes, Group = "NOTE-1" };
        yield return new Solid(new(300, 300), new(305.5, 327.1), new(317.6, 320.2)) { Layer = Notes, Group = "NOTE-1" };
        yield return new Mtext(["Insulation λ 0.035 W/(m·K)", "≥ 150 mm upstand, ±0.00 {a\\b}"], new(700, 900), 25, 500)
        {
            Layer = Notes,
            Group = "NOTE-1",
            Attachment = Attachment.MiddleLeft,
        };
        yield return new Mtext([.. Enumerable.Range(1, 8).Select(i => $"line {i} of a note longer than one chunk")], new(1260, 800), 25, 600) { Layer = Notes };
        yield return Title("SECTION – 1:10", new(600, 500), 50, 430) with { Layer = Notes };
        yield return new Text("at the right, ^ and 100%%", new(600, -400), 25, 400) { Layer = Notes, Across = Across.Right, Upright = Upright.Top, Rotation = 15 };
    }

    private static Dimension Measure(DxfPoint first, DxfPoint second, DxfPoint through, double angle, string text) =>
        new(first, second, through, Style.Name, DimensionPicture.Of(first, second, through, angle, Style, text, text.Length * 14))
        {
            Layer = Dimensions,
            Angle = angle,
        };

    private static Polyline Box(double x, double y, double width, double height, string layer) =>
        new([new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)]) { Layer = layer, IsClosed = true };

    private static Text Title(string content, DxfPoint at, double height, double width) =>
        new(content, at, height, width) { Layer = Frame, Across = Across.Centre };

    private static Block TitleBlock() => new("SHEET-TITLE", [Box(0, 0, 120, 30, "0"), new Line(new(0, 12), new(120, 12)) { Layer = "0" }])
    {
        Fields = [new("TITLE", new(3, 20), 2.5), new("NUMBER", new(3, 4), 2.5) { Prompt = "Drawing number" }, new("STATUS", new(60, 4), 2.5)],
    };
}
