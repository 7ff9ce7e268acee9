using System.Globalization;
using DetailGen.Details.Climates;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Climates;

public class ClimateLibraryTests
{
    private const string Rest = "  origin: measured\n  source: { document: Our own, confidence: memory }\n";

    [Fact]
    public void Shipped_climates_have_no_faults()
    {
        Assert.All(Shelf.Shipped.Under("presets/climates/"), file => Assert.Empty(ClimateLibrary.ListFaults(file.Read().Root!)));
        Assert.Equal(["saxmundham", "tern-court-inland", "tern-court-maritime"], ClimateLibrary.Load().Ids);
        Assert.All(ClimateLibrary.Load().All, climate => Assert.Equal(12, climate.Months.Count));
    }

    /// <summary>The mean of 18 years of the published monthly table, whose rows with both columns stand beside this test: temperatures as they are, dew points as the pressure that saturates
    /// air over water at them (the Magnus form of ISO 13788 as remembered).</summary>
    [Fact]
    public void The_measured_climate_is_the_mean_of_the_published_months()
    {
        var rows = File.ReadLines(Repository.Path("tests", "DetailGen.Details.Tests", "Climates", "saxmundham.csv")).Where(line => line[0] != '#').Select(line => line.Split(',')).ToArray();
        var climate = ClimateLibrary.Load().Find("saxmundham")!;
        for (var month = 0; month < 12; month++)
        {
            var years = rows.Where(row => row[1] == ClimateShape.Months[month]).ToArray();
            Assert.Equal(18, years.Length);
            Assert.Equal(years.Average(row => Number(row[2])), climate.Months[month].Temperature, 0.0501);
            Assert.Equal(years.Average(row => 610.5 * Math.Exp(17.269 * Number(row[3]) / (237.3 + Number(row[3])))), climate.Months[month].VapourPressure!.Value, 0.501);
        }

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    // The measured climate is of one place, so every nation has an invented one until a practice says otherwise.
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
