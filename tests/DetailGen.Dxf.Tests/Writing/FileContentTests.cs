using System.Globalization;
using System.Text;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Tests.Writing;

public sealed class FileContentTests
{
    private static readonly TagFile File = new(SampleDrawing.Bytes(SampleDrawing.Document()));

    [Fact]
    public void A_linetypes_length_is_the_sum_of_its_dashes()
    {
        var odd = SampleDrawing.Document() with { Linetypes = [new("DASH-4-2", "", [1.0000004, -1.0000004, 1.0000004, -1.0000004]), new("DOT-3", "", [0, -3])] };
        foreach (var row in File.Of("LTYPE").Concat(new TagFile(SampleDrawing.Bytes(odd)).Of("LTYPE")))
        {
            var dashes = row.All(49).Select(dash => Math.Abs(double.Parse(dash, CultureInfo.InvariantCulture))).ToArray();
            Assert.Equal(dashes.Sum(), row.Number(40), 1e-9);
            Assert.Equal(dashes.Length, row.Number(73));
        }
    }

    [Fact]
    public void The_day_of_issue_is_the_date_of_the_file()
    {
        // 2026-11-25 is day 2461370 at midnight: days since 30 December 1899 and 2415019 before them.
        Assert.Equal("2461370.0", File.Header("$TDCREATE"));
        Assert.Equal("2461370.0", File.Header("$TDUPDATE"));
    }

    [Fact]
    public void The_fingerprint_belongs_to_the_drawing_and_the_version_to_its_content()
    {
        var document = SampleDrawing.Document();
        var moved = new TagFile(SampleDrawing.Bytes(document with { Model = [.. document.Model, new Line(new(0, 0), new(1, 0)) { Layer = SampleDrawing.Cut }] }));
        var other = new TagFile(SampleDrawing.Bytes(document with { Identity = document.Identity with { Number = "TC-DET-0102" } }));

        Assert.Equal(File.Header("$FINGERPRINTGUID"), moved.Header("$FINGERPRINTGUID"));
        Assert.NotEqual(File.Header("$VERSIONGUID"), moved.Header("$VERSIONGUID"));
        Assert.NotEqual(File.Header("$FINGERPRINTGUID"), other.Header("$FINGERPRINTGUID"));
        Assert.Matches("^\\{[0-9A-F]{8}-[0-9A-F]{4}-8[0-9A-F]{3}-[89AB][0-9A-F]{3}-[0-9A-F]{12}\\}$", File.Header("$VERSIONGUID"));
    }

    [Fact]
    public void The_parameters_read_back_from_their_chunks()
    {
        var record = File.Of("XRECORD").ElementAt(1);
        var chunks = record.All(1).ToArray();

        Assert.Equal(SampleDrawing.Document().Provenance!.Parameters, string.Concat(chunks));
        Assert.Equal(Encoding.UTF8.GetByteCount(string.Concat(chunks)), record.Number(90));
        Assert.All(chunks, chunk => Assert.True(Encoding.UTF8.GetByteCount(chunk) <= 240));
    }

    [Fact]
    public void Entities_carry_their_part_and_a_digest_that_changes_with_them()
    {
        var document = SampleDrawing.Document();
        var hatch = (Hatch)document.Model[0];
        var edited = new TagFile(SampleDrawing.Bytes(document with { Model = document.Model.SetItem(0, hatch with { Holes = [[new(400, 100, 1), new(500.01, 100, 1)]] }) }));

        Assert.Equal(["part=roof.deck"], File.Of("HATCH").First().All(1000).SkipLast(1));
        Assert.Matches("^d=[0-9a-f]{16}$", File.Of("HATCH").First().All(1000).Last());
        Assert.NotEqual(File.Of("HATCH").First().All(1000).Last(), edited.Of("HATCH").First().All(1000).Last());
        Assert.Equal(File.Of("HATCH").ElementAt(1).All(1000), edited.Of("HATCH").ElementAt(1).All(1000));
    }

    [Fact]
    public void The_digest_does_not_look_at_the_order_of_drawing()
    {
        var document = SampleDrawing.Document();

        Assert.Equal(Digest(document), Digest(document with { Model = [.. document.Model.Reverse()] }));
        Assert.NotEqual(Digest(document), Digest(document with { Model = document.Model.RemoveAt(3) }));
        Assert.Equal(["roof.deck", "2"], DigestRecord(document).Tags.SkipWhile(tag => tag.Value != "roof.deck").Take(2).Select(tag => tag.Value));
    }

    [Fact]
    public void Without_provenance_nothing_of_it_is_in_the_file()
    {
        var bare = new TagFile(SampleDrawing.Bytes(SampleDrawing.Document() with { Provenance = null }));

        Assert.Empty(bare.Of("XRECORD"));
        Assert.DoesNotContain(bare.Records.SelectMany(record => record.Tags), tag => tag.Value.StartsWith("part=", StringComparison.Ordinal));
    }

    [Fact]
    public void An_aligned_text_also_says_where_its_left_end_is()
    {
        var text = File.Of("TEXT").Single(text => text.First(1).StartsWith("at the right", StringComparison.Ordinal));
        var (way, drop) = (400, 25); // width along the base line, height across it, turned by 15°
        var (sine, cosine) = Math.SinCos(15 * Math.PI / 180);

        Assert.Equal(600 - (way * cosine) + (drop * sine), text.Number(10), 1e-6);
        Assert.Equal(-400 - (way * sine) - (drop * cosine), text.Number(20), 1e-6);
        Assert.Equal(600, text.Number(11));
    }

    [Fact]
    public void Dashes_on_a_sheet_are_as_long_on_paper_as_in_the_view()
    {
        var onSheet = File.Of("LINE").Single(line => line.All(67).Any());

        Assert.Equal(1 / SampleDrawing.Scale, onSheet.Number(48));
        Assert.Equal(SampleDrawing.Scale, double.Parse(File.Header("$LTSCALE"), CultureInfo.InvariantCulture));
    }

    [Fact]
    public void A_viewport_shows_exactly_its_scale() =>
        Assert.Equal([20.0, 10.0], File.Of("VIEWPORT").Where(viewport => viewport.First(69) != "1").Select(viewport => viewport.Number(45) / viewport.Number(41)));

    [Fact]
    public void The_extents_hold_texts_and_dimensions_too()
    {
        var tags = File.Of("SECTION").First().Tags;
        var right = double.Parse(tags[tags.IndexOf((9, "$EXTMAX")) + 1].Value, CultureInfo.InvariantCulture);

        Assert.Equal(1860, right); // the long note begins at 1260 and is 600 wide
    }

    [Fact]
    public void A_drawing_without_sheets_gets_an_empty_one()
    {
        var file = new TagFile(SampleDrawing.Bytes(SampleDrawing.Document() with { Sheets = [] }));

        Assert.Equal(["Model", "Sheet"], file.Of("LAYOUT").Select(layout => layout.All(1).Last()));
        Assert.Equal("1", Assert.Single(file.Of("VIEWPORT")).First(69));
    }

    private static TagRecord DigestRecord(DxfDocument document) => new TagFile(SampleDrawing.Bytes(document)).Of("XRECORD").First();

    private static string Digest(DxfDocument document) => DigestRecord(document).First(1);
}
