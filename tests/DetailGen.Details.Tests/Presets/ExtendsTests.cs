using DetailGen.Details.Presets;
using DetailGen.Details.Reading;

namespace DetailGen.Details.Tests.Presets;

public sealed class ExtendsTests : IDisposable
{
    private const string Least = "detail: d\njunction: parapet\nwall: plain-wall\nroof: plain-roof\n";

    private readonly string _folder = Directory.CreateTempSubdirectory("detailgen-extends-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    private static Outcome<Preset> Read(string path, params string[] overrides) => PresetReader.Read(path, overrides, SmallComponents.Context);

    [Fact]
    public void Maps_merge_key_by_key_and_lists_are_replaced()
    {
        Write("base/base.yaml", "extends: deep.yaml\nset: { wall.cavity: 150 mm, roof.fall: 1:60 }\nrules: [uk, own]\ntitle-block: { owner: O, status: S2 }\nwaive: { tray-step: { reason: a, by: EF } }\n");
        Write("base/deep.yaml", "set: { wall.cavity: 75 mm, coping.overhang: 50 mm }\nmirror: true\n");
        var path = Write("d.yaml", Least + "extends: base/base.yaml\nset: { roof.fall: 1:80 }\nrules: [own]\ntitle-block: { number: N }\nwaive: { tray-step: { reason: b } }\n");
        var preset = Read(path).Value;
        Assert.Equal(["wall.cavity=150 mm", "coping.overhang=50 mm", "roof.fall=1:80"], preset.Set.Select(given => $"{given.Key}={given.Value}"));
        Assert.Equal([true, true, false], preset.Set.Select(given => given.FromBase));
        Assert.EndsWith("base/base.yaml", preset.Set[0].At.File, StringComparison.Ordinal);
        Assert.Equal("own", Assert.Single(preset.Rules).Name);
        Assert.Equal(("O", "S2", "N", true), (preset.TitleBlock["owner"], preset.TitleBlock.Status, preset.TitleBlock.Number, preset.Mirror));
        Assert.Equal(("b", "EF"), (preset.Waivers[0].Reason, preset.Waivers[0].By));
    }

    [Fact]
    public void Set_in_a_base_beats_prefer_in_the_preset()
    {
        Write("base.yaml", "set: { wall.cavity: 150 mm }\n");
        Assert.Empty(Read(Write("d.yaml", Least + "extends: base.yaml\nprefer: { wall.cavity: 100 mm }\n")).Value.Prefer);
    }

    [Fact]
    public void A_key_that_only_other_details_have_is_passed_over_in_a_base_and_refused_in_the_preset()
    {
        Write("base.yaml", "set: { flashing.lap: 50 mm }\n");
        Assert.Empty(Read(Write("d.yaml", Least + "extends: base.yaml\n")).Value.Set);
        var fault = Assert.Single(Read(Write("e.yaml", Least + "extends: base.yaml\nset: { flashing.lap: 60 mm }\n")).Faults);
        Assert.Equal(("key-not-here", 6), (fault.Code, fault.At.Line));
        Assert.Equal("--set", Assert.Single(Read(Write("f.yaml", Least + "extends: base.yaml\n"), "flashing.lap=70 mm").Faults).At.File);
    }

    [Fact]
    public void An_unknown_key_in_a_base_is_told_in_the_base()
    {
        Write("base.yaml", "set: { wall.cavty: 50 mm }\n");
        var fault = Assert.Single(Read(Write("d.yaml", Least + "extends: base.yaml\n")).Faults);
        Assert.Equal(("unknown-key", new Mark(Path.Combine(_folder, "base.yaml"), 1, 8)), (fault.Code, fault.At));
    }

    [Fact]
    public void A_value_that_is_replaced_is_not_blamed()
    {
        Write("base.yaml", "set: { wall.cavity: 999 mm }\n");
        Assert.True(Read(Write("d.yaml", Least + "extends: base.yaml\nset: { wall.cavity: 150 mm }\n")).IsGood);
    }

    [Fact]
    public void A_file_that_only_serves_as_a_base_is_known_by_what_it_lacks()
    {
        Assert.True(PresetReader.IsOnlyBase(Write("base.yaml", "mirror: true\n")));
        Assert.False(PresetReader.IsOnlyBase(Write("d.yaml", "wall: plain-wall\n")));
        Assert.False(PresetReader.IsOnlyBase(Write("e.yaml", "")));
        Assert.False(PresetReader.IsOnlyBase(_folder));
    }

    [Fact]
    public void A_ring_of_bases_is_told_with_its_files()
    {
        Write("b.yaml", "extends: c.yaml\n");
        Write("c.yaml", "extends: ./d.yaml\n");
        var fault = Assert.Single(Read(Write("d.yaml", Least + "extends: b.yaml\n")).Faults);
        Assert.Equal(("extends-cycle", Path.Combine(_folder, "c.yaml")), (fault.Code, fault.At.File));
        Assert.Contains("→", fault.Reason);
    }

    [Fact]
    public void A_long_chain_of_bases_stops()
    {
        for (var i = 0; i < 20; i++)
        {
            Write($"b{i}.yaml", $"extends: b{i + 1}.yaml\n");
        }

        Write("b20.yaml", "mirror: true\n");
        Assert.Equal("too-deep", Assert.Single(Read(Write("d.yaml", Least + "extends: b0.yaml\n")).Faults).Code);
    }

    [Fact]
    public void A_base_that_is_a_folder_or_no_text_is_told_there()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "sub"));
        Assert.Equal("folder-base", Assert.Single(Read(Write("d.yaml", Least + "extends: sub\n")).Faults).Code);
        File.WriteAllBytes(Path.Combine(_folder, "bin.yaml"), [1, 2, 3]);
        Assert.Equal("binary", Assert.Single(Read(Write("e.yaml", Least + "extends: bin.yaml\n")).Faults).Code);
    }
}
