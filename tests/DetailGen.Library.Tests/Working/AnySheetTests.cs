using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using CsCheck;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Solving;
using DetailGen.Drawing.Auditing;
using DetailGen.Drawing.Sheets;
using DetailGen.Library.Wording;
using DetailGen.Library.Working;
using DetailGen.Testing;

namespace DetailGen.Library.Tests.Working;

/// <summary>Sheets of details of any kind, choice and size, on any paper at any scale, as a reviewer measures them.</summary>
public class AnySheetTests
{
    private const int InTheSuite = 60; // a sheet takes about half a second; scripts/soak draws as many as it is told
    private static readonly string[] Papers = ["A4", "A3", "A2", "A1"];
    private static readonly string[] Scales = ["1:5", "1:10", "1:20", "1:50"];

    [Fact]
    public void A_sheet_of_any_detail_has_no_fault_of_layout()
    {
        var office = Office.Of(null).Value;
        var told = new ConcurrentBag<string>();
        var (drawn, asked) = (0, 0);
        Gen.Int[0, int.MaxValue].Always(
            seed =>
            {
                Interlocked.Increment(ref asked);
                var text = Preset(office, new Random(seed));
                if (Composed(text, office) is not { } sheet)
                {
                    return;
                }

                Interlocked.Increment(ref drawn);
                foreach (var fault in LayoutAudit.Of(sheet.Scene, sheet.Format, sheet.Parts))
                {
                    told.Add(FormattableString.Invariant($"{fault.Kind} {fault.Amount} at {fault.At.X}, {fault.At.Y} of sheet {fault.Sheet}, {sheet.Paper} 1:{sheet.Scale}: {fault.First} | {fault.Second}\n  {text.ReplaceLineEndings("; ")}"));
                }
            },
            cases: InTheSuite);
        Assert.True(told.IsEmpty, $"{told.Count} faults on {drawn} sheets:\n{string.Join('\n', told.Order(StringComparer.Ordinal).Take(400))}");
        Assert.True(drawn > asked / 3, $"Only {drawn} of {asked} presets could be drawn.");
    }

    private static ComposedSheet? Composed(string text, Office office)
    {
        var read = PresetReader.ReadText(text, "any.yaml", [], office.Context).SelectMany(preset => DetailSolver.Check(preset, office.Catalogue));
        if (!read.IsGood || DetailWork.Do(read.Value, office).Worked is not { } worked)
        {
            return null;
        }

        return SheetComposer.Compose(
            worked.Section, SheetWords.Of(worked.Solved, worked.Buildups, worked.Checks), SheetSetup.Asked(worked.Preset, viewOnly: false),
            SheetSetup.Formats(office.Sheets), SheetSetup.Layers(office.Sheets), new("", "", "", "", "", null, ""));
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
            text.Append(CultureInfo.InvariantCulture, $"sheet: {{ paper: {Any(Papers)}{(random.Next(2) == 0 ? $", scale: \"{Any(Scales)}\"" : "")} }}\n");
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
                text.Append(CultureInfo.InvariantCulture, $"{name}: {{ {string.Join(", ", lines)} }}\n");
            }
        }
    }
}
