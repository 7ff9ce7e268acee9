using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Writing;

namespace DetailGen.Dxf.Tests.Writing;

public sealed class RefusalTests
{
    private static readonly Line Line = new(new(0, 0), new(1, 0)) { Layer = "0" };
    private static readonly Hatch Hatch = new([new(0, 0), new(100, 0), new(100, 100)], Pattern("brick", 45, 5)) { Layer = "0" };

    public static TheoryData<Entity> Faulty =>
    [
        Line with { To = new(double.NaN, 0) },
        Line with { To = new(0, double.PositiveInfinity) },
        Line with { To = new(1e12, 0) },
        Line with { To = new(1_000_001, 0) },
        new Circle(new(0, 0), -5) { Layer = "0" },
        new Circle(new(0, 0), double.NaN) { Layer = "0" },
        new Arc(new(0, 0), -5, 0, 90) { Layer = "0" },
        new Arc(new(0, 0), 5, 0, double.NaN) { Layer = "0" },
        new Solid(new(0, 0), new(1, 0), new(0, double.NaN)) { Layer = "0" },
        new Polyline([new(0, 0), new(double.NaN, 0)]) { Layer = "0" },
        Hatch with { Outer = [new(0, 0), new(100, 0), new(100, double.NaN)] },
        Hatch with { Holes = [[new(1, 0, double.NaN), new(2, 0), new(2, 1)]] },
        Line with { Layer = "NOWHERE" },
        Line with { Linetype = "NOWHERE" },
        Line with { Weight = 17 },
        Line with { Color = new(0) },
        Line with { Group = "a/b" },
        Line with { Part = new("two\nlines"), Group = null },
        new Polyline([.. Enumerable.Range(0, 10_001).Select(i => new Vertex(i, 0))]) { Layer = "0" },
        new Ellipse(new(0, 0), new(10, 0), 2) { Layer = "0" },
        new Text("x", new(0, 0), 0, 5) { Layer = "0" },
        new Text("x", new(0, 0), 2.5, 0) { Layer = "0" },
        new Text("two\r\nlines", new(0, 0), 2.5, 5) { Layer = "0" },
        new Text("half a pair \uD83D", new(0, 0), 2.5, 5) { Layer = "0" },
        new Text(new string('é', 128), new(0, 0), 2.5, 5) { Layer = "0" },
        new Mtext([new string('x', 4001)], new(0, 0), 2.5, 5) { Layer = "0" },
        new Insert("NOWHERE", new(0, 0), []) { Layer = "0" },
        new Insert("TITLE", new(0, 0), [new("NOWHERE", "x")]) { Layer = "0" },
        Hatch with { Pattern = Pattern("Brick", 45, 5) },
        Hatch with { Pattern = Pattern("brick bond", 45, 5) },
        Hatch with { Pattern = Pattern("solid", 45, 5) },
        Hatch with { Pattern = Pattern(new string('a', 32), 45, 5) },
        Hatch with { Pattern = Pattern("dense", 45, 0.01) },
        Hatch with { Pattern = Pattern("along", 45, 0) },
        Hatch with { Pattern = Pattern("dots", 45, 5, 0, 0) },
        Hatch with { Pattern = Pattern("many", 45, 5, 1, -1, 1, -1, 1, -1, 1) },
        Hatch with { Pattern = new("none", []) },
        Measure("11"),
        Measure("10 min"),
        Measure("10") with { Override = "<> max" },
        Measure("10") with { Style = "NOWHERE" },
    ];

    [Theory]
    [MemberData(nameof(Faulty), DisableDiscoveryEnumeration = true)]
    public void A_fault_is_told_before_a_byte_is_written(Entity entity) =>
        Refused(new DxfDocument { Blocks = [new("TITLE", [])], Model = [Line, entity], Provenance = new("{}", "detailgen 1") });

    [Fact]
    public void The_message_names_the_entity()
    {
        foreach (var faulty in (Line[])[Line with { Layer = "NOWHERE" }, Line with { To = new(double.NaN, 0) }])
        {
            var fault = Refused(new DxfDocument { Model = [faulty with { Part = new("coping") }] });

            Assert.Contains("LINE", fault.Message, StringComparison.Ordinal);
            Assert.Contains("coping", fault.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_group_lies_in_one_space()
    {
        var member = Line with { Group = "NOTE" };
        Refused(new DxfDocument { Model = [member], Sheets = [new("S", "ISO A3", 420, 297) { Content = [member] }] });
        Refused(new DxfDocument { Blocks = [new("B", [member])] });
    }

    [Fact]
    public void A_pattern_has_one_definition_under_its_name_wherever_it_begins()
    {
        var moved = Hatch with { Pattern = Hatch.Pattern!.Moved(new(3, 4)) };
        using var stream = new MemoryStream();
        DxfWriter.Write(new DxfDocument { Model = [Hatch, moved] }, stream);

        Refused(new DxfDocument { Model = [Hatch, Hatch with { Pattern = Pattern("brick", 30, 5) }] });
    }

    [Fact]
    public void Names_are_unique_without_regard_to_case()
    {
        Refused(new DxfDocument { Layers = [new("WALL"), new("wall")] });
        Refused(new DxfDocument { Linetypes = [new("continuous", "", [1, -1])] });
        Refused(new DxfDocument { Blocks = [new("a", []), new("A", [])] });
        Refused(new DxfDocument { Sheets = [new("model", "ISO A3", 420, 297)] });
    }

    [Theory]
    [InlineData("")]
    [InlineData(" x")]
    [InlineData("a*b")]
    [InlineData("a\u0001b")]
    public void Names_that_the_format_forbids_are_refused(string name) => Refused(new DxfDocument { Layers = [new(name)] });

    [Fact]
    public void Tables_out_of_range_are_refused()
    {
        Refused(new DxfDocument { PlotScale = 0 });
        Refused(new DxfDocument { Layers = [new("A") { Weight = 33 }] });
        Refused(new DxfDocument { Layers = [new("A") { Linetype = "NOWHERE" }] });
        Refused(new DxfDocument { Linetypes = [new("GAP", "", [-1, 1])] });
        Refused(new DxfDocument { DimensionStyles = [new("D", 0)] });
        Refused(new DxfDocument { Blocks = [new("B", [Measure("10")])] });
        Refused(new DxfDocument { Blocks = [new("B", []) { Fields = [new("lower case", default, 2.5)] }] });
        Refused(new DxfDocument { Sheets = [new("S", "ISO A3", 420, 297) { Viewports = [new("NOWHERE", default, 10, 10, default, 10)] }] });
        Refused(new DxfDocument { Sheets = [new("S", "ISO A3", 420, 297) { Viewports = [new("0", default, 10, 10, default, 0)] }] });
    }

    private static ArgumentException Refused(DxfDocument document)
    {
        using var stream = new MemoryStream();
        var fault = Assert.ThrowsAny<ArgumentException>(() => DxfWriter.Write(document, stream));
        Assert.Equal(0, stream.Length);
        return fault;
    }

    private static HatchPattern Pattern(string name, double angle, double spacing, params double[] dashes) =>
        new(name, [PatternLine.Of(angle, spacing, spacing == 0 ? 1 : 0, default, [.. dashes])]);

    private static Dimension Measure(string shown)
    {
        var style = new DimensionStyle(DimensionStyle.Standard, 1);
        return new(new(0, 0), new(10, 0), new(0, -10), style.Name, DimensionPicture.Of(new(0, 0), new(10, 0), new(0, -10), 0, style, shown, 5)) { Layer = "0" };
    }
}
