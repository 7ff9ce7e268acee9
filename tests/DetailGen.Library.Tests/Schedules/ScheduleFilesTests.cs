using System.IO.Compression;
using System.Text;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Schedules;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Schedules;

public class ScheduleFilesTests
{
    private static readonly IReadOnlyList<ScheduleBlock> Stacks =
    [
        new("wall", [new("W1", "Outer leaf", "Brick, \"old\" bond", "102.5", "0.770", "0.133", "rain screen, structure", "tabulated"), new("", "Sum", "", "102.5", "–", "0.303", "", "", true)]),
    ];

    [Fact]
    public void A_cell_with_a_comma_or_a_quote_is_quoted()
    {
        var lines = Encoding.UTF8.GetString(CsvSchedule.Write(Stacks)).Split("\r\n");
        Assert.Equal("Stack,Ref,Element,Material,Thickness mm,Lambda W/mK,R m²K/W,Function,Source or remark", lines[0]);
        Assert.Equal("wall,W1,Outer leaf,\"Brick, \"\"old\"\" bond\",102.5,0.770,0.133,\"rain screen, structure\",tabulated", lines[1]);
        Assert.Equal(4, lines.Length);
        Assert.Equal("", lines[3]);
    }

    [Fact]
    public void A_spreadsheet_is_the_same_bytes_each_time_and_carries_no_clock_time()
    {
        var first = SpreadsheetSchedule.Write(Stacks);
        Thread.Sleep(2100); // longer than the two seconds that a zip entry tells apart
        Assert.Equal(first, SpreadsheetSchedule.Write(Stacks));
        using var zip = new ZipArchive(new MemoryStream(first));
        Assert.All(zip.Entries, entry => Assert.Equal(1980, entry.LastWriteTime.Year));
    }

    [Fact]
    public void Numbers_in_the_spreadsheet_are_numbers()
    {
        using var zip = new ZipArchive(new MemoryStream(SpreadsheetSchedule.Write(Stacks)));
        using var reader = new StreamReader(zip.GetEntry("xl/worksheets/sheet1.xml")!.Open());
        Assert.Contains("<x:v>102.5</x:v>", reader.ReadToEnd().Replace("<v>", "<x:v>", StringComparison.Ordinal).Replace("</v>", "</x:v>", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    // A schedule of 528 mm stood beside a chain of 510.5 mm at the break of the roof, and said of the screed alone where it is so thick.
    [Theory]
    [InlineData("parapet-01", "roof.joists=along")]
    [InlineData("abutment-01", "roof.joists=across")]
    [InlineData("parapet-04", "roof.screed-bond=bonded")]
    public void What_takes_up_the_fall_is_told_with_the_place_where_it_is_so_thick(string name, string set)
    {
        var office = Office.Of(null).Value;
        var worked = DetailWork.Do(PresetFiles.Read(Repository.Path("presets", "details", $"tern-court-{name}.yaml"), [set], office).Value, office).Worked!;
        var tapers = worked.Buildups[1].Layers.Single(layer => layer.Layer.Tapers).Layer.Reference;
        Assert.EndsWith("; at upstand", ScheduleTable.Of(worked.Buildups)[1].Rows.Single(row => row.Reference == tapers).Remark, StringComparison.Ordinal);
        var told = MoistureSentences.Steps(MoistureWork.Of(worked.Preset, worked.Section, MoistureWork.ClimateOf(worked.Preset, office.Context.Climates)!).Buildups, betweenRooms: false);
        Assert.Single(told, step => step.StartsWith($"In the roof {tapers} ", StringComparison.Ordinal) && step.EndsWith(" at the upstand.", StringComparison.Ordinal));
    }

    // EN ISO 6946:2017, 6.5.2: two significant figures (read in a secondary text).
    [Theory]
    [InlineData(0.1499, "0.15")]
    [InlineData(0.0987, "0.099")]
    [InlineData(0.0998, "0.10")]
    [InlineData(0.998, "1.0")]
    [InlineData(1.26, "1.3")]
    [InlineData(0.16, "0.16")]
    public void A_u_value_is_reported_to_two_significant_figures(double value, string text) => Assert.Equal(text, ScheduleTable.UValue(value));
}
