using DetailGen.Details.Climates;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Tests.Climates;

public class ClimateLibraryTests
{
    private const string Rest = "  origin: measured\n  source: { document: Our own, confidence: memory }\n";

    [Fact]
    public void Shipped_climates_have_no_faults()
    {
        Assert.All(Shelf.Shipped.Under("presets/climates/"), file => Assert.Empty(ClimateLibrary.ListFaults(file.Read().Root!)));
        Assert.Equal(["tern-court-inland", "tern-court-maritime"], ClimateLibrary.Load().Ids);
        Assert.All(ClimateLibrary.Load().All, climate => Assert.Equal(12, climate.Months.Count));
    }

    // No climate at hand has a source with both temperature and humidity, so every nation has the invented one.
    [Fact]
    public void Every_nation_has_a_usual_climate_and_it_says_that_it_is_invented() =>
        Assert.All(PresetShape.Nations, nation => Assert.Equal("invented", ClimateLibrary.Load().UsualFor(nation)!.Origin));

    [Fact]
    public void A_missing_month_is_told_with_its_place() => Assert.Equal(
        [Messages.MissingKey(new("test.yaml", 4, 5), "may", "months")], Faults(Climate(month => month == "may" ? null : "{ temperature: 5, humidity: 0.8 }")));

    [Fact]
    public void A_month_without_humidity_or_with_two_is_told()
    {
        Assert.Equal(["bad-parameter"], Codes(Climate(month => month == "jan" ? "{ temperature: 5 }" : "{ temperature: 5, humidity: 0.8 }")));
        Assert.Equal(["bad-parameter"], Codes(Climate(month => month == "jan" ? "{ temperature: 5, humidity: 0.8, vapour-pressure: 700 }" : "{ temperature: 5, humidity: 0.8 }")));
    }

    [Theory]
    [InlineData("{ temperature: 5, humidity: 87 }", "out-of-domain")] // a percentage
    [InlineData("{ temperature: warm, humidity: 0.8 }", "no-number")]
    [InlineData("{ temperature: 5, humidty: 0.8 }", "unknown-key")]
    [InlineData("{ humidity: 0.8 }", "missing-key")]
    [InlineData("{ temperature: .nan, humidity: 0.8 }", "no-number")]
    public void A_bad_month_is_told(string month, string code) => Assert.Contains(code, Codes(Climate(name => name == "jul" ? month : "{ temperature: 5, humidity: 0.8 }")));

    [Fact]
    public void A_practice_adds_climates_and_its_own_is_the_usual_one()
    {
        var folder = Directory.CreateTempSubdirectory("detailgen-shelf-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "climates"));
            File.WriteAllText(Path.Combine(folder, "climates", "z.yaml"), Climate(_ => "{ temperature: 5, vapour-pressure: 700 }") + "  usual-for: [wales]\n");
            var climates = ClimateLibrary.Load(Shelf.Shipped.With(folder).Value);
            Assert.Empty(climates.Faults);
            Assert.Equal(("z-own", "tern-court-maritime"), (climates.UsualFor("wales")!.Id, climates.UsualFor("england")!.Id));
            Assert.Equal((5, null, 700.0), (climates.Find("z-own")!.Months[0].Temperature, climates.Find("z-own")!.Months[0].Humidity, climates.Find("z-own")!.Months[0].VapourPressure!.Value));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Climate(Func<string, string?> month) => "- id: z-own\n  title: Ours\n  months:\n"
        + string.Concat(ClimateShape.Months.Select(name => month(name) is { } text ? $"    {name}: {text}\n" : "")) + Rest;

    private static IReadOnlyList<Diagnostic> Faults(string yaml) => ClimateLibrary.ListFaults(NodeReader.Text(yaml, "test.yaml", ReadingLimits.Usual).Root!);

    private static IEnumerable<string> Codes(string yaml) => Faults(yaml).Select(fault => fault.Code);
}
