using System.Globalization;
using DetailGen.Library.Reports;
using DetailGen.Library.Tests.Laws;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>What range allows can be checked and drawn; what it excludes cannot be had.</summary>
public class RangingTests
{
    private const int ValuesPerPreset = 12;

    public static TheoryData<string> Shipped =>
        [.. Directory.GetFiles(Path.Combine(Repository.Root, "presets", "details"), "tern-court-*.yaml").Select(Path.GetFileNameWithoutExtension).OfType<string>()
            .Where(name => name != "tern-court-impossible").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Whatever_range_allows_checks_with_status_0(string name)
    {
        var ranges = Range(name).Ranges;
        var random = new Random(name.Length + name[^1]);
        var keys = ranges.Keys.ToArray();
        for (var i = 0; i < ValuesPerPreset; i++)
        {
            var key = keys[random.Next(keys.Length)];
            var text = Any(ranges[key], random);
            var report = DetailLibrary.Check(new([File(name)], [$"{key}={text}"]));
            Assert.True(report.Status == 0, $"{key}={text}: {string.Join("; ", report.Details[0].Errors?.Select(error => error.Reason) ?? report.Details[0].Conflict?.Members.Select(member => member.Text) ?? ["a check fails"])}");
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void One_step_beyond_an_end_cannot_be_had(string name)
    {
        var ranges = Range(name).Ranges.Where(range => range.Value.Step is not null).ToArray();
        var random = new Random(name.Length * 31 + name[^1]);
        for (var i = 0; i < ValuesPerPreset; i++)
        {
            var (key, range) = ranges[random.Next(ranges.Length)];
            foreach (var beyond in (decimal[])[(decimal)range.Min!.Value - (decimal)range.Step!.Value, (decimal)range.Max!.Value + (decimal)range.Step.Value])
            {
                var report = DetailLibrary.Check(new([File(name)], [$"{key}={Written(range, beyond)}"]));
                Assert.True(report.Status is 1 or 2, $"{key}={Written(range, beyond)} can be had.");
                Assert.True(report.Details[0].Conflict is { Members.Count: > 0 } || report.Details[0].Errors is { Count: > 0 }, $"{key}={Written(range, beyond)} is refused without a reason.");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void A_word_that_range_excludes_cannot_be_had(string name)
    {
        foreach (var (key, range) in Range(name).Ranges)
        {
            foreach (var (word, stops) in range.Excluded ?? [])
            {
                Assert.NotEmpty(stops);
                Assert.NotEqual(0, DetailLibrary.Check(new([File(name)], [$"{key}={word}"])).Status);
            }
        }
    }

    /// <summary>Settling the ties of this one without its wishes costs more than the budget; finding some sizes does not.</summary>
    [Fact]
    public void A_detail_that_can_be_solved_has_ranges() => Scratch.Folder(folder =>
    {
        const string text = """
            detail: metal-coping
            junction: parapet
            wall: cavity-masonry
            roof: warm-timber-deck
            rules: [uk]
            building: { roof-access: accessible }
            set:
              wall.lining: wet-plaster
              membrane.fixing: loose
              roof.finish: paving
              roof.fall-towards: wall
              tray.discharge: outside
              coping.kind: metal
              coping.fall-to: outside
              roof.membrane-layers: 2
              tie.length: 450 mm
              upstand.height: 498.5 mm
              vcl.return: 495.5 mm
              flashing.clip-centres: 550 mm
            materials: { roof.membrane: bitumen-pure }
            """;
        var path = Path.Combine(folder, "metal-coping.yaml");
        System.IO.File.WriteAllText(path, text);
        Assert.Equal(0, DetailLibrary.Check(new([path], [])).Status);
        var report = DetailLibrary.Range(new(path, [], []));
        Assert.Equal(0, report.Status);
        Assert.True(report.Ranges["coping.overhang"].Proven);
        Assert.Contains("flashing", report.Ranges["upstand.top"].Options!);
        var excluded = Assert.Single(report.Ranges["upstand.top"].Against!);
        Assert.Equal(("coping", "given.flashing.clip-centres"), (excluded.Key, Assert.Single(excluded.Value).Id));
    });

    [Fact]
    public void A_key_that_is_set_is_answered_as_if_it_were_not()
    {
        var report = DetailLibrary.Range(new(File("tern-court-parapet-01"), [], ["wall.cavity"]));
        var range = Assert.Single(report.Ranges).Value;
        Assert.Equal("150 mm", range.Given);
        Assert.True(range.Min!.Value < 150 && range.Max!.Value > 150);
        Assert.DoesNotContain("wall.cavity", Range("tern-court-parapet-01").Ranges.Keys);
    }

    [Fact]
    public void A_key_that_is_not_there_is_an_input_error_with_the_nearest_name()
    {
        var report = DetailLibrary.Range(new(File("tern-court-parapet-01"), [], ["wall.cavty"]));
        Assert.Equal(2, report.Status);
        Assert.Contains("wall.cavity", Assert.Single(report.Errors!).Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_detail_that_contradicts_itself_has_a_conflict_in_place_of_ranges()
    {
        var report = Range("tern-court-impossible");
        Assert.Equal(1, report.Status);
        Assert.Empty(report.Ranges);
        Assert.NotEmpty(report.Conflict!.Members);
    }

    private static string Any(ValueRangeReport range, Random random)
    {
        if (range.Options is { } options)
        {
            return options[random.Next(options.Count)];
        }

        var piece = range.Values![random.Next(range.Values.Count)];
        var steps = range.Step is { } step ? (long)Math.Round((piece[1] - piece[0]) / step) : 0;
        var value = (decimal)piece[0] + ((decimal)(range.Step ?? 0) * random.NextInt64(steps + 1));
        return Written(range, value);
    }

    private static string Written(ValueRangeReport range, decimal value)
    {
        var text = value.ToString("0.###", CultureInfo.InvariantCulture);
        return range.Unit switch { "mm" => $"{text} mm", "1:n" => $"1:{text}", _ => text };
    }

    private static RangeReport Range(string name) => DetailLibrary.Range(new(File(name), [], []));

    private static string File(string name) => Path.Combine(Repository.Root, "presets", "details", name + ".yaml");
}
