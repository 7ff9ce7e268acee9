using System.Globalization;

namespace DetailGen.Dxf.Tests.Writing;

public sealed class HandleTests
{
    private static readonly string[] WithoutHandle = ["SECTION", "ENDSEC", "CLASS", "ENDTAB", "EOF"];
    private static readonly TagFile File = new(SampleDrawing.Bytes(SampleDrawing.Document()));

    [Fact]
    public void Every_record_has_a_handle_of_its_own_in_the_order_of_writing()
    {
        var handles = File.Records.Where(record => !WithoutHandle.Contains(record.Kind)).Select(record => Parsed(record.Handle!)).ToArray();

        Assert.Equal(Enumerable.Range(0x100, handles.Length), handles);
    }

    [Fact]
    public void Every_pointer_leads_to_a_record()
    {
        var known = File.Records.Select(record => record.Handle).OfType<string>().Append("0").ToHashSet(StringComparer.Ordinal);
        foreach (var record in File.Records)
        {
            foreach (var (code, value) in record.Tags.Where(tag => tag.Code is (>= 320 and <= 369) or (>= 390 and <= 399)))
            {
                Assert.True(known.Contains(value), $"{record.Kind} {record.Handle}: group {code} leads to {value}");
            }
        }
    }

    [Fact]
    public void The_seed_is_one_above_the_highest() =>
        Assert.Equal(File.Records.Where(record => record.Kind != "SECTION").Max(record => record.Handle is { } handle ? Parsed(handle) : 0) + 1, Parsed(File.Header("$HANDSEED")));

    [Fact]
    public void What_lies_on_the_second_sheet_is_owned_by_its_own_record()
    {
        var record = File.Of("BLOCK_RECORD").Single(row => row.First(2) == "*Paper_Space0");
        var title = File.Of("TEXT").Single(text => text.First(1) == "SCHEDULE OF LAYERS");

        Assert.Equal(record.Handle, title.First(330));
        Assert.Equal("1", title.First(67));
    }

    [Fact]
    public void Layouts_and_their_records_point_at_each_other()
    {
        foreach (var layout in File.Of("LAYOUT"))
        {
            var record = File.Of("BLOCK_RECORD").Single(row => row.Handle == layout.All(330).Last());
            Assert.Equal(layout.Handle, record.First(340));
        }
    }

    [Fact]
    public void A_group_holds_the_entities_that_name_it()
    {
        var kinds = File.Records.Where(record => record.Handle is not null).ToDictionary(record => record.Handle!, record => record.Kind);
        var groups = File.Of("GROUP").ToDictionary(group => group.First(300), group => group.All(340).Select(handle => kinds[handle]).ToArray());

        Assert.Equal(["HATCH", "LWPOLYLINE", "CIRCLE"], groups["DECK"]);
        Assert.Equal(["LWPOLYLINE", "SOLID", "MTEXT"], groups["NOTE-1"]);
    }

    [Fact]
    public void An_insert_is_followed_by_its_fields_in_the_order_of_the_block()
    {
        var at = File.Records.FindIndex(record => record.Kind == "INSERT");
        var (insert, fields) = (File.Records[at], File.Records.Skip(at + 1).Take(3).ToArray());

        Assert.Equal(["TITLE", "NUMBER", "STATUS"], fields.Select(field => field.First(2)));
        Assert.Equal(["Parapet, cavity wall", "TC-DET-0101", ""], fields.Select(field => field.First(1)));
        Assert.All(fields, field => Assert.Equal(insert.Handle, field.First(330)));
        Assert.Equal("SEQEND", File.Records[at + 4].Kind);
    }

    private static int Parsed(string handle) => int.Parse(handle, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
}
