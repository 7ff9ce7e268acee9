namespace DetailGen.EndToEnd.Tests.Verbs;

/// <summary>Files and folders that are not what a verb needs.</summary>
public class FilesTests
{
    public static TheoryData<string> Readers => ["draw @", "check @", "explain @", "range @", "inspect @", "heat --case @", "moisture --case @"];

    [Theory]
    [MemberData(nameof(Readers))]
    public void A_missing_file_is_told_alike_by_every_verb(string line)
    {
        using var scratch = new Scratch();
        var missing = Path.Combine(scratch.Folder, "none");
        var run = Tool.Run([.. line.Split(' ').Select(word => word == "@" ? missing : word), "--json"]);
        Assert.Equal(2, run.Status);
        Assert.Contains($"{missing}:1:1: There is no such file. Look at the spelling and at the folder you are in.", run.Messages, StringComparison.Ordinal);
        var error = (run.Json["errors"] ?? run.Detail["errors"])![0]!;
        Assert.Equal(("missing-file", 1, 1), (error["code"]!.GetValue<string>(), error["line"]!.GetValue<int>(), error["column"]!.GetValue<int>()));
    }

    [Theory]
    [MemberData(nameof(Readers))]
    public void A_folder_in_place_of_a_file_is_told_alike(string line)
    {
        if (line.StartsWith("check", StringComparison.Ordinal))
        {
            return; // a folder is as good as a file there
        }

        using var scratch = new Scratch();
        var run = Tool.Run([.. line.Split(' ').Select(word => word == "@" ? scratch.Folder : word)]);
        Assert.Equal(2, run.Status);
        Assert.Contains($"{scratch.Folder}:1:1: This is a folder, not a file. Name a file in it.", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_case_file_is_told_in_our_words()
    {
        using var scratch = new Scratch();
        Assert.Contains(":1:1: The file is empty", Tool.Run("heat", "--case", scratch.Write("c.json", "")).Messages, StringComparison.Ordinal);
        Assert.Contains(":1:1: The file is empty", Tool.Run("moisture", "--case", scratch.Write("c.json", "\n \n")).Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_place_of_the_folder_or_above_it_is_named()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("abutment", "cavity-masonry", "warm-timber-deck");
        foreach (var folder in (string[])[preset, Path.Combine(preset, "deeper")])
        {
            var run = Tool.Run("draw", preset, "--out", folder, "--formats", "csv");
            Assert.Equal(3, run.Status);
            Assert.Contains($"{preset} is a file, not a folder. Nothing was left behind. Name a folder, or take the file away.", run.Messages, StringComparison.Ordinal);
        }

        var starter = Tool.Run("new", "parapet", "cavity-masonry", "warm-timber-deck", "--out", Path.Combine(preset, "new.yaml"));
        Assert.Equal(3, starter.Status);
        Assert.Contains("is a file, not a folder", starter.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_presets_is_told()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("check", scratch.Folder, "--json");
        Assert.Equal(2, run.Status);
        Assert.Contains($"There are no presets in {scratch.Folder}.", run.Messages, StringComparison.Ordinal);
        Assert.Equal("no-presets", run.Detail["errors"]![0]!["code"]!.GetValue<string>());
        scratch.Write("base.yaml", "rules: [uk]\n");
        Assert.Equal(2, Tool.Run("check", scratch.Folder).Status);
    }

    [Fact]
    public void Answers_stand_in_the_order_in_which_presets_and_folders_were_named()
    {
        using var scratch = new Scratch();
        var empty = Directory.CreateDirectory(Path.Combine(scratch.Folder, "empty")).FullName;
        string[] named = [Tool.Shipped("tern-court-parapet-05"), empty, Tool.Shipped("tern-court-abutment-01"), Path.Combine(scratch.Folder, "none.yaml")];
        foreach (var verb in (string[])["check", "moisture"])
        {
            var run = Tool.Run([verb, .. named, "--json"]);
            Assert.Equal(2, run.Status);
            Assert.Equal(named, run.Json["details"]!.AsArray().Select(detail => detail!["preset"]!.GetValue<string>()));
        }
    }

    [Fact]
    public void A_file_that_is_protected_is_not_replaced()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck");
        var issued = scratch.Write("preset.json", "issued");
        File.SetAttributes(issued, FileAttributes.ReadOnly);
        var run = Tool.Run("draw", preset, "--out", scratch.Folder, "--formats", "csv,json");
        Assert.Equal(3, run.Status);
        Assert.Contains("preset.json is there and may not be changed", run.Messages, StringComparison.Ordinal);
        Assert.Equal("issued", File.ReadAllText(issued));
        Assert.Equal(2, Directory.GetFiles(scratch.Folder).Length);
        File.SetAttributes(issued, FileAttributes.Normal);
    }

    [Fact]
    public void Presets_of_folders_below_are_found_in_the_order_of_their_paths()
    {
        using var scratch = new Scratch();
        foreach (var folder in (string[])["b", "a", Path.Combine("a", "deep")])
        {
            Directory.CreateDirectory(Path.Combine(scratch.Folder, folder));
            scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", name: Path.Combine(folder, $"{Path.GetFileName(folder)}.yml"));
        }

        scratch.Write("note.txt", "no preset");
        Assert.Equal(["a", "deep", "b"], Tool.Run("check", scratch.Folder, "--json").Json["details"]!.AsArray().Select(detail => detail!["detail"]!.GetValue<string>()));
    }

    [Fact]
    public void Letters_that_the_font_does_not_have_are_warned_of()
    {
        using var scratch = new Scratch();
        var preset = scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "title: Περιμετρικό στηθαίο 屋根 🏠\n");
        var run = Tool.Run("draw", preset, "--out", scratch.Folder, "--formats", "json", "--json");
        Assert.Equal(0, run.Status);
        Assert.Contains(run.Detail["warnings"]!.AsArray(), warning => warning!.GetValue<string>().StartsWith("The font of the sheets has no letters 屋 根 🏠:", StringComparison.Ordinal));
        Assert.DoesNotContain("font of the sheets", Tool.Run("draw", scratch.Preset("parapet", "cavity-masonry", "warm-timber-deck", "title: Στηθαίο, Парапет, Attikaanschluß\n"), "--out", scratch.Folder, "--formats", "json").Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_presets_of_one_name_are_warned_of_by_check_and_told_how_to_part_them()
    {
        using var scratch = new Scratch();
        var one = scratch.Preset("abutment", "cavity-masonry", "warm-concrete-deck", name: "same.yaml");
        var two = scratch.Write("two.yaml", File.ReadAllText(one));
        var check = Tool.Run("check", one, two);
        Assert.Equal(0, check.Status);
        Assert.Contains("Give each its own detail:, or a number in a title block.", check.Messages, StringComparison.Ordinal);
        var draw = Tool.Run("draw", one, two, "--out", scratch.Folder);
        Assert.Equal(2, draw.Status);
        Assert.Contains("Give each its own detail:", draw.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("not read", draw.Output, StringComparison.Ordinal);
        Assert.Contains("This file is given twice. Name it once.", Tool.Run("draw", one, Path.Combine(scratch.Folder, ".", "same.yaml"), "--out", scratch.Folder).Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_stands_among_the_files_written()
    {
        using var scratch = new Scratch();
        var run = Tool.Run("draw", scratch.Preset("abutment", "cavity-masonry", "warm-concrete-deck"), "--out", scratch.Folder, "--formats", "csv,json");
        var written = new FileInfo(Path.Combine(scratch.Folder, "preset.json")).Length.ToString("N0", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"preset.json  {written} bytes", run.Output, StringComparison.Ordinal);
    }
}
