using System.Globalization;
using CsCheck;
using DetailGen.Details.Presets;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Presets;

public class PresetReaderTests
{
    private const string Least = "detail: d\njunction: parapet\nwall: plain-wall\nroof: plain-roof\n";

    private static Outcome<Preset> Read(string text, params string[] overrides) => PresetReader.ReadText(text, "p.yaml", overrides, SmallComponents.Context);

    private static Preset Good(string text, params string[] overrides)
    {
        var read = Read(text, overrides);
        Assert.Empty(read.Faults.Select(fault => $"{fault.At}: {fault.Reason}"));
        return read.Value;
    }

    private static Diagnostic OnlyFault(string text, params string[] overrides) => Assert.Single(Read(Least + text, overrides).Faults);

    [Fact]
    public void Four_lines_are_enough()
    {
        var preset = Good(Least);
        Assert.Equal("parapet, cavity wall, warm roof", preset.Title);
        Assert.Equal(["england", "moderate", "dwelling", "new", "maintenance"], preset.Conditions.Select(condition => condition.Word));
        Assert.Equal("brick-outer", Assert.Single(preset.Slots).Material.Id);
        Assert.Equal("uk", Assert.Single(preset.Rules).Name);
        Assert.Equal(("mould", false), (preset.FrsiFilm, preset.Mirror));
    }

    [Fact]
    public void All_keys_are_read()
    {
        var preset = Good(Least + """
            title: Parapet, tall
            site: { nation: wales, exposure: severe }
            building: { use: school }
            set: { wall.cavity: 150 mm, roof.fall: 1.5°, wall.fill: partial }
            prefer: { coping.overhang: 0.07 m, wall.cavity: 100 mm }
            target: { roof.u-value: 0.15, wall.u-value: 0.18 W/m²K, junction.frsi: 0.75, junction.psi: -0.05 }
            materials: { wall.outer-leaf: brick-engineering }
            rules: [uk, own]
            waive: { upstand-min: { reason: Threshold, by: EF, reference: L1 } }
            levels: { finished-roof: 48.300 m }
            sheet: { paper: A2, scale: 1:5, line-group: copy, reduced-print: true, trim-marks: false, status-edition: 2018, plot: colour }
            title-block: { owner: Tern Court Drawing Office, number: TC-DET-0101, revision: P02.03, status: S0, date: 2026-11-25 }
            revisions: [ { rev: P01, date: 2026-11-25, text: First issue } ]
            mirror: true
            frsi-film: heat-flow
            """);
        Assert.Equal([("wall.cavity", "150 mm"), ("roof.fall", "1:38"), ("wall.fill", "partial")], preset.Set.Select(given => (given.Key, given.Value.ToString())));
        Assert.Equal([("coping.overhang", "70 mm")], preset.Prefer.Select(given => (given.Key, given.Value.ToString()))); // set beats prefer
        Assert.Equal([0.15m, 0.18m, 0.75m, -0.05m], preset.Targets.Select(target => target.Value));
        Assert.Equal("brick-engineering", preset.Slots[0].Material.Id);
        Assert.Equal(["uk", "own"], preset.Rules.Select(pack => pack.Name));
        Assert.Equal(new("upstand-min", "Threshold", "EF", "L1", new("p.yaml", 13, 10)), Assert.Single(preset.Waivers));
        Assert.Equal(new Length(48_300_000), Assert.Single(preset.Levels).Height);
        Assert.Equal(("A2", 5), (preset.Sheet.Paper, preset.Sheet.Scale));
        Assert.Equal(["line-group=copy", "reduced-print=true", "trim-marks=false", "status-edition=2018", "plot=colour"], preset.Sheet.Options.Select(option => $"{option.Key}={option.Value}"));
        Assert.Equal(("TC-DET-0101", "P02.03", "S0"), (preset.TitleBlock.Number, preset.TitleBlock.Revision, preset.TitleBlock.Status));
        Assert.Equal(new DateOnly(2026, 11, 25), Assert.Single(preset.Revisions).Date);
        Assert.Equal(("heat-flow", true), (preset.FrsiFilm, preset.Mirror));
        Assert.Equal(("wales", "severe", "school"), (preset.Conditions[0].Word, preset.Conditions[1].Word, preset.Conditions[2].Word));
    }

    [Theory]
    [InlineData("sett: {}", "unknown-key", 5, 1, "Did you mean set?")]
    [InlineData("set: { wall.cavty: 150 mm }", "unknown-key", 5, 8, "Did you mean wall.cavity?")]
    [InlineData("set: { cavity: 150 mm }", "unknown-key", 5, 8, "Did you mean wall.cavity?")]
    [InlineData("set: { wall.cavity: 150 }", "missing-unit", 5, 21, "Write 150 mm.")]
    [InlineData("set: { wall.cavity: 0.15 W/m²K }", "wrong-unit", 5, 21, "Write it like 150 mm or 0.15 m.")]
    [InlineData("set: { wall.cavity: 500 mm }", "out-of-domain", 5, 21, "Try 300 mm, the most there is.")]
    [InlineData("set: { wall.cavity: 1 mm }", "out-of-domain", 5, 21, "Try 50 mm, the least there is.")]
    [InlineData("set: { wall.cavity: 152 mm }", "off-step", 5, 21, "Try 150 mm or 155 mm.")]
    [InlineData("set: { roof.fall: 1:10 }", "out-of-domain", 5, 19, "Try 1:20, the least there is.")]
    [InlineData("set: { wall.fill: partly }", "unknown-choice", 5, 19, "Write one of these.")]
    [InlineData("set: { wall.thickness: 300 mm }", "derived-key", 5, 8, null)]
    [InlineData("set: { flashing.lap: 50 mm }", "key-not-here", 5, 8, null)]
    [InlineData("set: { wall.cavity: [1] }", "wrong-type", 5, 21, null)]
    [InlineData("set: [1]", "wrong-type", 5, 6, null)]
    [InlineData("set: { wall.cavity: }", "no-value", 5, 21, null)]
    [InlineData("materials: { wall.outer-leaf: brik-outer }", "unknown-material", 5, 31, "Did you mean brick-outer?")]
    [InlineData("materials: { wall.outer-leaf: brick }", "unknown-material", 5, 31, "Did you mean brick-inner?")]
    [InlineData("materials: { wall.outer-leaf: outer }", "unknown-material", 5, 31, "Did you mean brick-outer?")]
    [InlineData("materials: { wall.outer-leaf: pir-foil }", "wrong-material", 5, 31, null)]
    [InlineData("materials: { wall.outer-laef: brick-outer }", "unknown-key", 5, 14, "Did you mean wall.outer-leaf?")]
    [InlineData("site: { nation: englnd }", "unknown-choice", 5, 17, "Did you mean england?")]
    [InlineData("rules: [ukk]", "unknown-rules", 5, 9, "Did you mean uk?")]
    [InlineData("waive: { upstand-mim: { reason: x } }", "unknown-rule", 5, 10, "Did you mean upstand-min?")]
    [InlineData("waive: { upstand-min: { by: EF } }", "missing-key", 5, 23, null)]
    [InlineData("waive: { upstand-min: }", "missing-key", 5, 23, null)]
    [InlineData("levels: { finished-rof: 1 m }", "unknown-key", 5, 11, "Did you mean finished-roof?")]
    [InlineData("levels: { finished-roof: 48.3 }", "missing-unit", 5, 26, "Write 48.3 m.")]
    [InlineData("sheet: { scale: 1:8 }", "unknown-choice", 5, 17, null)]
    [InlineData("sheet: { paper: A0 }", "unknown-choice", 5, 17, null)]
    [InlineData("mirror: yes", "wrong-type", 5, 9, "Write true or false.")]
    [InlineData("title-block: { number: ../x }", "bad-text", 5, 24, null)]
    [InlineData("title-block: { number: \"x\\n\" }", "bad-text", 5, 24, null)]
    [InlineData("title-block: { date: 25.11.2026 }", "bad-date", 5, 22, "Write it like 2026-11-25.")]
    [InlineData("title-block: { date: 2026-02-30 }", "bad-date", 5, 22, "Write it like 2026-11-25.")]
    [InlineData("title-block: { revision: P01, status: A1 }", "revision-status", 5, 26, null)]
    [InlineData("title-block: { revision: C01, status: S2 }", "revision-status", 5, 26, null)]
    [InlineData("title-block: { revision: P01.01, status: S2 }", "revision-status", 5, 26, "Write P01, or status S0.")]
    [InlineData("title-block: { revision: 1 }", "bad-text", 5, 26, null)]
    [InlineData("revisions: [ { rev: P01, text: x } ]", "missing-key", 5, 14, null)]
    [InlineData("target: { roof.u-value: 0,15 }", "unknown-key", 5, 27, null)]
    [InlineData("target: { roof.u-value: \"0,15\" }", "decimal-comma", 5, 25, "Write 0.15 with a decimal point.")]
    [InlineData("target: { junction.frsi: high }", "no-number", 5, 26, "Write a number such as 0.75.")]
    [InlineData("target: { junction.frsi: 0.75 mm }", "wrong-unit", 5, 26, "Write a number such as 0.75.")]
    [InlineData("set: { roof.fall: \"40\" }", "missing-unit", 5, 19, "Write 1:40.")]
    [InlineData("set: { roof.fall: 0.025 }", "missing-unit", 5, 19, "Write it like 1:40, or 1.5°.")]
    [InlineData("materials: { wall.outer-leaf: zzzzzzzz }", "unknown-material", 5, 31, "The verb list materials shows what there is of each kind.")]
    [InlineData("zzzzzzzz: 1", "unknown-key", 5, 1, "The verb schema shows the keys of each kind of file.")]
    [InlineData("target: { roof.u-value: 15 }", "out-of-domain", 5, 25, null)]
    [InlineData("target: { junction.frsi: 1.2 }", "out-of-domain", 5, 26, null)]
    [InlineData("extends: none.yaml", "missing-base", 5, 10, null)]
    [InlineData("extends: p.yaml", "extends-cycle", 5, 10, null)]
    public void A_fault_is_told_with_its_place_and_what_to_write(string line, string code, int row, int column, string? hint)
    {
        var faults = Read(Least + line).Faults;
        var fault = faults[^1].Code == code ? faults[^1] : faults[0];
        Assert.Equal((code, new Mark("p.yaml", row, column)), (fault.Code, fault.At));
        Assert.NotNull(fault.Hint);
        Assert.True(hint is null || hint == fault.Hint, $"{fault.Hint} instead of {hint}");
    }

    [Fact]
    public void What_must_be_there_is_missed_all_at_once() =>
        Assert.Equal(["detail", "junction", "wall", "roof"], Read("title: x\n").Faults.Select(fault => fault.Key));

    [Fact]
    public void An_unknown_component_is_told_the_nearest()
    {
        var fault = Assert.Single(Read(Least.Replace("plain-wall", "plane-wall")).Faults);
        Assert.Equal(("unknown-wall", "Did you mean plain-wall?"), (fault.Code, fault.Hint));
    }

    [Fact]
    public void A_roof_is_no_wall() => Assert.Equal("unknown-wall", Assert.Single(Read(Least.Replace("plain-wall", "plain-roof")).Faults).Code);

    [Fact]
    public void All_faults_are_told_at_once_in_the_order_of_the_file()
    {
        var faults = Read("detail: d d\njunction: parapet\nwall: plain-wall\nroof: plain-roof\nset:\n  wall.cavity: 150\n  wall.fil: full\n  wall.cavity: 1 mm\nsit: {}\nmirror: 1\n", "roof.fall=1:1").Faults;
        Assert.Equal(["1:9", "6:16", "7:3", "8:3", "9:1", "10:9", "1:11"], faults.Select(fault => $"{fault.At.Line}:{fault.At.Column}"));
        Assert.Equal("--set", faults[^1].At.File);
    }

    [Fact]
    public void The_command_line_goes_before_the_file()
    {
        var preset = Good(Least + "set: { wall.cavity: 150 mm }\n", "wall.cavity=100 mm", "coping.overhang = 50 mm", "site.nation=wales", "mirror=true", "materials.wall.outer-leaf=brick-inner", "roof.u-value=0.12", "sheet.paper=A1");
        Assert.Equal([("wall.cavity", "100 mm"), ("coping.overhang", "50 mm")], preset.Set.Select(given => (given.Key, given.Value.ToString())));
        Assert.Equal(new("--set", 1, 13), preset.Set[0].At);
        Assert.Equal(new("--set", 2, 19), preset.Set[1].At);
        Assert.Equal(("wales", true, "brick-inner", 0.12m, "A1"), (preset.Conditions[0].Word, preset.Mirror, preset.Slots[0].Material.Id, preset.Targets[0].Value, preset.Sheet.Paper));
    }

    [Fact]
    public void A_list_on_the_command_line_stands_in_square_brackets()
    {
        Assert.Equal(["thermal", "blank"], Good(Least, "sheet.companions=[thermal, blank]").Sheet.Companions);
        Assert.Equal(["thermal"], Good(Least, "sheet.companions=[thermal]").Sheet.Companions);
        var fault = Assert.Single(Read(Least, "sheet.companions=[thermal, blanc]").Faults);
        Assert.Equal(new("--set", 1, 28), fault.At);
    }

    [Theory]
    [InlineData("wall.cavity", "bad-override")]
    [InlineData("=150 mm", "bad-override")]
    [InlineData("wall.cavity=", "no-value")]
    [InlineData("wall.cvity=150 mm", "unknown-key")]
    [InlineData("flashing.lap=50 mm", "key-not-here")]
    [InlineData("sheet.papr=A1", "unknown-key")]
    public void A_fault_on_the_command_line_is_told_there(string text, string code)
    {
        var fault = OnlyFault("", text);
        Assert.Equal((code, "--set"), (fault.Code, fault.At.File));
    }

    [Fact]
    public void One_key_is_set_once_on_the_command_line() => Assert.Equal("duplicate-key", OnlyFault("", "wall.cavity=100 mm", "wall.cavity=150 mm").Code);

    [Fact]
    public void The_film_of_the_temperature_factor_stands_beside_target_or_under_it()
    {
        const string under = "target: { junction.frsi: 0.75, frsi-film: heat-flow }";
        Assert.Equal("heat-flow", Good(Least + under).FrsiFilm);
        Assert.Equal("mould", Good(Least + under, "frsi-film=mould").FrsiFilm);
        Assert.Equal("heat-flow", Good(Least + "frsi-film: mould", "target.frsi-film=heat-flow").FrsiFilm);
        Assert.Equal("duplicate-key", OnlyFault(under + "\nfrsi-film: mould").Code);
        Assert.Equal("unknown-choice", OnlyFault("target: { frsi-film: heat }").Code);
    }

    [Fact]
    public void A_withdrawn_status_is_a_warning_that_names_the_edition()
    {
        Assert.Contains("2021", Assert.Single(Good(Least + "title-block: { status: S7, revision: P01 }").Warnings).Reason);
        Assert.Empty(Good(Least + "title-block: { status: S7, revision: P01 }\nsheet: { status-edition: 2018 }").Warnings);
    }

    [Fact]
    public void A_field_of_the_title_block_may_be_left_empty() =>
        Assert.Equal(["owner"], Good(Least + "title-block: { owner: O, approved: , number: \"\" }").TitleBlock.Fields.Select(field => field.Key));

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("[1, 2]")]
    [InlineData("{}")]
    [InlineData("{")]
    public void What_is_no_preset_at_all_is_told(string text) => Assert.NotEmpty(Read(text).Faults);

    [Fact]
    public void Random_presets_never_throw_and_always_say_why() => Gen.Select(
        Gen.OneOf("detail", "set", "prefer", "site", "title-block", "revisions", "waive", "levels", "sheet", "materials", "target", "rules", "extends", "x", "wall", "<<"),
        Gen.OneOf("{}", "[]", "", "1", "\"\\0\"", "{ a: b }", "[ { rev: 1 } ]", "{ wall.cavity: [ ] }", "{ wall.cavity: { } }", "{ scale: [1] }", "{ number: {} }", "..", "/", "150 mm", "{ upstand-min: 1 }"))
        .Array[0, 6].Always(pairs =>
        {
            var read = Read(Least + string.Concat(pairs.Select(pair => $"{pair.Item1}: {pair.Item2}\n")));
            return read.Faults.All(fault => fault.Reason.Length > 0 && fault.Hint is not null && fault.At.Line > 0);
        });

    [Fact]
    public void Turkish_letters_change_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("tr-TR");
            Assert.Equal("150 mm", Good(Least + "set: { wall.cavity: 150 mm }\ntitle: INSIDE\n").Set[0].Value.ToString());
            Assert.Equal("Did you mean site?", OnlyFault("SITE: {}").Hint);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
