using System.Text;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Reading;

namespace DetailGen.Dxf.Tests.Reading;

public class RoundTripTests
{
    private static readonly byte[] Written = SampleDrawing.Bytes(SampleDrawing.Document());

    [Fact]
    public void What_was_written_comes_back_byte_for_byte()
    {
        var file = DxfFile.Read(new MemoryStream(Written));
        Assert.Empty(file.Findings);
        Assert.False(file.IsBinary);
        Assert.Equal("AC1024", file.Version);
        Assert.Equal(Written, Text(file));
    }

    [Fact]
    public void The_binary_form_reads_as_the_same_drawing()
    {
        using var binary = new MemoryStream();
        DxfFile.Read(new MemoryStream(Written)).WriteBinary(binary);
        Assert.True(binary.Length < Written.Length);
        binary.Position = 0;
        var read = DxfDrawing.Read(binary);
        Assert.True(read.File.IsBinary);
        Assert.Empty(DrawingEdits.Of(read));
        Assert.Equal(DxfDrawing.Read(new MemoryStream(Written)).Entities.Count, read.Entities.Count);

        using var again = new MemoryStream();
        read.File.WriteBinary(again);
        Assert.Equal(binary.ToArray(), again.ToArray());
    }

    [Fact]
    public void Every_kind_that_is_written_is_read_as_that_kind()
    {
        var entities = DxfDrawing.Read(new MemoryStream(Written)).Entities;
        Assert.All(entities, entity => Assert.NotNull(entity.Entity));
        Assert.Equal(
            ["ARC", "CIRCLE", "DIMENSION", "ELLIPSE", "HATCH", "INSERT", "LINE", "LWPOLYLINE", "MTEXT", "SOLID", "TEXT", "VIEWPORT"],
            entities.Select(entity => entity.Kind).Distinct().Order(StringComparer.Ordinal));
        var document = SampleDrawing.Document();
        Assert.Equal(document.Model.Length + document.Sheets.Sum(sheet => sheet.Content.Length + sheet.Viewports.Length) + document.Blocks.Sum(block => block.Content.Length), entities.Count);
    }

    [Fact]
    public void Values_come_back_as_they_were_drawn()
    {
        var read = DxfDrawing.Read(new MemoryStream(Written));
        var drawn = SampleDrawing.Document().Model;
        var model = read.Entities.Where(entity => entity.Space == "*Model_Space").Select(entity => entity.Entity).ToList();

        Assert.Equal(drawn.OfType<Line>().First().To, model.OfType<Line>().First().To);
        Assert.Equal(drawn.OfType<Hatch>().Select(hatch => hatch.LinesAcross), model.OfType<Hatch>().Select(hatch => hatch.LinesAcross), (a, b) => Math.Abs(a - b) < 1e-4);
        Assert.Equal(drawn.OfType<Mtext>().SelectMany(mtext => mtext.Lines), model.OfType<Mtext>().SelectMany(mtext => mtext.Lines));
        Assert.Equal(drawn.OfType<Dimension>().Select(dimension => dimension.Measured), model.OfType<Dimension>().Select(dimension => dimension.Measured), (a, b) => Math.Abs(a - b) < 1e-5);
        Assert.Equal(drawn.OfType<Dimension>().Select(dimension => dimension.Override), model.OfType<Dimension>().Select(dimension => dimension.Override));
        Assert.Equal(["at the right, ^ and 100% %", "SECTION – 1:10"], model.OfType<Text>().Select(text => text.Content).Order(StringComparer.Ordinal).Reverse());
        var arc = model.OfType<Arc>().Single();
        Assert.Equal((35, "DOT-3", DxfColor.FromRgb(200, 40, 40)), (arc.Weight, arc.Linetype, arc.Color!.Value));
        Assert.Equal(["roof.deck", "roof.insulation.1", "roof.membrane"], read.Entities.Select(entity => entity.Part).OfType<string>().Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_preset_comes_back_letter_for_letter()
    {
        foreach (var length in (int[])[0, 1, 239, 240, 241, 4_000])
        {
            var parameters = "{\"λ\":\"" + new string('ü', length) + "\"}";
            var document = SampleDrawing.Document() with { Provenance = new(parameters, "detailgen 1") };
            Assert.Equal(new(parameters, "detailgen 1"), DxfDrawing.Read(new MemoryStream(SampleDrawing.Bytes(document))).Provenance);
        }
    }

    [Fact]
    public void Unknown_records_and_sections_are_kept()
    {
        var edited = new Edited();
        edited.Insert(edited.Find("HATCH", "solid".ToUpperInvariant())[0], (0, "WIDGET"), (5, "FFF1"), (100, "AcDbEntity"), (8, "0"), (40, "1e-7"), (310, "00FF"));
        var end = edited.Find("EOF", "EOF")[0];
        edited.Insert(end, (0, "SECTION"), (2, "EXTRA"), (9, "$NOTHING"), (70, "3")).Insert(end + 1, (0, "ENDSEC"));
        var read = edited.Drawing;
        Assert.Equal(edited.Bytes, Text(read.File));
        Assert.Null(Assert.Single(read.Entities, entity => entity.Kind == "WIDGET").Entity);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r")]
    [InlineData("\r\n")]
    public void Lines_may_end_in_any_way(string end)
    {
        var text = Encoding.UTF8.GetString(Written).Replace("\r\n", end, StringComparison.Ordinal);
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text + end + "behind the end")];
        Assert.Equal(Written, Text(DxfFile.Read(new MemoryStream(bytes))));
    }

    [Fact]
    public void Letters_of_an_older_version_lie_in_its_code_page_or_are_escaped()
    {
        // Windows-1250, Central Europe: 0xB3 is ł, from the code page's published table.
        byte[] bytes = [.. "  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1015\n  9\n$DWGCODEPAGE\n  3\nANSI_1250\n  0\nENDSEC\n  0\nSECTION\n  2\nENTITIES\n  0\nTEXT\n  8\n0\n 40\n2.5\n  1\n"u8,
            0xB3, .. " \\U+03BB\n  0\nENDSEC\n  0\nEOF\n"u8];
        var text = Assert.IsType<Text>(Assert.Single(DxfDrawing.Read(new MemoryStream(bytes)).Entities).Entity);
        Assert.Equal("ł λ", text.Content);
    }

    private static byte[] Text(DxfFile file)
    {
        using var output = new MemoryStream();
        file.WriteText(output);
        return output.ToArray();
    }
}
