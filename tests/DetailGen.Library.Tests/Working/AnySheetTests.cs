using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using CsCheck;
using DetailGen.Details;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>Sheets of details of any kind, choice and size, on any paper at any scale, as a reviewer measures them.</summary>
public class AnySheetTests
{
    private const int InTheSuite = 200; // a sheet takes about half a second; scripts/soak draws as many as it is told
    private const double Detailed = 10;
    private static readonly string[] Sound = [AuditKinds.TextOverText, AuditKinds.LeaderThrough, AuditKinds.TipOffPart, AuditKinds.LeaderTooLong];
    private static readonly string[] Papers = ["A4", "A3", "A2", "A1", "ANSI-A", "ANSI-B", "ANSI-C", "ANSI-D"];
    private static readonly string[] Scales = ["1:5", "1:10", "1:20", "1:50"];

    /// <summary>
    /// Wanted is none on any sheet. Measured: 8 of 283 sheets have one, most of them at 1:20 and 1:50: white of 0.03 to 0.3 mm where 0.35 is wanted, once a size on
    /// the leader of a stack note. What must never come back at the scales of details is held here.
    /// </summary>
    private const double MostWithFaults = 0.05;

    private const int ReducedInTheSuite = 30;

    /// <summary>Measured: 10 of 78 sheets have one: six times the last line of a check list, 0.08 mm beyond its zone, four times a figure with 0.30 mm of white where 0.35 is wanted.</summary>
    private const double MostReducedWithFaults = 0.2;

    [Fact]
    public void At_the_scales_of_details_no_text_lies_on_another_and_every_leader_is_sound_and_most_sheets_have_no_fault_at_all()
    {
        var drawn = Drawn(InTheSuite, reducedPrint: false, "A_sheet_of_any_detail_has_no_fault_of_layout");
        Assert.True(drawn.Unsound == 0 && drawn.Faulty <= MostWithFaults * drawn.Sheets, drawn.Told);
    }

    [Fact]
    public void Sheets_for_reduced_print_are_as_sound_and_most_have_no_fault_either()
    {
        var drawn = Drawn(ReducedInTheSuite, reducedPrint: true, "A_sheet_of_any_detail_for_reduced_print");
        Assert.True(drawn.Unsound == 0 && drawn.Faulty <= MostReducedWithFaults * drawn.Sheets, drawn.Told);
    }

    private static (int Sheets, int Faulty, int Unsound, string Told) Drawn(int cases, bool reducedPrint, string test)
    {
        var office = Office.Of(null).Value;
        var told = new ConcurrentBag<string>();
        var (drawn, asked, faulty, unsound) = (0, 0, 0, 0);
        Gen.Int[0, int.MaxValue].Always(
            seed =>
            {
                Interlocked.Increment(ref asked);
                var text = Preset(office, new Random(seed));
                if (Composed(ref text, office, reducedPrint) is not { } sheet)
                {
                    return;
                }

                Interlocked.Increment(ref drawn);
                var faults = LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts);
                Interlocked.Add(ref faulty, faults.Count > 0 ? 1 : 0);
                Interlocked.Add(ref unsound, sheet.Scale <= Detailed && faults.Any(fault => Sound.Contains(fault.Kind)) ? 1 : 0);
                foreach (var fault in faults)
                {
                    told.Add(FormattableString.Invariant($"{fault.Kind} {fault.Amount} at {fault.At.X}, {fault.At.Y} of sheet {fault.Sheet}, {sheet.Paper} 1:{sheet.Scale}: {fault.First} | {fault.Second}\n  {text.ReplaceLineEndings("; ")}"));
                }
            },
            cases: cases, test: test);
        Assert.True(drawn > asked / 3, $"Only {drawn} of {asked} presets could be drawn.");
        return (drawn, faulty, unsound, $"{told.Count} faults on {faulty} of {drawn} sheets, {unsound} at the scales of details unsound:\n{string.Join('\n', told.Order(StringComparer.Ordinal).Take(400))}");
    }

    [Theory]
    [InlineData("junction: abutment\nwall: solid-masonry-insulated\nroof: warm-concrete-deck\nmirror: true\nset:\n  wall.insulation: 80 mm\n  roof.slab: 225 mm\n  upstand.height: 150 mm\nsheet: { paper: A2, scale: \"1:20\" }\n")]
    [InlineData("junction: parapet\nwall: cavity-masonry\nroof: warm-timber-deck\nmirror: true\nset:\n  roof.joist-depth: 245 mm\n  roof.finish: paving\n  roof.insulation: 300 mm\n  upstand.height: 250 mm\nsheet: { paper: A2, scale: \"1:20\" }\n")]
    public void A_line_that_leads_to_a_level_strikes_through_no_figure(string text)
    {
        text = "detail: levels\n" + text;
        Assert.DoesNotContain(Composed(ref text, Office.Of(null).Value)!.Warnings, warning => warning.Contains("lies on a line of level", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("A3", "1:10", 2)]
    [InlineData("A2", "1:5", 2)]
    [InlineData("A4", "1:20", null)]
    public void A_coping_that_falls_both_ways_has_both_arrows_or_none(string paper, string scale, int? arrows)
    {
        foreach (var wall in (string[])["cavity-masonry", "solid-masonry-insulated"])
        {
            var text = $"detail: any\njunction: parapet\nwall: {wall}\nroof: warm-timber-deck\nset: {{ coping.kind: stone, coping.fall-to: both }}\nsheet: {{ paper: {paper}, scale: \"{scale}\" }}\n";
            var drawn = Composed(ref text, Office.Of(null).Value)!.Scene.Views[0].Items.OfType<Group>().Where(group => group.Name == "fall coping.fall").ToArray();
            Assert.Contains(drawn.Length, arrows is { } count ? [count] : (int[])[0, 2]);

            // Each over its own slope.
            var middles = Array.ConvertAll(drawn, group => group.Items.OfType<Stroke>().Average(stroke => stroke.Points.Average(point => point.X)));
            Assert.True(middles.Length < 2 || Math.Abs(middles[0] - middles[1]) > 6);
        }
    }

    [Fact]
    public void Clearances_of_drips_stand_under_a_coping_that_is_too_thick_to_have_them_above()
    {
        var text = "detail: any\njunction: parapet\nwall: solid-masonry-insulated\nroof: warm-timber-deck\nset:\n  wall.lining: wet-plaster\n  roof.joists: along\n  roof.finish: ballast\n  roof.insulation: 180 mm\n  roof.insulation-layers: 2\n  roof.fall: 1:60\n  coping.kind: concrete\n  parapet.height: 1100 mm\nsheet: { paper: A2, scale: \"1:5\" }\n";
        Assert.DoesNotContain(Composed(ref text, Office.Of(null).Value)!.Warnings, warning => warning.Contains("drip-clearance", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sheet_that_leaves_a_note_without_any_mark_gives_way_to_a_larger_one_at_the_same_scale()
    {
        var text = "detail: any\njunction: abutment\nwall: cavity-masonry\nroof: warm-concrete-deck\nset:\n  wall.lining: wet-plaster\n  wall.cavity: 100 mm\n  roof.slab: 150 mm\n  roof.fall-towards: wall\n  upstand.fillet: 50 mm\nsheet: { paper: A4, scale: \"1:20\" }\n";
        var sheet = Composed(ref text, Office.Of(null).Value)!;
        Assert.Equal("A3", sheet.Paper);
        Assert.Equal(20, sheet.Scale);
        Assert.DoesNotContain(sheet.Warnings, warning => warning.Contains("found no place", StringComparison.Ordinal));
        Assert.Contains(sheet.Warnings, warning => warning.StartsWith("A4 at 1:20 does not hold", StringComparison.Ordinal));
    }

    private static ComposedSheet? Composed(ref string text, Office office, bool reducedPrint = false)
    {
        var read = Read(text, office);
        while (!read.IsGood && Without(text, read.Faults) is { } less)
        {
            (text, read) = (less, Read(less, office));
        }

        if (!read.IsGood || DetailWork.Do(read.Value, office).Worked is not { } worked)
        {
            return null;
        }

        return SheetComposer.Compose(
            worked.Section, SheetWords.Of(worked.Solved, worked.Buildups, worked.Checks), SheetSetup.Asked(worked.Preset, viewOnly: false),
            SheetSetup.Formats(office.Sheets, reducedPrint), SheetSetup.Layers(office.Sheets), new("", "", "", "", "", null, ""));
    }

    private static Outcome<Preset> Read(string text, Office office) =>
        PresetReader.ReadText(text, "any.yaml", [], office.Context).SelectMany(preset => DetailSolver.Check(preset, office.Catalogue));

    /// <summary>Without the lines of set and prefer that are no keys of this detail as it was chosen; null where nothing can be left out.</summary>
    private static string? Without(string text, IReadOnlyList<Diagnostic> faults)
    {
        var lines = text.Split('\n');
        var kept = lines.Where((line, i) => !line.StartsWith("  ", StringComparison.Ordinal) || faults.All(fault => fault.At.Line != i + 1)).ToList();
        if (kept.Count == lines.Length)
        {
            return null;
        }

        kept.RemoveAll(line => line.EndsWith(':') && (kept.IndexOf(line) + 1 == kept.Count || !kept[kept.IndexOf(line) + 1].StartsWith("  ", StringComparison.Ordinal)));
        return string.Join('\n', kept);
    }

    /// <summary>Any pairing, any choices, wishes for a fifth of the sizes, on any sheet or none in particular.</summary>
    private static string Preset(Office office, Random random)
    {
        var components = office.Context.Components;
        Component[] taken = [.. new[] { ComponentKind.Junction, ComponentKind.Wall, ComponentKind.Roof }.Select(kind => components.Find(kind, Any(components.Ids(kind)))!.Value)];
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"detail: any\njunction: {taken[0].Id}\nwall: {taken[1].Id}\nroof: {taken[2].Id}\nmirror: {(random.Next(2) == 0 ? "true" : "false")}\n");
        if (random.Next(4) > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"sheet: {{ paper: {Any(Papers)}{(random.Next(2) == 0 ? $", scale: \"{Any(Scales)}\"" : "")}, inset: {(random.Next(2) == 0 ? "auto" : "none")} }}\n");
        }

        if (random.Next(2) == 0)
        {
            text.Append("levels: { finished-roof: 48.300 m }\n");
        }

        var (set, prefer) = (new List<string>(), new List<string>());
        foreach (var parameter in taken.SelectMany(component => component.Parameters))
        {
            if (parameter.Unit == Unit.Choice)
            {
                if (random.Next(4) == 0)
                {
                    set.Add($"{parameter.Key}: {Any(parameter.Options)}");
                }
            }
            else if (random.Next(5) == 0)
            {
                var domain = parameter.Domain!;
                var number = domain.From + (random.NextInt64(0, ((domain.To - domain.From) / domain.Step) + 1) * domain.Step);
                prefer.Add(parameter.Unit switch
                {
                    Unit.Length => FormattableString.Invariant($"{parameter.Key}: {number / 1000m:0.###} mm"),
                    Unit.Ratio => FormattableString.Invariant($"{parameter.Key}: \"1:{number}\""),
                    _ => FormattableString.Invariant($"{parameter.Key}: {number}"),
                });
            }
        }

        Section("set", set);
        Section("prefer", prefer);
        return text.ToString();

        string Any(IReadOnlyList<string> words) => words[random.Next(words.Count)];

        void Section(string name, List<string> lines)
        {
            if (lines.Count > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"{name}:\n{string.Concat(lines.Select(line => $"  {line}\n"))}");
            }
        }
    }
}
